/** Rain beside need: mean rain of a day, and what is left to give by hand. */
import { requireAtLeast, requireWhole } from '../base/refuse.js';

/**
 * Mean rain of a day in a month. Rain comes in lumps: this is a budget, not a forecast.
 *
 * @param monthlyRainMm mm in the month, ≥ 0
 * @param daysInMonth 28 to 31
 * @returns mm/day
 * @throws {RangeError} when an argument is outside the range above
 */
export function meanDailyRainMm({
  monthlyRainMm,
  daysInMonth,
}: {
  readonly monthlyRainMm: number;
  readonly daysInMonth: number;
}): number {
  requireAtLeast('monthlyRainMm', monthlyRainMm, 0);
  requireWhole('daysInMonth', daysInMonth, 1);
  return monthlyRainMm / daysInMonth;
}

/**
 * Water that rain does not bring: need less rain, never below 0.
 *
 * @param needMm mm, ≥ 0
 * @param rainMm mm over the same time, ≥ 0
 * @returns mm to give
 * @throws {RangeError} when an argument is negative
 */
export function shortfallMm({
  needMm,
  rainMm,
}: {
  readonly needMm: number;
  readonly rainMm: number;
}): number {
  requireAtLeast('needMm', needMm, 0);
  requireAtLeast('rainMm', rainMm, 0);
  return Math.max(0, needMm - rainMm);
}
