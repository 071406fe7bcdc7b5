/**
 * Hand and arm vibration over a working day, for scarifiers, corers and mowers.
 *
 * The day is 8 hours. The action and limit values are arguments: they are law and belong to the rules.
 */
import { finiteResult, requireAbove, requireAtLeast, requireBetween } from '../base/refuse.js';

const DAY_HOURS = 8;

/** One spell with one machine. */
export interface VibrationSpell {
  /** Vibration at the handle, m/s², 0 or more; from the machine's handbook. */
  readonly vibrationMPerS2: number;
  /** Time with the hands on it, h, 0 to 24. */
  readonly hours: number;
}

/**
 * Exposure points of a spell, which add up over a day.
 *
 *   points = 2 × vibrationMPerS2² × hours
 *
 * @returns points, unrounded
 * @throws {RangeError} when an argument is outside its range
 * @source HSE (UK), hand-arm vibration exposure calculator: 2.5 m/s² for 8 h is 100 points
 */
export function vibrationPoints({ vibrationMPerS2, hours }: VibrationSpell): number {
  requireAtLeast('vibrationMPerS2', vibrationMPerS2, 0);
  requireBetween('hours', hours, { min: 0, max: 24 });
  return finiteResult('points', 2 * vibrationMPerS2 ** 2 * hours);
}

/**
 * Daily exposure A(8) of one or more spells: the even vibration over 8 hours that would do the same.
 *
 *   A(8) = √(Σ vibrationMPerS2² × hours ÷ 8)
 *
 * @param spells every spell of the day
 * @returns m/s²
 * @throws {RangeError} when a spell is outside its range
 * @source HSE (UK), hand-arm vibration exposure calculator
 */
export function dailyVibrationMPerS2({ spells }: { readonly spells: readonly VibrationSpell[] }): number {
  const points = spells.reduce((sum, spell) => sum + vibrationPoints(spell), 0);
  return finiteResult('A(8)', Math.sqrt(points / (2 * DAY_HOURS)));
}

/**
 * Hours with one machine until a daily value is reached.
 *
 *   hours = 8 × (dailyMPerS2 ÷ vibrationMPerS2)²; it can pass 24, and then the day ends first
 *
 * @param vibrationMPerS2 m/s², above 0
 * @param dailyMPerS2 the action or limit value, A(8), m/s², above 0
 * @returns h
 * @throws {RangeError} when an argument is not above 0
 */
export function hoursToDailyVibration({
  vibrationMPerS2,
  dailyMPerS2,
}: {
  readonly vibrationMPerS2: number;
  readonly dailyMPerS2: number;
}): number {
  requireAbove('vibrationMPerS2', vibrationMPerS2, 0);
  requireAbove('dailyMPerS2', dailyMPerS2, 0);
  return finiteResult('hours', DAY_HOURS * (dailyMPerS2 / vibrationMPerS2) ** 2);
}
