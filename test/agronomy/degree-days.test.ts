import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degreeDays, degreeDaysOfDay } from '../../src/agronomy/degree-days.js';

const days = fc.array(
  fc.tuple(fc.double({ min: -20, max: 30, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true })),
  { minLength: 1, maxLength: 30 },
);

describe('degree days', () => {
  // Worked out by hand over a base of 10: means 12, 9, 5, 15, 18 give 2, 0, 0, 5, 8, in all 15; counting the
  // cold days as minus would give 9.
  it('of five days are 15, because cold days take nothing back', () => {
    expect(degreeDays({ tMaxC: [18, 15, 9, 21, 24], tMinC: [6, 3, 1, 9, 12], baseC: 10 })).toBe(15);
  });

  it('are never negative and are the sum of single days', () => {
    fc.assert(
      fc.property(days, fc.double({ min: -5, max: 15, noNaN: true }), (list, baseC) => {
        const tMinC = list.map(([low]) => low);
        const tMaxC = list.map(([low, swing]) => low + swing);
        const single = list.map(([low, swing]) => degreeDaysOfDay({ tMinC: low, tMaxC: low + swing, baseC }));
        const all = degreeDays({ tMinC, tMaxC, baseC });
        expect(all).toBeGreaterThanOrEqual(0);
        expect(all).toBeCloseTo(
          single.reduce((total, one) => total + one, 0),
          9,
        );
        expect(degreeDays({ tMinC, tMaxC, baseC: baseC + 1 })).toBeLessThanOrEqual(all);
      }),
    );
  });

  it('of no days are none', () => {
    expect(degreeDays({ tMinC: [], tMaxC: [], baseC: 10 })).toBe(0);
  });

  it('are refused for lists that differ, swapped values and gaps', () => {
    expect(() => degreeDays({ tMinC: [1, 2], tMaxC: [9], baseC: 0 })).toThrow('as many days');
    expect(() => degreeDays({ tMinC: [9], tMaxC: [1], baseC: 0 })).toThrow('swapped');
    expect(() => degreeDaysOfDay({ tMinC: 1, tMaxC: 9, baseC: Number.NaN })).toThrow('baseC');
  });
});
