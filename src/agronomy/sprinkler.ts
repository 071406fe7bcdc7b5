/**
 * What a catch test says about a sprinkler: how even it is, how fast, and how long to run it.
 *
 * In: the water that equal cans caught. Cans must be alike; then mL serve as well as mm for evenness.
 */
import { requireAbove, requireAtLeast, requireCount, requireFractionAboveZero } from '../base/refuse.js';

/**
 * Distribution uniformity of the driest quarter.
 *
 *   DU = mean of the lowest quarter ÷ mean of all
 *
 * The quarter is rounded up to whole cans.
 *
 * @param catchesMl one per can, any order, mL or mm, each ≥ 0, at least one above 0; 4 cans or more
 * @returns share from 0 to 1
 * @throws {RangeError} when there are fewer than four cans, a catch is negative, or all are empty
 * @source spreval-manual, help page DU, after Merriam and Keller 1978
 */
export function lowQuarterUniformity(catchesMl: readonly number[]): number {
  const mean = meanCatch(catchesMl);
  const lowest = [...catchesMl].sort((a, b) => a - b).slice(0, Math.ceil(catchesMl.length / 4));
  return sum(lowest) / lowest.length / mean;
}

/**
 * Christiansen's coefficient of uniformity.
 *
 *   CU = 1 − Σ|x − mean| ÷ (n × mean)
 *
 * @param catchesMl as for {@link lowQuarterUniformity}
 * @returns 1 when every can caught the same; may fall below 0
 * @throws {RangeError} as {@link lowQuarterUniformity}
 * @source spreval-manual, help page CU, after Christiansen 1942
 */
export function christiansenUniformity(catchesMl: readonly number[]): number {
  const mean = meanCatch(catchesMl);
  const deviations = catchesMl.map((caught) => Math.abs(caught - mean));
  return 1 - sum(deviations) / (catchesMl.length * mean);
}

/**
 * Depth of water in a straight-sided can, volume ÷ area of its mouth.
 *
 * @param caughtMl mL, ≥ 0
 * @param mouthDiameterMm inner width across the mouth, mm, > 0
 * @returns mm
 * @throws {RangeError} when an argument is outside the range above
 */
export function catchDepthMm({
  caughtMl,
  mouthDiameterMm,
}: {
  readonly caughtMl: number;
  readonly mouthDiameterMm: number;
}): number {
  requireAtLeast('caughtMl', caughtMl, 0);
  requireAbove('mouthDiameterMm', mouthDiameterMm, 0);
  const mouthMm2 = (Math.PI * mouthDiameterMm ** 2) / 4;
  return (1000 * caughtMl) / mouthMm2;
}

/**
 * Rate at which a sprinkler waters, mean depth × 60 ÷ minutes.
 *
 * @param meanDepthMm mean of all cans, mm, ≥ 0
 * @param minutes length of the test, > 0
 * @returns mm/h
 * @throws {RangeError} when an argument is outside the range above
 */
export function sprinklerRateMmPerH({
  meanDepthMm,
  minutes,
}: {
  readonly meanDepthMm: number;
  readonly minutes: number;
}): number {
  requireAtLeast('meanDepthMm', meanDepthMm, 0);
  requireAbove('minutes', minutes, 0);
  return (meanDepthMm * 60) / minutes;
}

/**
 * Time to run the sprinkler so that the driest quarter gets the wanted depth.
 *
 *   minutes = wanted ÷ rate × 60 ÷ DU
 *
 * @param wantedMm mm, ≥ 0
 * @param rateMmPerH mean rate, mm/h, > 0
 * @param uniformity DU, above 0 to 1; 1 feeds the mean instead of the driest quarter
 * @returns minutes
 * @throws {RangeError} when an argument is outside the range above
 */
export function runMinutes({
  wantedMm,
  rateMmPerH,
  uniformity,
}: {
  readonly wantedMm: number;
  readonly rateMmPerH: number;
  readonly uniformity: number;
}): number {
  requireAtLeast('wantedMm', wantedMm, 0);
  requireAbove('rateMmPerH', rateMmPerH, 0);
  requireFractionAboveZero('uniformity', uniformity);
  return (wantedMm / rateMmPerH / uniformity) * 60;
}

function meanCatch(catchesMl: readonly number[]): number {
  requireCount('catchesMl', catchesMl, 4, 'Set out more cans.');
  for (const caught of catchesMl) requireAtLeast('catchesMl', caught, 0);
  const mean = sum(catchesMl) / catchesMl.length;
  requireAbove('mean of catchesMl', mean, 0, 'Every can is empty.');
  return mean;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
