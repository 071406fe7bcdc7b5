import { expect, it } from 'vitest';
import { lowQuarterUniformity } from '../../src/agronomy/sprinkler.js';

// Source: spreval, North Carolina State University, help page DU, after Merriam and Keller 1978.
// Printed 49.62039 %. Fifteen cans have a quarter of 3.75: only rounding up to 4 gives the printed value
// (3 cans give 40.13 %, and interpolation 47.72 %).
it('fifteen cans have a low-quarter uniformity of 49.62039 % (spreval)', () => {
  const catchesMl = [47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12];
  expect(100 * lowQuarterUniformity(catchesMl)).toBeCloseTo(49.62039, 5);
});
