/**
 * Water as volume, as depth and as time at the hose.
 *
 * 1 mm of water on 1 m² is 1 L.
 *
 * @source perth-region-nrm-irrinote: 1 mm on 1 m² is 1 litre
 */
import { requireAbove, requireAtLeast, requireFractionAboveZero, requireWhole } from '../base/refuse.js';

/**
 * Volume that a depth of water takes on an area, depth × area.
 *
 * @param depthMm mm, ≥ 0
 * @param areaM2 m², > 0
 * @returns L
 * @throws {RangeError} when an argument is outside the range above
 */
export function waterVolumeL({
  depthMm,
  areaM2,
}: {
  readonly depthMm: number;
  readonly areaM2: number;
}): number {
  requireAtLeast('depthMm', depthMm, 0);
  requireAbove('areaM2', areaM2, 0);
  return depthMm * areaM2;
}

/**
 * Depth that a volume of water makes on an area, volume ÷ area.
 *
 * @param volumeL L, ≥ 0
 * @param areaM2 m², > 0
 * @returns mm
 * @throws {RangeError} when an argument is outside the range above
 */
export function waterDepthMm({
  volumeL,
  areaM2,
}: {
  readonly volumeL: number;
  readonly areaM2: number;
}): number {
  requireAtLeast('volumeL', volumeL, 0);
  requireAbove('areaM2', areaM2, 0);
  return volumeL / areaM2;
}

/**
 * Flow of a hose, from the seconds that it takes to fill a bucket.
 *
 * @param bucketL L, > 0
 * @param fillSeconds s, > 0
 * @returns L/min
 * @throws {RangeError} when an argument is not above 0
 */
export function hoseFlowLPerMin({
  bucketL,
  fillSeconds,
}: {
  readonly bucketL: number;
  readonly fillSeconds: number;
}): number {
  requireAbove('bucketL', bucketL, 0);
  requireAbove('fillSeconds', fillSeconds, 0);
  return (bucketL * 60) / fillSeconds;
}

/**
 * Time at the hose.
 *
 *   minutes = volume ÷ (flow × share that reaches the ground)
 *
 * @param volumeL wanted on the ground, L, ≥ 0
 * @param flowLPerMin L/min, > 0
 * @param efficiencyFraction share of the water that reaches the ground, above 0 to 1; a figure of the caller
 * @returns minutes
 * @throws {RangeError} when an argument is outside the range above
 */
export function hoseMinutes({
  volumeL,
  flowLPerMin,
  efficiencyFraction,
}: {
  readonly volumeL: number;
  readonly flowLPerMin: number;
  readonly efficiencyFraction: number;
}): number {
  requireAtLeast('volumeL', volumeL, 0);
  requireAbove('flowLPerMin', flowLPerMin, 0);
  requireFractionAboveZero('efficiencyFraction', efficiencyFraction);
  return volumeL / (flowLPerMin * efficiencyFraction);
}

/**
 * Trips with a watering can, rounded up to whole cans.
 *
 * @param volumeL L, ≥ 0
 * @param canL what one can holds, L, > 0
 * @param cansPerTrip how many are carried at once, 1 or more
 * @returns whole trips; 0 when there is nothing to carry
 * @throws {RangeError} when an argument is outside the range above
 */
export function canTrips({
  volumeL,
  canL,
  cansPerTrip,
}: {
  readonly volumeL: number;
  readonly canL: number;
  readonly cansPerTrip: number;
}): number {
  requireAtLeast('volumeL', volumeL, 0);
  requireAbove('canL', canL, 0);
  requireWhole('cansPerTrip', cansPerTrip, 1);
  // A millionth of a can is rounding in the sum, not a reason to walk again.
  return Math.max(0, Math.ceil(volumeL / (canL * cansPerTrip) - 1e-6));
}
