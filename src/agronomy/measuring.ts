/**
 * How far a measured area can be off, from how far the lengths in it can be off.
 *
 * Two ways of adding: `independent` slips (a tape read twice) partly cancel and add as squares;
 * slips with the `same-cause` (one pace that is too short, a plan at the wrong scale) add in full.
 * The relative error of tape, paces or plan is an argument: the figures belong to the rules.
 */
import { finiteResult, requireAbove, requireAtLeast, requireCount, requireFinite } from '../base/refuse.js';

export type ErrorKind = 'independent' | 'same-cause';

function together(errors: readonly number[], kind: ErrorKind): number {
  return kind === 'independent' ? Math.hypot(...errors) : errors.reduce((sum, error) => sum + error, 0);
}

/**
 * Error of a rectangle from the error of each side.
 *
 *   independent: √((widthM × lengthErrorM)² + (lengthM × widthErrorM)²)
 *   same-cause:  widthM × lengthErrorM + lengthM × widthErrorM
 *
 * @param lengthErrorM how far the length may be off either way, m, 0 or more
 * @param widthErrorM the same for the width
 * @returns ± m²
 * @throws {RangeError} when a side is not above 0 or an error is below 0
 */
export function rectangleErrorM2({
  lengthM,
  widthM,
  lengthErrorM,
  widthErrorM,
  kind,
}: {
  readonly lengthM: number;
  readonly widthM: number;
  readonly lengthErrorM: number;
  readonly widthErrorM: number;
  readonly kind: ErrorKind;
}): number {
  requireAbove('lengthM', lengthM, 0);
  requireAbove('widthM', widthM, 0);
  requireAtLeast('lengthErrorM', lengthErrorM, 0);
  requireAtLeast('widthErrorM', widthErrorM, 0);
  return finiteResult('areaErrorM2', together([widthM * lengthErrorM, lengthM * widthErrorM], kind));
}

/**
 * Relative error of an area when every length in it has the same relative error.
 *
 *   independent: √2 × lengthErrorFraction;  same-cause: 2 × lengthErrorFraction
 *
 * @param lengthErrorFraction error of a length ÷ that length, 0 or more
 * @returns error of the area ÷ the area
 * @throws {RangeError} when the error is below 0
 */
export function areaErrorFraction({
  lengthErrorFraction,
  kind,
}: {
  readonly lengthErrorFraction: number;
  readonly kind: ErrorKind;
}): number {
  requireAtLeast('lengthErrorFraction', lengthErrorFraction, 0);
  return together([lengthErrorFraction, lengthErrorFraction], kind);
}

/**
 * Error of a whole lawn from its parts.
 *
 *   independent: √Σ(√2 e part)²;  same-cause: 2 e × |Σ part|, because one wrong pace scales lawn and beds alike
 *
 * @param partsM2 area of each part, m², below 0 for a bed taken away, none 0
 * @param lengthErrorFraction e, as above
 * @returns ± m²
 * @throws {RangeError} when the list is empty, a part is not a number, or the error is below 0
 */
export function lawnErrorM2({
  partsM2,
  lengthErrorFraction,
  kind,
}: {
  readonly partsM2: readonly number[];
  readonly lengthErrorFraction: number;
  readonly kind: ErrorKind;
}): number {
  requireCount('partsM2', partsM2, 1);
  for (const partM2 of partsM2) requireFinite('partsM2', partM2);
  const fraction = areaErrorFraction({ lengthErrorFraction, kind });
  return finiteResult('areaErrorM2', Math.abs(together(partsM2, kind)) * fraction);
}

/**
 * Length of one pace, from walking a known distance a few times.
 *
 *   paceM = distanceM ÷ mean of the counts
 *
 * @param distanceM taped distance, m, above 0
 * @param paceCounts paces counted on each walk, each above 0, one or more walks
 * @returns m
 * @throws {RangeError} when a distance or count is not above 0
 */
export function paceM({
  distanceM,
  paceCounts,
}: {
  readonly distanceM: number;
  readonly paceCounts: readonly number[];
}): number {
  requireAbove('distanceM', distanceM, 0);
  requireCount('paceCounts', paceCounts, 1);
  for (const count of paceCounts) requireAbove('paceCounts', count, 0);
  const mean = paceCounts.reduce((sum, count) => sum + count, 0) / paceCounts.length;
  return finiteResult('paceM', distanceM / mean);
}
