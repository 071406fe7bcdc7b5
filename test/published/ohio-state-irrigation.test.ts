import { expect, it } from 'vitest';
import { seedbedNeedMm } from '../../src/agronomy/seedbed-water.js';

// Source: Ohio State University, Turfgrass Establishment Series, Irrigation (T. Carr), on work of the
// University of Arkansas: 125 % of the previous day's evapotranspiration established tall fescue from seed.
it.each([
  [3, 3.75],
  [4, 5],
])('a seedbed gets 125 %% of the %d mm of the day before: %d mm', (et0Mm, expectedMm) => {
  expect(seedbedNeedMm({ et0Mm, factor: 1.25, rainMm: 0 })).toBeCloseTo(expectedMm, 9);
});
