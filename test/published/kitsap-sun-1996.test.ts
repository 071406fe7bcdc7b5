import { describe, expect, it } from 'vitest';
import { nutrientDoseGPerM2 } from '../../src/agronomy/feed.js';
import { splitUnderCap } from '../../src/agronomy/split.js';
import { AREA_IN_M2, convert, MASS_IN_G, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { productLb } from './pounds.js';
import { expectPrinted } from './printed.js';

// Source: Kitsap Sun garden column, 25 October 1996: amounts for 1,000 ft².
const nitrogenLb = (productPounds: number, nutrientFraction: number) =>
  convert(
    MASS_RATE_IN_G_PER_M2,
    nutrientDoseGPerM2({
      areaM2: convert(AREA_IN_M2, 1000, { from: 'ft2', to: 'm2' }),
      massG: productPounds * MASS_IN_G.lb,
      nutrientFraction,
    }),
    { from: 'g/m2', to: 'lb/1000 ft2' },
  );

describe('nitrogen in the amounts of the column', () => {
  // Values by hand: pounds × share.
  it('6.5 lb of 15-5-10 give 0.975 lb, not the 1 lb it prints', () =>
    expectPrinted(nitrogenLb(6.5, 0.15), '0.975'));
  it('5 lb of 18-6-12 give 0.90 lb, not "about a pound"', () => expectPrinted(nitrogenLb(5, 0.18), '0.90'));
  it('1 lb of nitrogen takes 6.67 lb of 15-5-10, not 6.5', () => {
    expectPrinted(productLb({ areaFt2: 1000, nitrogenLbPer1000Ft2: 1, nitrogenFraction: 0.15 }), '6.67');
  });
  it('1 lb of nitrogen takes 5.56 lb of 18-6-12, not 5', () => {
    expectPrinted(productLb({ areaFt2: 1000, nitrogenLbPer1000Ft2: 1, nitrogenFraction: 0.18 }), '5.56');
  });
});

describe('feeds of at most 1 lb of nitrogen', () => {
  it('4 lb a year take four', () => expect(splitUnderCap({ total: 4, cap: 1 }).count).toBe(4));
  it('2 lb a year take two', () => expect(splitUnderCap({ total: 2, cap: 1 }).count).toBe(2));
});
