import { describe, expect, it } from 'vitest';
import { limeProductGPerM2 } from '../../src/agronomy/lime.js';
import { splitUnderCap } from '../../src/agronomy/split.js';
import { convert, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

const perM2 = (pounds: number) => convert(MASS_RATE_IN_G_PER_M2, pounds, { from: 'lb/1000 ft2', to: 'g/m2' });
const doses = (totalLb: number, capLb: number) =>
  splitUnderCap({ total: perM2(totalLb), cap: perM2(capLb) }).count;

// Source: Penn State, Agricultural Analytical Services Laboratory, home lawn report: amount × 100 ÷ CCE.
it('75 lb of lime per 1,000 ft² are 94 lb of a product with a neutralising value of 80', () => {
  const productGPerM2 = limeProductGPerM2({ limeGPerM2: perM2(75), neutralisingFraction: 0.8 });
  expectPrinted(convert(MASS_RATE_IN_G_PER_M2, productGPerM2, { from: 'g/m2', to: 'lb/1000 ft2' }), '94');
});

// Source: Penn State turf handbook, table 1 (acidity 9.0 meq/100 g, goal 6.5: 160 lb), with the caps of Penn
// State (100 lb a time) and of Virginia Tech 452-717 (50 lb a time).
describe('160 lb of lime per 1,000 ft²', () => {
  it('are 781 g/m²', () => expectPrinted(perM2(160), '781'));
  it('go on in two doses under the 100 lb of Penn State', () => expect(doses(160, 100)).toBe(2));
  it('go on in four doses under the 50 lb of Virginia Tech', () => expect(doses(160, 50)).toBe(4));
});

// Source: Penn State, Agricultural Analytical Services Laboratory, home garden report, lb per 100 ft²: 11 to 20
// in two doses, 21 or more in three. That is a cap of 10 lb a dose as far as 30.
describe('garden lime in doses', () => {
  it.each([
    [10, 1],
    [11, 2],
    [20, 2],
    [21, 3],
    [30, 3],
  ])('%d lb per 100 ft² take %d', (pounds, count) => {
    expect(splitUnderCap({ total: pounds, cap: 10 }).count).toBe(count);
  });
});
