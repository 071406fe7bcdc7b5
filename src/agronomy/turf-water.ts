/** Water that a lawn uses in a day, from the reference evapotranspiration. */
import { requireAtLeast } from '../base/refuse.js';

/**
 * Evapotranspiration of a crop that lacks nothing, ETc = Kc ET0.
 *
 * @param et0Mm ET0, mm/day, ≥ 0
 * @param cropCoefficient Kc, no unit, ≥ 0; the figure for turf comes from the caller
 * @returns ETc, mm/day
 * @throws {RangeError} when an argument is negative
 * @source fao-56, equations 56 and 58
 */
export function turfWaterUseMm({
  et0Mm,
  cropCoefficient,
}: {
  readonly et0Mm: number;
  readonly cropCoefficient: number;
}): number {
  requireAtLeast('et0Mm', et0Mm, 0);
  requireAtLeast('cropCoefficient', cropCoefficient, 0);
  return cropCoefficient * et0Mm;
}
