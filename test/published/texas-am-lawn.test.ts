import { describe, it } from 'vitest';
import { rectangleM2 } from '../../src/agronomy/area.js';
import { labelNutrients } from '../../src/agronomy/feed.js';
import { AREA_IN_M2, convert, LENGTH_IN_M, MASS_IN_G } from '../../src/base/units.js';
import { productLb } from './pounds.js';
import { expectPrinted } from './printed.js';

// Source: Texas A&M, aggieturf "Fertilization": a 40 lb bag with 15 % nitrogen at 15 dollars.
describe('a 40 lb bag with 15 % nitrogen', () => {
  const { nG } = labelNutrients({ massG: 40 * MASS_IN_G.lb, label: { n: 15, p2o5: 0, k2o: 0 } });
  it('holds 6 lb of nitrogen', () => expectPrinted(nG / MASS_IN_G.lb, '6'));
  it('makes nitrogen 2.50 dollars a pound at 15 dollars a bag', () =>
    expectPrinted(15 / (nG / MASS_IN_G.lb), '2.50'));
});

// Source: Texas A&M, Horticulture Update, October 2000: a lawn of 50 × 50 ft.
describe('a lawn of 50 × 50 ft', () => {
  const sideM = 50 * LENGTH_IN_M.ft;
  it('is 2,500 ft²', () => {
    const areaM2 = rectangleM2({ lengthM: sideM, widthM: sideM });
    expectPrinted(convert(AREA_IN_M2, areaM2, { from: 'm2', to: 'ft2' }), '2500');
  });
  // The product by hand: 2.5 ÷ 0.21.
  it('takes 11.90 lb of 21-7-14 for 1 lb of nitrogen per 1,000 ft²', () => {
    expectPrinted(productLb({ areaFt2: 2500, nitrogenLbPer1000Ft2: 1, nitrogenFraction: 0.21 }), '11.90');
  });
});
