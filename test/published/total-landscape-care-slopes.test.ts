import { describe, it } from 'vitest';
import { riseM, slopeDeg } from '../../src/agronomy/slope.js';
import { LENGTH_IN_M } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Total Landscape Care, 13 January 2015, mowing on slopes: "15 degrees" as 2.5 ft in 10 ft. The right
// values are from a table of tangents.
describe('15 degrees', () => {
  const runM = 10 * LENGTH_IN_M.ft;
  it('is not 2.5 ft in 10 ft, as the article prints: that is 14.0 degrees', () => {
    expectPrinted(slopeDeg({ riseM: 2.5 * LENGTH_IN_M.ft, runM }), '14.0');
  });
  it('is 2.68 ft in 10 ft', () => expectPrinted(riseM({ runM, slopeDeg: 15 }) / LENGTH_IN_M.ft, '2.68'));
});
