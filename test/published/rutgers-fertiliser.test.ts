import { describe, it } from 'vitest';
import { productLb } from './pounds.js';
import { expectPrinted } from './printed.js';

// Source: Rutgers (Heckman), feeding lawns, as re-posted: a product with 20 % nitrogen on 1,000 ft².
describe('a product with 20 % nitrogen', () => {
  it.each([
    [1, '5'],
    [2, '10'],
  ] as const)('gives %d lb of nitrogen with %s lb', (nitrogenLbPer1000Ft2, printed) => {
    expectPrinted(productLb({ areaFt2: 1000, nitrogenLbPer1000Ft2, nitrogenFraction: 0.2 }), printed);
  });
});
