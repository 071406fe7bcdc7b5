/**
 * Calibrating a sprayer with plain water: how much liquid lands on the ground at the pace it is walked.
 *
 * No amount of any product is worked out here; that takes the label's rate (see tank-loads).
 */
import { finiteResult, requireAbove, requireAtLeast, requireCount } from '../base/refuse.js';
import { AREA_IN_M2 } from '../base/units.js';

/**
 * Spray volume from nozzle flow, walking speed and swath.
 *
 *   volumeLPerHa = 600 × flowLPerMin ÷ (speedKmPerH × swathM)
 *
 * The 600 is 60 min/h × 10,000 m²/ha ÷ 1,000 m/km.
 *
 * @param flowLPerMin all nozzles together, L/min, above 0
 * @param speedKmPerH walking speed while spraying, km/h, above 0
 * @param swathM width wetted in one pass, m, above 0
 * @returns L/ha; 100 L/ha is 10 mL/m²
 * @throws {RangeError} when an argument is not above 0
 */
export function sprayVolumeLPerHa({
  flowLPerMin,
  speedKmPerH,
  swathM,
}: {
  readonly flowLPerMin: number;
  readonly speedKmPerH: number;
  readonly swathM: number;
}): number {
  requireAbove('flowLPerMin', flowLPerMin, 0);
  requireAbove('speedKmPerH', speedKmPerH, 0);
  requireAbove('swathM', swathM, 0);
  return finiteResult('volumeLPerHa', (600 * flowLPerMin) / (speedKmPerH * swathM));
}

/**
 * Speed from a taped distance and the seconds it takes.
 *
 *   speedKmPerH = 3.6 × distanceM ÷ timeS
 *
 * @returns km/h
 * @throws {RangeError} when an argument is not above 0
 */
export function speedKmPerH({
  distanceM,
  timeS,
}: {
  readonly distanceM: number;
  readonly timeS: number;
}): number {
  requireAbove('distanceM', distanceM, 0);
  requireAbove('timeS', timeS, 0);
  return finiteResult('speedKmPerH', (3.6 * distanceM) / timeS);
}

/**
 * Mean of timed runs over the same course.
 *
 * @param runsS seconds of each run, each above 0; two or more, because one run can be a fluke
 * @returns s
 * @throws {RangeError} when there are fewer than two runs or one is not above 0
 * @source North Carolina State University, sprayer calibration worksheet: time it twice and average
 */
export function meanRunS({ runsS }: { readonly runsS: readonly number[] }): number {
  requireCount('runsS', runsS, 2);
  for (const runS of runsS) requireAbove('runsS', runS, 0);
  return finiteResult('meanRunS', runsS.reduce((sum, runS) => sum + runS, 0) / runsS.length);
}

/**
 * Length of a test strip of a wanted area.
 *
 *   lengthM = areaM2 ÷ swathM
 *
 * @param swathM width of the pass, m, above 0
 * @returns m
 * @throws {RangeError} when an argument is not above 0
 */
export function testStripM({ areaM2, swathM }: { readonly areaM2: number; readonly swathM: number }): number {
  requireAbove('areaM2', areaM2, 0);
  requireAbove('swathM', swathM, 0);
  return finiteResult('lengthM', areaM2 / swathM);
}

/**
 * Spray volume from a catch test: the liquid let out in the time that the test area takes.
 *
 *   volumeLPerHa = 10,000 × caughtL ÷ areaM2
 *
 * @param areaM2 test area, m², above 0
 * @param caughtL water caught in that time, L, 0 or more
 * @returns L/ha
 * @throws {RangeError} when an argument is outside its range
 * @source UF/IFAS, Larimer County and NC State: the same test on 1/128 acre, where fluid ounces caught are US gallons per acre
 */
export function caughtVolumeLPerHa({
  areaM2,
  caughtL,
}: {
  readonly areaM2: number;
  readonly caughtL: number;
}): number {
  requireAbove('areaM2', areaM2, 0);
  requireAtLeast('caughtL', caughtL, 0);
  return finiteResult('volumeLPerHa', (AREA_IN_M2.ha * caughtL) / areaM2);
}

/**
 * Seconds to spend on a test strip so that a wanted amount of water lands on it.
 *
 *   timeS = 60 × areaM2 × waterLPerM2 ÷ flowLPerMin
 *
 * @param areaM2 strip, m², above 0
 * @param waterLPerM2 wanted water, L/m², above 0
 * @param flowLPerMin measured flow, L/min, above 0
 * @returns s
 * @throws {RangeError} when an argument is not above 0
 */
export function testStripS({
  areaM2,
  waterLPerM2,
  flowLPerMin,
}: {
  readonly areaM2: number;
  readonly waterLPerM2: number;
  readonly flowLPerMin: number;
}): number {
  requireAbove('areaM2', areaM2, 0);
  requireAbove('waterLPerM2', waterLPerM2, 0);
  requireAbove('flowLPerMin', flowLPerMin, 0);
  return finiteResult('timeS', (60 * areaM2 * waterLPerM2) / flowLPerMin);
}
