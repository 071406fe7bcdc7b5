import { describe, it } from 'vitest';
import { productLb } from './pounds.js';
import { expectPrinted } from './printed.js';

// Source: GardenGuides, calibrating a spreader with 10-10-10 at 1 lb of nitrogen per 1,000 ft².
describe('10-10-10 at 1 lb of nitrogen per 1,000 ft²', () => {
  it.each([
    ['the whole 1,000 ft²', 1000, '10'],
    ['a test strip of 200 ft²', 200, '2'],
  ] as const)('%s: %3$s lb', (_, areaFt2, printed) => {
    expectPrinted(productLb({ areaFt2, nitrogenLbPer1000Ft2: 1, nitrogenFraction: 0.1 }), printed);
  });
});
