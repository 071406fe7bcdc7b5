/**
 * G. W. Brier, "Verification of forecasts expressed in terms of probability", Monthly Weather Review 78 (1950) 1-3:
 * ten forecasts of rain or no rain and the score P of the table. The table is quoted from memory.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quadraticLoss, sharesLoss, sharesOfChoice } from '../../src/training/sureness.js';

const FORECASTS = [0.7, 0.9, 0.8, 0.4, 0.2, 0, 0, 0, 0, 0.1];
const RAINED = [false, true, true, true, false, false, false, false, false, false];

describe('the quadratic score', () => {
  it('is half of the P = 0.19 that is printed for two classes', () => {
    const claims = FORECASTS.map((sure, index) => ({ what: 'rain', sure, isRight: RAINED[index] === true }));
    expect((2 * quadraticLoss(claims)) / claims.length).toBeCloseTo(0.19, 10);
  });

  it('is best, on average, for who states the sureness that they hold', () => {
    const percent = fc.integer({ min: 0, max: 100 }).map((each) => each / 100);
    fc.assert(
      fc.property(percent, percent, (held, stated) => {
        const expected = (sure: number): number =>
          held * quadraticLoss([{ what: '', sure, isRight: true }]) +
          (1 - held) * quadraticLoss([{ what: '', sure, isRight: false }]);
        expect(expected(held)).toBeLessThanOrEqual(expected(stated) + 1e-12);
      }),
    );
  });

  it('refuses a sureness outside 0 to 1', () => {
    expect(() => quadraticLoss([{ what: '', sure: 80, isRight: true }])).toThrow(/0 to 1/);
  });

  // Worked by hand from the definition: the sum over all classes of (share − outcome)², halved.
  it.each([
    [[0.75, 0, 0.1, 0.15], 0, 0.0475],
    [[0.75, 0, 0.1, 0.15], 1, 0.7975],
    [[0.75, 0, 0.1, 0.15], 3, 0.6475],
    [[0.25, 0.25, 0.25, 0.25], 2, 0.375],
    [[1, 0, 0], 0, 0],
    [[1, 0, 0], 2, 1],
  ])('of the shares %j, the one at %i being true, is %f', (shares, truth, loss) => {
    expect(sharesLoss(shares, truth)).toBeCloseTo(loss, 10);
  });

  it('of shares is best, on average, for who states the shares that they hold', () => {
    const three = fc
      .array(fc.integer({ min: 1, max: 100 }), { minLength: 3, maxLength: 3 })
      .map((parts) => parts.map((part) => part / parts.reduce((sum, each) => sum + each, 0)));
    fc.assert(
      fc.property(three, three, (held, stated) => {
        const expected = (shares: readonly number[]): number =>
          held.reduce((sum, share, truth) => sum + share * sharesLoss(shares, truth), 0);
        expect(expected(held)).toBeLessThanOrEqual(expected(stated) + 1e-12);
      }),
      { seed: 1950 },
    );
  });

  it('gives who chooses a wrong one at 0 % no more than who has no opinion', () => {
    expect(sharesOfChoice(0, 1, 6)).toEqual(sharesOfChoice(1 / 6, 1, 6));
    expect(() => sharesLoss([0.5, 0.6], 0)).toThrow(RangeError);
  });
});
