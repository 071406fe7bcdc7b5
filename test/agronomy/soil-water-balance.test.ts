import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysToStress, depletionAfterDay } from '../../src/agronomy/soil-water-balance.js';

const availableMm = 18;

describe('the root zone after a day', () => {
  // Worked out by hand: 6 − (4 − 1) − 2 − 0.5 + 3.5 = 4.0
  it('has lost its use and gained rain, watering and what rises from below', () => {
    const day = { rainMm: 4, runOffMm: 1, wateredMm: 2, capillaryRiseMm: 0.5, usedMm: 3.5 };
    expect(depletionAfterDay({ availableMm, depletionMm: 6, day })).toEqual({
      depletionMm: 4,
      drainageMm: 0,
    });
  });

  // 2 − 10 + 3 = −5: full, and 5 mm lost below the roots.
  it('is full after heavy rain, and the rest drains away', () => {
    expect(depletionAfterDay({ availableMm, depletionMm: 2, day: { rainMm: 10, usedMm: 3 } })).toEqual({
      depletionMm: 0,
      drainageMm: 5,
    });
  });

  it('stops at the wilting point', () => {
    expect(depletionAfterDay({ availableMm, depletionMm: 17, day: { usedMm: 3 } })).toEqual({
      depletionMm: 18,
      drainageMm: 0,
    });
  });

  it('neither makes nor loses water while it stays above the wilting point', () => {
    const water = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        water,
        water,
        water,
        fc.double({ min: 0, max: 30, noNaN: true }),
        (rain, watered, used, start) => {
          const store = 60;
          const after = depletionAfterDay({
            availableMm: store,
            depletionMm: start,
            day: { rainMm: rain, wateredMm: watered, usedMm: used },
          });
          expect(after.depletionMm - start).toBeCloseTo(used - rain - watered + after.drainageMm, 9);
          expect(after.depletionMm * after.drainageMm).toBe(0);
        },
      ),
    );
  });

  it('refuses more run-off than rain, negative water and a depletion beyond the store', () => {
    const start = { availableMm, depletionMm: 6 };
    expect(() => depletionAfterDay({ ...start, day: { rainMm: 1, runOffMm: 2, usedMm: 0 } })).toThrow(
      'run off',
    );
    expect(() => depletionAfterDay({ ...start, day: { usedMm: -1 } })).toThrow('usedMm');
    expect(() => depletionAfterDay({ availableMm, depletionMm: 20, day: { usedMm: 1 } })).toThrow(
      'depletionMm',
    );
  });
});

describe('days to stress', () => {
  // 8.28 ÷ 3.5 = 2.366
  it('are about 2.4 from a full sandy loam at 3.5 mm a day', () => {
    expect(daysToStress({ readilyAvailableMm: 8.28, depletionMm: 0, usedMmPerDay: 3.5 })).toBeCloseTo(
      2.366,
      3,
    );
  });

  it('are none when the easy water is gone already', () => {
    expect(daysToStress({ readilyAvailableMm: 8.28, depletionMm: 9, usedMmPerDay: 3.5 })).toBe(0);
  });

  it('agree with running the balance day by day', () => {
    const days = daysToStress({ readilyAvailableMm: 8.28, depletionMm: 1, usedMmPerDay: 2 });
    let depletionMm = 1;
    let counted = 0;
    while (depletionMm + 2 <= 8.28) {
      depletionMm = depletionAfterDay({ availableMm, depletionMm, day: { usedMm: 2 } }).depletionMm;
      counted += 1;
    }
    expect(Math.floor(days)).toBe(counted);
  });

  it('are refused where nothing is used', () => {
    expect(() => daysToStress({ readilyAvailableMm: 8, depletionMm: 0, usedMmPerDay: 0 })).toThrow(
      'usedMmPerDay',
    );
  });
});
