import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  catchDepthMm,
  christiansenUniformity,
  lowQuarterUniformity,
  runMinutes,
  sprinklerRateMmPerH,
} from '../../src/agronomy/sprinkler.js';

const catches = fc
  .array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 4, maxLength: 40 })
  .filter((list) => list.some((caught) => caught > 1));

describe("Christiansen's coefficient", () => {
  // Worked out by hand for the fifteen cans that the spreval manual uses: sum 461, mean 30.7333; those above the
  // mean (47 42 45 33 34 40 44 32) exceed it by 317 − 8 × 30.7333 = 71.1333, and those below fall short by as
  // much, so the deviations add up to 142.2667; 1 − 142.2667 ÷ 461 = 0.691396.
  it('is 0.6914 for fifteen cans', () => {
    expect(christiansenUniformity([47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12])).toBeCloseTo(
      0.691396,
      6,
    );
  });

  // Mean 25, deviations 3 × 25 + 75 = 150: 1 − 150 ÷ 100 = −0.5.
  it('falls below nothing when one can catches it all', () => {
    expect(christiansenUniformity([0, 0, 0, 100])).toBeCloseTo(-0.5, 12);
  });
});

describe('evenness of a sprinkler', () => {
  it('is 1 when every can caught the same', () => {
    expect(lowQuarterUniformity([20, 20, 20, 20, 20])).toBeCloseTo(1, 12);
    expect(christiansenUniformity([20, 20, 20, 20, 20])).toBeCloseTo(1, 12);
  });

  it('does not depend on the order of the cans or on their size', () => {
    fc.assert(
      fc.property(catches, fc.double({ min: 0.1, max: 10, noNaN: true }), (list, scale) => {
        const other = [...list].reverse().map((caught) => caught * scale);
        expect(lowQuarterUniformity(other)).toBeCloseTo(lowQuarterUniformity(list), 9);
        expect(christiansenUniformity(other)).toBeCloseTo(christiansenUniformity(list), 9);
      }),
    );
  });

  it('by the low quarter is a share from 0 to 1, and by Christiansen at most 1', () => {
    fc.assert(
      fc.property(catches, (list) => {
        expect(lowQuarterUniformity(list)).toBeGreaterThanOrEqual(0);
        expect(lowQuarterUniformity(list)).toBeLessThanOrEqual(1 + 1e-12);
        expect(christiansenUniformity(list)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('is refused for too few, empty or negative cans', () => {
    expect(() => lowQuarterUniformity([1, 2, 3])).toThrow('Set out more cans.');
    expect(() => lowQuarterUniformity([0, 0, 0, 0])).toThrow('Every can is empty.');
    expect(() => christiansenUniformity([1, 2, -3, 4])).toThrow('catchesMl');
    expect(() => christiansenUniformity([1, 2, Number.NaN, 4])).toThrow('catchesMl');
  });
});

describe('a catch test', () => {
  // A mouth 80 mm across is π × 40² = 5026.5 mm²; 25 mL are 25 000 mm³: 4.974 mm.
  it('turns 25 mL in a can 80 mm across into 4.97 mm', () => {
    expect(catchDepthMm({ caughtMl: 25, mouthDiameterMm: 80 })).toBeCloseTo(4.974, 3);
  });

  // 5 mm in 20 min is 15 mm/h; 6 mm at 15 mm/h take 24 min, and 40 min when the driest quarter gets 60 %.
  it('gives the rate, and the time for the mean and for the driest quarter', () => {
    const rateMmPerH = sprinklerRateMmPerH({ meanDepthMm: 5, minutes: 20 });
    expect(rateMmPerH).toBe(15);
    expect(runMinutes({ wantedMm: 6, rateMmPerH, uniformity: 1 })).toBeCloseTo(24, 9);
    expect(runMinutes({ wantedMm: 6, rateMmPerH, uniformity: 0.6 })).toBeCloseTo(40, 9);
  });

  it('is refused without time, mouth or rate', () => {
    expect(() => sprinklerRateMmPerH({ meanDepthMm: 5, minutes: 0 })).toThrow('minutes');
    expect(() => catchDepthMm({ caughtMl: 5, mouthDiameterMm: 0 })).toThrow('mouthDiameterMm');
    expect(() => runMinutes({ wantedMm: 5, rateMmPerH: 0, uniformity: 1 })).toThrow('rateMmPerH');
  });
});
