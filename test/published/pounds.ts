import { nitrogenProductG } from '../../src/agronomy/feed.js';
import { AREA_IN_M2, convert, MASS_IN_G, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';

/** Pounds of product for a nitrogen dose as American pages state it. */
export function productLb({
  areaFt2,
  nitrogenLbPer1000Ft2,
  nitrogenFraction,
}: {
  readonly areaFt2: number;
  readonly nitrogenLbPer1000Ft2: number;
  readonly nitrogenFraction: number;
}): number {
  const productG = nitrogenProductG({
    areaM2: convert(AREA_IN_M2, areaFt2, { from: 'ft2', to: 'm2' }),
    nitrogenGPerM2: convert(MASS_RATE_IN_G_PER_M2, nitrogenLbPer1000Ft2, { from: 'lb/1000 ft2', to: 'g/m2' }),
    nitrogenFraction,
  });
  return convert(MASS_IN_G, productG, { from: 'g', to: 'lb' });
}
