import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runTime } from '../../src/base/run-time.js';

describe('the time that a tap runs', () => {
  // By hand: 87 L at 12 L a minute take 7.25 min. Half minutes are near enough there, whole ones from 15 on, and
  // below 5 min tens of seconds where halves are more than a twentieth out.
  it.each([
    [7.25, { hours: 0, minutes: 7.5, seconds: 0 }],
    [27.6, { hours: 0, minutes: 28, seconds: 0 }],
    [79.5, { hours: 1, minutes: 20, seconds: 0 }],
    [2.6, { hours: 0, minutes: 2.5, seconds: 0 }],
    [1.2, { hours: 0, minutes: 1, seconds: 10 }],
    [0.7, { hours: 0, minutes: 0, seconds: 40 }],
  ])('of %d min is told so', (minutes, told) => {
    expect(runTime(minutes)).toEqual(told);
  });

  it('is never further than a twentieth from what it is, and half minutes at the finest where they do', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 600, noNaN: true }), (given) => {
        const { hours, minutes, seconds } = runTime(given);
        const told = hours * 60 + minutes + seconds / 60;
        expect(Math.abs(told / given - 1)).toBeLessThanOrEqual(0.05);
        if (given >= 15) expect([Number.isInteger(minutes), seconds]).toEqual([true, 0]);
      }),
    );
  });
});
