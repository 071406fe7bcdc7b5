/**
 * Growing degree days by the mean of the day.
 *
 * @source msu-growing-degree-days, wording of Michigan State and Purdue Universities
 */
import { refuse, requireAtLeast, requireFinite } from '../base/refuse.js';

/**
 * Growing degree days of one day.
 *
 *   GDD = max(0, (Tmax + Tmin) ÷ 2 − base)
 *
 * @param tMinC °C
 * @param tMaxC °C, at least tMinC
 * @param baseC °C, the caller's choice for the plant
 * @returns °C day, never below 0: a cold day takes nothing back
 * @throws {RangeError} when the maximum is below the minimum or an argument is not finite
 * @source msu-growing-degree-days
 */
export function degreeDaysOfDay({
  tMinC,
  tMaxC,
  baseC,
}: {
  readonly tMinC: number;
  readonly tMaxC: number;
  readonly baseC: number;
}): number {
  requireFinite('tMinC', tMinC);
  requireAtLeast('tMaxC', tMaxC, tMinC, 'Are the two swapped?');
  requireFinite('baseC', baseC);
  return Math.max(0, (tMaxC + tMinC) / 2 - baseC);
}

/**
 * Growing degree days of a run of days, summed day by day.
 *
 * @param tMinC °C, one a day
 * @param tMaxC °C, one a day, same order
 * @param baseC °C
 * @returns °C day
 * @throws {RangeError} when the lists differ in length, or as {@link degreeDaysOfDay}
 * @source msu-growing-degree-days
 */
export function degreeDays({
  tMinC,
  tMaxC,
  baseC,
}: {
  readonly tMinC: readonly number[];
  readonly tMaxC: readonly number[];
  readonly baseC: number;
}): number {
  if (tMinC.length !== tMaxC.length) {
    refuse('tMaxC', `must have as many days as tMinC (${tMinC.length})`, tMaxC.length);
  }
  return tMinC.reduce(
    (total, low, day) => total + degreeDaysOfDay({ tMinC: low, tMaxC: tMaxC[day] ?? NaN, baseC }),
    0,
  );
}
