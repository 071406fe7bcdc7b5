/**
 * Germination by thermal time: warmth above a base, summed until half the seed has sprouted.
 *
 * Base temperature and thermal time belong to the species and come from the caller.
 * In a dish; field soil takes longer, by a stretch that the caller names too.
 *
 * @source larsen-bibby-2005, Crop Science 45(5) 2030–2037
 */
import { requireAbove, requireAtLeast, requireFinite, requireWhole } from '../base/refuse.js';

export interface SeedWarmth {
  /** Temperature at which germination stops, °C. */
  readonly baseC: number;
  /** Warmth above the base until half the seed that will sprout has done so, °C day. */
  readonly thermalTimeCDays: number;
}

/**
 * Rate of germination at a constant temperature, 1 ÷ t50 = (T − Tb) ÷ TT50.
 *
 * @param soilC T, °C
 * @returns share of the way a day; 0 at and below the base
 * @throws {RangeError} when the thermal time is not above 0
 * Holds for temperatures below the optimum; the source tested 8 to 24 °C.
 * @source larsen-bibby-2005
 */
export function germinationPerDay({
  soilC,
  baseC,
  thermalTimeCDays,
}: SeedWarmth & { readonly soilC: number }): number {
  requireFinite('soilC', soilC);
  requireFinite('baseC', baseC);
  requireAbove('thermalTimeCDays', thermalTimeCDays, 0);
  return Math.max(0, soilC - baseC) / thermalTimeCDays;
}

/**
 * Days in a dish until half the seed has sprouted, TT50 ÷ (T − Tb).
 *
 * @param soilC T, °C
 * @returns days; undefined at or below the base, where it never comes
 * @throws {RangeError} when the thermal time is not above 0
 * Holds as {@link germinationPerDay}.
 * @source larsen-bibby-2005
 */
export function germinationDays(seed: SeedWarmth & { readonly soilC: number }): number | undefined {
  const perDay = germinationPerDay(seed);
  return perDay === 0 ? undefined : 1 / perDay;
}

/**
 * Days in the field until half the seedlings show, dish days × stretch.
 *
 * @param dishDays days, ≥ 0
 * @param stretch field days for each dish day, 1 or more; a figure of the caller
 * @returns days
 * @throws {RangeError} when an argument is outside the range above
 */
export function fieldEmergenceDays({
  dishDays,
  stretch,
}: {
  readonly dishDays: number;
  readonly stretch: number;
}): number {
  requireAtLeast('dishDays', dishDays, 0);
  requireAtLeast('stretch', stretch, 1);
  return dishDays * stretch;
}

/**
 * Days until a thermal time is reached in soil that warms or cools.
 *
 * @param soilCOn mean soil temperature on the first day (0), the second (1) and so on, °C
 * @param limitDays where to stop looking, whole days, 1 or more
 * @returns days, with the part of the last day that was needed; undefined when not reached by then
 * @throws {RangeError} when a temperature is not finite, or an argument is out of range
 * @source larsen-bibby-2005, the same sum with a temperature for each day
 */
export function daysToThermalTime({
  baseC,
  thermalTimeCDays,
  soilCOn,
  limitDays,
}: SeedWarmth & {
  readonly soilCOn: (day: number) => number;
  readonly limitDays: number;
}): number | undefined {
  requireFinite('baseC', baseC);
  requireAbove('thermalTimeCDays', thermalTimeCDays, 0);
  requireWhole('limitDays', limitDays, 1);
  let warmthCDays = 0;
  for (let day = 0; day < limitDays; day++) {
    const soilC = soilCOn(day);
    requireFinite('soilC', soilC);
    const todayCDays = Math.max(0, soilC - baseC);
    const missingCDays = thermalTimeCDays - warmthCDays;
    // A sum of fractions may end a hair short of the mark; that is no reason for another day.
    if (todayCDays > 0 && todayCDays >= missingCDays - 1e-9)
      return day + Math.min(1, missingCDays / todayCDays);
    warmthCDays += todayCDays;
  }
  return undefined;
}

/**
 * Days left before the soil falls under a temperature for the first time.
 *
 * @param soilCOn as for {@link daysToThermalTime}
 * @param thresholdC °C
 * @param limitDays where to stop looking, whole days, 1 or more
 * @returns whole days in a row, from the first, at or above the threshold; at most limitDays
 * @throws {RangeError} when a temperature or the threshold is not finite, or the limit is not a whole number
 */
export function growingDaysLeft({
  soilCOn,
  thresholdC,
  limitDays,
}: {
  readonly soilCOn: (day: number) => number;
  readonly thresholdC: number;
  readonly limitDays: number;
}): number {
  requireWhole('limitDays', limitDays, 1);
  requireFinite('thresholdC', thresholdC);
  for (let day = 0; day < limitDays; day++) {
    const soilC = soilCOn(day);
    requireFinite('soilC', soilC);
    if (soilC < thresholdC) return day;
  }
  return limitDays;
}
