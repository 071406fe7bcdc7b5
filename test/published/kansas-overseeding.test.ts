import { describe, expect, it } from 'vitest';
import { seedMassRangeG } from '../../src/agronomy/seed.js';
import { AREA_IN_M2, convert, MASS_IN_G, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

const areaM2 = convert(AREA_IN_M2, 1000, { from: 'ft2', to: 'm2' });
const inG = (pounds: number) => convert(MASS_RATE_IN_G_PER_M2, pounds, { from: 'lb/1000 ft2', to: 'g/m2' });

/** Pounds for 1,000 ft² at half of a new-lawn band. */
function halfOf(min: number, max: number) {
  const range = seedMassRangeG({
    areaM2,
    rateGPerM2: { min: inG(min), max: inG(max) },
    rateShareFraction: 0.5,
  });
  return { min: range.min / MASS_IN_G.lb, max: range.max / MASS_IN_G.lb };
}

// Source: Johnson County K-State Extension column, 2021; half the new-lawn rate goes into living grass.
describe('overseeding at half the rate (Johnson County, Kansas)', () => {
  it('makes 3 to 4 lb of tall fescue from 6 to 8', () => {
    const { min, max } = halfOf(6, 8);
    expectPrinted(min, '3');
    expectPrinted(max, '4');
  });
  it('makes 1.5 to 2 lb of meadow-grass from 3 to 4; the column says around 2', () => {
    const { min, max } = halfOf(3, 4);
    expectPrinted(min, '1.5');
    expectPrinted(max, '2');
  });
});

// Source: Salina (Kansas) column, 2020.
it('half of 6 to 8 lb is 3 to 4, not the 4 to 5 that the Salina column calls its half rate', () => {
  expect(halfOf(6, 8).max).toBeLessThanOrEqual(4 + 1e-9);
});

// Source: Illinois Extension column, 2013: 4 lb of the mix on bare soil, 2 lb into a lawn.
it('half of 4 lb is the 2 lb that the Illinois column prints', () => expectPrinted(halfOf(4, 4).max, '2'));

// Rates: Cornell and Kansas, tall fescue 6 to 8 lb per 1,000 ft²; masses for 150 m² by hand.
describe('tall fescue on 150 m²', () => {
  const rateGPerM2 = { min: inG(6), max: inG(8) };
  it('takes 4.39 to 5.86 kg new', () => {
    const { min, max } = seedMassRangeG({ areaM2: 150, rateGPerM2 });
    expectPrinted(min / 1000, '4.39');
    expectPrinted(max / 1000, '5.86');
  });
  it('takes 2.20 to 2.93 kg into living grass', () => {
    const { min, max } = seedMassRangeG({ areaM2: 150, rateGPerM2, rateShareFraction: 0.5 });
    expectPrinted(min / 1000, '2.20');
    expectPrinted(max / 1000, '2.93');
  });
});
