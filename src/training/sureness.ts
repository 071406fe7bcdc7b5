/** How well a stated sureness fits what turned out: the quadratic score. */

/** The source of the score, in the pack's list. */
export const SURENESS_SOURCE = 'brier-1950';

export interface Claim {
  readonly what: string;
  /** 0 to 1. */
  readonly sure: number;
  readonly isRight: boolean;
}

/**
 * Mean quadratic loss of claims that turn out right or wrong: the mean of (sure − outcome)², outcome 1 or 0.
 *
 * The score of Brier, "Verification of forecasts expressed in terms of probability", Monthly Weather Review 78
 * (1950), which sums over all classes; for two classes that sum is twice this one. It is proper: nobody does better
 * on average by stating another sureness than the one they hold. 0 is best, 1 worst, 0.25 is "fifty-fifty" throughout.
 *
 * @throws {RangeError} when there is no claim, or a sureness is outside 0 to 1
 */
export function meanQuadraticLoss(claims: readonly Claim[]): number {
  if (claims.length === 0) throw new RangeError('there is no claim to score');
  const losses = claims.map(({ sure, isRight }) => {
    if (!(sure >= 0 && sure <= 1)) throw new RangeError(`a sureness is from 0 to 1, not ${sure}`);
    return (sure - (isRight ? 1 : 0)) ** 2;
  });
  return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}
