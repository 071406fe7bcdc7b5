/** How long the work takes, with a machine and by hand. */
import {
  finiteResult,
  type NumberRange,
  requireAbove,
  requireAtLeast,
  requireFractionAboveZero,
  requireWhole,
} from '../base/refuse.js';
import { AREA_IN_M2 } from '../base/units.js';

/**
 * Ground a machine covers in an hour of work, turning and emptying included.
 *
 *   capacityHaPerH = speedKmPerH × widthM × efficiencyFraction ÷ 10
 *
 * @param speedKmPerH walking speed while working, km/h, above 0
 * @param widthM working width, m, above 0
 * @param efficiencyFraction time at work ÷ time on the lawn, above 0, at most 1
 * @returns ha/h
 * @throws {RangeError} when an argument is outside its range
 * @source the field capacity formula of ASABE EP496, as extension services give it
 */
export function workRateHaPerH({
  speedKmPerH,
  widthM,
  efficiencyFraction,
}: {
  readonly speedKmPerH: number;
  readonly widthM: number;
  readonly efficiencyFraction: number;
}): number {
  requireAbove('speedKmPerH', speedKmPerH, 0);
  requireAbove('widthM', widthM, 0);
  requireFractionAboveZero('efficiencyFraction', efficiencyFraction);
  return finiteResult('capacityHaPerH', (speedKmPerH * widthM * efficiencyFraction) / 10);
}

/**
 * Hours of machine work on an area.
 *
 *   hours = passCount × areaM2 ÷ (10,000 × capacityHaPerH)
 *
 * @param areaM2 m², above 0
 * @param capacityHaPerH from workRateHaPerH, ha/h, above 0
 * @param passCount times over the whole area, whole number, 1 or more
 * @returns h
 * @throws {RangeError} when an argument is outside its range
 */
export function machineHours({
  areaM2,
  capacityHaPerH,
  passCount,
}: {
  readonly areaM2: number;
  readonly capacityHaPerH: number;
  readonly passCount: number;
}): number {
  requireAbove('areaM2', areaM2, 0);
  requireAbove('capacityHaPerH', capacityHaPerH, 0);
  requireWhole('passCount', passCount, 1);
  return finiteResult('hours', (passCount * areaM2) / AREA_IN_M2.ha / capacityHaPerH);
}

/**
 * Quickest and slowest time for hand work on an area.
 *
 *   hours = areaM2 ÷ rateM2PerH, the quick rate giving the smallest time
 *
 * @param areaM2 m², above 0
 * @param rateM2PerH ground one person covers in an hour, m²/h, both ends above 0
 * @returns h, both ends
 * @throws {RangeError} when an argument is outside its range or the range runs backwards
 */
export function handHoursRange({
  areaM2,
  rateM2PerH: { min, max },
}: {
  readonly areaM2: number;
  readonly rateM2PerH: NumberRange;
}): NumberRange {
  requireAbove('areaM2', areaM2, 0);
  requireAbove('rateM2PerH.min', min, 0);
  requireAtLeast('rateM2PerH.max', max, min);
  return { min: finiteResult('hours', areaM2 / max), max: finiteResult('hours', areaM2 / min) };
}
