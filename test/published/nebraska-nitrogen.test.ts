import { describe, it } from 'vitest';
import { productLb } from './pounds.js';
import { expectPrinted } from './printed.js';

// Source: University of Nebraska-Lincoln Extension, worked text on fertiliser arithmetic: 28-3-6 at 1 lb of
// nitrogen per 1,000 ft².
describe('28-3-6 at 1 lb of nitrogen per 1,000 ft²', () => {
  const dose = { nitrogenLbPer1000Ft2: 1, nitrogenFraction: 0.28 };
  it('takes 3.57 lb on 1,000 ft²', () => expectPrinted(productLb({ areaFt2: 1000, ...dose }), '3.57'));
  // The page multiplies its rounded 3.57 by six; exact is 21.43, so allow 0.05 %.
  it('takes 21.42 lb on 6,000 ft²', () =>
    expectPrinted(productLb({ areaFt2: 6000, ...dose }), '21.42', 0.0005));
});
