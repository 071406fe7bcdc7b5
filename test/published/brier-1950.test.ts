/**
 * G. W. Brier, "Verification of forecasts expressed in terms of probability", Monthly Weather Review 78 (1950) 1-3:
 * ten forecasts of rain or no rain and the score P of the table. The table is quoted from memory.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanQuadraticLoss } from '../../src/training/sureness.js';

const FORECASTS = [0.7, 0.9, 0.8, 0.4, 0.2, 0, 0, 0, 0, 0.1];
const RAINED = [false, true, true, true, false, false, false, false, false, false];

describe('the quadratic score', () => {
  it('is half of the P = 0.19 that is printed for two classes', () => {
    const claims = FORECASTS.map((sure, index) => ({ what: 'rain', sure, isRight: RAINED[index] === true }));
    expect(2 * meanQuadraticLoss(claims)).toBeCloseTo(0.19, 10);
  });

  it('is best, on average, for who states the sureness that they hold', () => {
    const percent = fc.integer({ min: 0, max: 100 }).map((each) => each / 100);
    fc.assert(
      fc.property(percent, percent, (held, stated) => {
        const expected = (sure: number): number =>
          held * meanQuadraticLoss([{ what: '', sure, isRight: true }]) +
          (1 - held) * meanQuadraticLoss([{ what: '', sure, isRight: false }]);
        expect(expected(held)).toBeLessThanOrEqual(expected(stated) + 1e-12);
      }),
    );
  });

  it('refuses a sureness outside 0 to 1, and nothing at all', () => {
    expect(() => meanQuadraticLoss([{ what: '', sure: 80, isRight: true }])).toThrow(/0 to 1/);
    expect(() => meanQuadraticLoss([])).toThrow(RangeError);
  });
});
