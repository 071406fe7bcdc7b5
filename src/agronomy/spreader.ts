/** Calibrating a spreader by weight, because the numbers on its dial differ from model to model. */
import { finiteResult, requireAbove, requireAtLeast, requireWhole } from '../base/refuse.js';

/**
 * Rate a spreader laid down on a test strip.
 *
 *   rateGPerM2 = massG ÷ areaM2
 *
 * @param massG weighed before less weighed after, or swept up, g, 0 or more
 * @param areaM2 strip walked, m², above 0
 * @returns g/m²
 * @throws {RangeError} when an argument is outside its range
 */
export function spreadRateGPerM2({
  massG,
  areaM2,
}: {
  readonly massG: number;
  readonly areaM2: number;
}): number {
  requireAtLeast('massG', massG, 0);
  requireAbove('areaM2', areaM2, 0);
  return finiteResult('rateGPerM2', massG / areaM2);
}

/**
 * What to multiply the present output by.
 *
 *   correction = wantedGPerM2 ÷ measuredGPerM2; above 1 open the gate, below 1 close it, then test again
 *
 * @param wantedGPerM2 g/m², above 0
 * @param measuredGPerM2 from the test strip, g/m², above 0
 * @returns factor, above 0
 * @throws {RangeError} when a rate is not above 0
 */
export function spreaderCorrection({
  wantedGPerM2,
  measuredGPerM2,
}: {
  readonly wantedGPerM2: number;
  readonly measuredGPerM2: number;
}): number {
  requireAbove('wantedGPerM2', wantedGPerM2, 0);
  requireAbove('measuredGPerM2', measuredGPerM2, 0, 'Nothing fell out: open the gate and test again.');
  return finiteResult('correction', wantedGPerM2 / measuredGPerM2);
}

/**
 * Rate for each pass when the whole is laid down in several, such as two at right angles.
 *
 *   ratePerPassGPerM2 = rateGPerM2 ÷ passCount
 *
 * @param rateGPerM2 whole rate, g/m², 0 or more
 * @param passCount whole number, 1 or more; two at right angles even out stripes and misses
 * @returns g/m² for each pass
 * @throws {RangeError} when an argument is outside its range
 * @source Rutgers, Snyder Research Farm, drop-spreader calibration: each of two passes at half the rate
 */
export function ratePerPassGPerM2({
  rateGPerM2,
  passCount,
}: {
  readonly rateGPerM2: number;
  readonly passCount: number;
}): number {
  requireAtLeast('rateGPerM2', rateGPerM2, 0);
  requireWhole('passCount', passCount, 1);
  return rateGPerM2 / passCount;
}
