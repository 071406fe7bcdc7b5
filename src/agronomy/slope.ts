/** Slope of the ground from two lengths, for deciding what may be worked there. */
import { finiteResult, refuse, requireAbove, requireAtLeast } from '../base/refuse.js';

/**
 * Slope from rise over level distance, as with a board held level and a rule.
 *
 *   slopeDeg = arctan(riseM ÷ runM)
 *
 * @param riseM height gained, 0 or more, m
 * @param runM level distance, m, above 0; not the distance along the ground
 * @returns degrees, 0 to 90
 * @throws {RangeError} when an argument is outside its range
 */
export function slopeDeg({ riseM, runM }: { readonly riseM: number; readonly runM: number }): number {
  requireAtLeast('riseM', riseM, 0);
  requireAbove('runM', runM, 0);
  return (Math.atan2(riseM, runM) * 180) / Math.PI;
}

/**
 * Rise of a slope over a level distance: the way back.
 *
 *   riseM = runM × tan(slopeDeg)
 *
 * @param runM level distance, m, above 0
 * @param slopeDeg degrees, 0 or more and under 90
 * @returns m
 * @throws {RangeError} when an argument is outside its range
 */
export function riseM({ runM, slopeDeg: deg }: { readonly runM: number; readonly slopeDeg: number }): number {
  requireAbove('runM', runM, 0);
  requireAtLeast('slopeDeg', deg, 0);
  if (deg >= 90) refuse('slopeDeg', 'must be under 90', deg);
  return finiteResult('riseM', runM * Math.tan((deg * Math.PI) / 180));
}
