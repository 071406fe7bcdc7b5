import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wateringTurns } from '../../src/agronomy/watering-turns.js';

describe('turns of a day', () => {
  // 3.75 mm in three turns is 1.25 mm; at 10 mm/h on soil that takes 15, 1.25 ÷ 10 × 60 = 7.5 min.
  it('are one run each where the soil keeps up', () => {
    const plan = wateringTurns({
      needMm: 3.75,
      turnsPerDay: 3,
      rateMmPerH: 10,
      infiltrationMmPerH: 15,
      standingMm: 1,
    });
    expect(plan).toEqual({ depthPerTurnMm: 1.25, runsPerTurn: 1, minutesPerRun: 7.5, soakMinutes: 0 });
  });

  // 12 mm at 20 mm/h on clay that takes 5: three quarters stay as a film, 9 mm; 2 mm may stand, so 4.5, hence
  // 5 runs of 2.4 mm: 7.2 min each, and 2.4 ÷ 5 × 60 = 28.8 min from start to start, a pause of 21.6.
  it('are run and pause where the sprinkler is faster than the soil', () => {
    const plan = wateringTurns({
      needMm: 12,
      turnsPerDay: 1,
      rateMmPerH: 20,
      infiltrationMmPerH: 5,
      standingMm: 2,
    });
    expect(plan.runsPerTurn).toBe(5);
    expect(plan.minutesPerRun).toBeCloseTo(7.2, 9);
    expect(plan.soakMinutes).toBeCloseTo(21.6, 9);
  });

  it('give all the water, never let more stand than allowed, and never beat the soil over run and pause', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 0.5, max: 5, noNaN: true }),
        (needMm, turnsPerDay, rateMmPerH, infiltrationMmPerH, standingMm) => {
          const plan = wateringTurns({ needMm, turnsPerDay, rateMmPerH, infiltrationMmPerH, standingMm });
          const perRunMm = (plan.minutesPerRun / 60) * rateMmPerH;
          expect(perRunMm * plan.runsPerTurn * turnsPerDay).toBeCloseTo(needMm, 9);
          const filmMm = (plan.minutesPerRun / 60) * Math.max(0, rateMmPerH - infiltrationMmPerH);
          expect(filmMm).toBeLessThanOrEqual(standingMm + 1e-9);
          const soakedMm = ((plan.minutesPerRun + plan.soakMinutes) / 60) * infiltrationMmPerH;
          expect(soakedMm).toBeGreaterThanOrEqual(perRunMm - 1e-9);
          if (rateMmPerH <= infiltrationMmPerH)
            expect(plan).toMatchObject({ runsPerTurn: 1, soakMinutes: 0 });
        },
      ),
    );
  });

  it('are refused for part turns and soil that takes nothing', () => {
    const day = { needMm: 3, turnsPerDay: 2, rateMmPerH: 10, infiltrationMmPerH: 5, standingMm: 1 };
    expect(() => wateringTurns({ ...day, turnsPerDay: 1.5 })).toThrow('turnsPerDay');
    expect(() => wateringTurns({ ...day, infiltrationMmPerH: 0 })).toThrow('infiltrationMmPerH');
    expect(() => wateringTurns({ ...day, standingMm: 0 })).toThrow('standingMm');
  });
});
