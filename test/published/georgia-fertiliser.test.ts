import { describe, it } from 'vitest';
import { productLb } from './pounds.js';
import { expectPrinted } from './printed.js';

// Source: University of Georgia (Waltz), "Lawn fertilizer calculations": pounds of product that give 1 lb of
// nitrogen on 1,000 ft². Tolerance: the rounding of the printed figure.
describe('product for 1 lb of nitrogen on 1,000 ft²', () => {
  it.each([
    ['10-10-10', 0.1, '10'],
    ['12-4-8', 0.12, '8.3'],
    ['5-10-15', 0.05, '20'],
    // Exactly 6.25, printed 6.3.
    ['16-4-8', 0.16, '6.3'],
    ['33 % nitrogen', 0.33, '3'],
  ] as const)('%s: %3$s lb', (_, nitrogenFraction, printed) => {
    expectPrinted(productLb({ areaFt2: 1000, nitrogenLbPer1000Ft2: 1, nitrogenFraction }), printed);
  });
});
