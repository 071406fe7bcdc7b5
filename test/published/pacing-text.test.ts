import { describe, it } from 'vitest';
import { paceM } from '../../src/agronomy/measuring.js';
import { LENGTH_IN_M } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: "Pacing", agricultural engineering text at progressivegardening.com.
describe('walking 200 ft three times', () => {
  it('in 62, 60 and 64 paces makes a pace of 3.23 ft', () => {
    const pace = paceM({ distanceM: 200 * LENGTH_IN_M.ft, paceCounts: [62, 60, 64] });
    expectPrinted(pace / LENGTH_IN_M.ft, '3.23');
  });
  it('in 62.5 paces makes the 3.2 ft with which 375 paces are 1,200 ft', () => {
    const pace = paceM({ distanceM: 200 * LENGTH_IN_M.ft, paceCounts: [62.5] });
    expectPrinted((375 * pace) / LENGTH_IN_M.ft, '1200');
  });
});
