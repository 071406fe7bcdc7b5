/** How well a stated sureness fits what turned out: the quadratic score. */
import type { Attempt } from './attempt.js';
import type { Diagnosed } from './diagnosis.js';
import type { WorkedCase } from './worked-case.js';

/** The source of the score, in the pack's list. */
export const SURENESS_SOURCE = 'brier-1950';

/** What binary arithmetic leaves. */
const DUST = 1e-9;

export interface Claim {
  readonly what: string;
  /** 0 to 1. */
  readonly sure: number;
  readonly isRight: boolean;
}

/**
 * Quadratic loss of shares over rivals of which one is true, halved to lie in 0 to 1: (sum of q² − 2 q of the true one + 1) ÷ 2.
 * Brier's score of one forecast (see below), with its sum over all classes kept.
 *
 * @param shares one per rival, adding to 1
 * @throws {RangeError} when they do not add to 1
 */
export function sharesLoss(shares: readonly number[], trueIndex: number): number {
  const whole = shares.reduce((sum, share) => sum + share, 0);
  if (Math.abs(whole - 1) > DUST) throw new RangeError(`shares add to 1, not ${whole}`);
  const squares = shares.reduce((sum, share) => sum + share ** 2, 0);
  return (squares - 2 * (shares[trueIndex] ?? 0) + 1) / 2;
}

/**
 * The shares that one stated sureness stands for: the chosen rival has it, the others share the rest evenly. Who
 * chooses a rival cannot hold it less likely than one drawn by lot, so nothing is gained by choosing at 0 %.
 */
export function sharesOfChoice(sure: number, chosenIndex: number, count: number): number[] {
  const own = Math.max(sure, 1 / count);
  return Array.from({ length: count }, (_, index) => (index === chosenIndex ? own : (1 - own) / (count - 1)));
}

/**
 * Quadratic loss of claims that turn out right or wrong: the sum of (sure − outcome)², outcome 1 or 0.
 *
 * The score of Brier, "Verification of forecasts expressed in terms of probability", Monthly Weather Review 78
 * (1950), which takes the mean and sums over all classes; for two classes each of its terms is twice this one. It is
 * proper for claims that are given: nobody does better on average by stating another sureness than the one they hold.
 * Each claim costs from 0 to 1, 0.25 for "fifty-fifty".
 *
 * @throws {RangeError} when a sureness is outside 0 to 1
 */
export function quadraticLoss(claims: readonly Claim[]): number {
  return claims.reduce((sum, { sure, isRight }) => {
    if (!(sure >= 0 && sure <= 1)) throw new RangeError(`a sureness is from 0 to 1, not ${sure}`);
    return sum + (sure - (isRight ? 1 : 0)) ** 2;
  }, 0);
}

/** What was stated and turned out right or wrong; what was named with due doubt is neither. */
export function claimsOf({ found }: WorkedCase, { commitment }: Attempt, diagnosis: Diagnosed): Claim[] {
  if (commitment === undefined) return [];
  const { verdict, sure, findings } = commitment;
  return [
    { what: verdict, sure, isRight: diagnosis.isVerdictRight },
    ...findings
      .filter(({ id }) => !diagnosis.doubted.includes(id))
      .map((claim) => ({ what: claim.id, sure: claim.sure, isRight: found.has(claim.id) })),
  ];
}

/**
 * How far what was said lay from what is so, 0 to 1. What is scored is fixed by the case and not by the trainee, so
 * nothing is gained by leaving a thing out: the verdict over all the verdicts there are, and each finding of the
 * rules, 0 % where it was not named. The sum is shared over the verdict and the key findings. True findings that do
 * not decide, and those that cannot be told yet and were named with doubt, are left aside.
 */
export function lossOf(worked: WorkedCase, { commitment }: Attempt, diagnosis: Diagnosed): number | null {
  if (commitment === undefined) return null;
  const { lesson, pack, found, marking } = worked;
  const verdicts = Object.keys(marking.verdicts);
  const chosen = verdicts.indexOf(commitment.verdict);
  const truth = diagnosis.isVerdictRight ? chosen : verdicts.indexOf(lesson.expected.verdict);
  const { findings: key } = lesson.expected;
  const claims = pack.findings
    .filter(({ id }) => key.includes(id) || (!found.has(id) && !diagnosis.doubted.includes(id)))
    .map(({ id }) => ({
      what: id,
      sure: commitment.findings.find((claim) => claim.id === id)?.sure ?? 0,
      isRight: key.includes(id),
    }));
  const ofVerdict = sharesLoss(sharesOfChoice(commitment.sure, chosen, verdicts.length), truth);
  return Math.min(1, (ofVerdict + quadraticLoss(claims)) / (1 + key.length));
}
