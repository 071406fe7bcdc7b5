import { expect, it } from 'vitest';
import { lowQuarterUniformity } from '../../src/agronomy/sprinkler.js';

// Source: study page for irrigation technicians: low quarter 0.68, mean 0.70, uniformity 97 %.
it('a low quarter of 0.68 in a mean of 0.70 is 97 % (irrigation technician study page)', () => {
  const catches = [0.68, 0.7, 0.71, 0.71];
  expect(100 * lowQuarterUniformity(catches)).toBeCloseTo(97, 0);
});
