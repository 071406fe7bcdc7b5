/**
 * The root zone as a store that is drawn down day by day.
 *
 * Depletion is the mm of water missing below field capacity: 0 is full, TAW is the wilting point.
 *
 * @source fao-56, equations 85, 86 and 88
 */
import { requireAbove, requireAtLeast, requireBetween } from '../base/refuse.js';

export interface WaterDay {
  readonly rainMm?: number;
  readonly runOffMm?: number;
  readonly wateredMm?: number;
  readonly capillaryRiseMm?: number;
  /** Water really used that day: Ks ETc, not ETc, once the soil is dry. */
  readonly usedMm: number;
}

/**
 * Depletion at the end of a day, and the water that drained away below the roots.
 *
 *   Dr[i] = Dr[i−1] − (P − RO) − I − CR + ETc + DP, kept within 0 to TAW
 *
 * DP is the water that would have pushed the depletion below 0.
 *
 * @param availableMm TAW, mm, > 0
 * @param depletionMm Dr[i−1], mm, 0 to TAW
 * @param day rain P, run-off RO, watering I, capillary rise CR and use ETc, mm, each ≥ 0; missing is 0
 * @returns Dr[i] and DP, mm
 * @throws {RangeError} when an argument is outside the range above, or more runs off than rained
 * @source fao-56, equations 85, 86 and 88
 */
export function depletionAfterDay({
  availableMm,
  depletionMm,
  day,
}: {
  readonly availableMm: number;
  readonly depletionMm: number;
  readonly day: WaterDay;
}): { readonly depletionMm: number; readonly drainageMm: number } {
  requireAbove('availableMm', availableMm, 0);
  requireBetween('depletionMm', depletionMm, { min: 0, max: availableMm });
  const { rainMm = 0, runOffMm = 0, wateredMm = 0, capillaryRiseMm = 0, usedMm } = day;
  for (const [name, value] of Object.entries({ rainMm, runOffMm, wateredMm, capillaryRiseMm, usedMm })) {
    requireAtLeast(name, value, 0);
  }
  requireAtLeast('rainMm', rainMm, runOffMm, 'More cannot run off than falls.');
  const unbounded = depletionMm - (rainMm - runOffMm) - wateredMm - capillaryRiseMm + usedMm;
  return {
    depletionMm: Math.min(availableMm, Math.max(0, unbounded)),
    drainageMm: Math.max(0, -unbounded),
  };
}

/**
 * Dry days until grass begins to suffer.
 *
 *   days = (RAW − Dr) ÷ ETc, never below 0
 *
 * @param readilyAvailableMm RAW, mm, ≥ 0
 * @param depletionMm Dr now, mm, ≥ 0
 * @param usedMmPerDay ETc, mm/day, > 0
 * @returns days, with a part of a day; 0 when it suffers already
 * @throws {RangeError} when an argument is outside the range above
 */
export function daysToStress({
  readilyAvailableMm,
  depletionMm,
  usedMmPerDay,
}: {
  readonly readilyAvailableMm: number;
  readonly depletionMm: number;
  readonly usedMmPerDay: number;
}): number {
  requireAtLeast('readilyAvailableMm', readilyAvailableMm, 0);
  requireAtLeast('depletionMm', depletionMm, 0);
  requireAbove('usedMmPerDay', usedMmPerDay, 0);
  return Math.max(0, readilyAvailableMm - depletionMm) / usedMmPerDay;
}
