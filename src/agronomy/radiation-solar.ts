/**
 * From the sun above the air to the sun at the ground. All amounts are MJ/m²/day.
 *
 * @source fao-56, equations 35, 37 and 50
 */
import { requireAtLeast, requireBetween } from '../base/refuse.js';
import { type DailyTemperatures, requireTemperatures } from './vapour.js';

const KRS_INLAND = 0.16;
const KRS_NEAR_COAST = 0.19;

/**
 * Solar radiation at the ground from hours of sunshine.
 *
 *   Rs = (0.25 + 0.50 n ÷ N) Ra
 *
 * @param sunshineH n, hours of bright sunshine, 0 to the day length
 * @param dayLengthH N, h, 0 to 24
 * @param raMJPerM2 Ra, ≥ 0
 * @returns Rs; 0 in polar night
 * @throws {RangeError} when there is more sunshine than day
 * @source fao-56, equation 35 with the constants advised where none were calibrated
 */
export function solarRadiationFromSunshineMJPerM2({
  sunshineH,
  dayLengthH,
  raMJPerM2,
}: {
  readonly sunshineH: number;
  readonly dayLengthH: number;
  readonly raMJPerM2: number;
}): number {
  requireBetween('dayLengthH', dayLengthH, { min: 0, max: 24 });
  requireBetween(
    'sunshineH',
    sunshineH,
    { min: 0, max: dayLengthH },
    'The sun cannot shine longer than the day.',
  );
  requireAtLeast('raMJPerM2', raMJPerM2, 0);
  const sunnyShare = dayLengthH === 0 ? 0 : sunshineH / dayLengthH;
  return (0.25 + 0.5 * sunnyShare) * raMJPerM2;
}

/**
 * Solar radiation at the ground from the day's range of temperature: clear days swing more.
 *
 *   Rs = kRs √(Tmax − Tmin) Ra, at most Rso; kRs 0.16 inland, 0.19 on a coast
 *
 * @param raMJPerM2 Ra, ≥ 0
 * @param rsoMJPerM2 Rso, the clear-sky limit, ≥ 0
 * @param isNearCoast true where the sea sets the weather
 * @returns Rs
 * @throws {RangeError} when the maximum is below the minimum or a radiation is negative
 * @source fao-56, equation 50
 */
export function solarRadiationFromTemperaturesMJPerM2({
  tMinC,
  tMaxC,
  raMJPerM2,
  rsoMJPerM2,
  isNearCoast,
}: DailyTemperatures & {
  readonly raMJPerM2: number;
  readonly rsoMJPerM2: number;
  readonly isNearCoast: boolean;
}): number {
  requireTemperatures({ tMinC, tMaxC });
  requireAtLeast('raMJPerM2', raMJPerM2, 0);
  requireAtLeast('rsoMJPerM2', rsoMJPerM2, 0);
  const krs = isNearCoast ? KRS_NEAR_COAST : KRS_INLAND;
  return Math.min(rsoMJPerM2, krs * Math.sqrt(tMaxC - tMinC) * raMJPerM2);
}

/**
 * Solar radiation at the ground under a clear sky.
 *
 *   Rso = (0.75 + 0.00002 z) Ra
 *
 * @param raMJPerM2 Ra, ≥ 0
 * @param altitudeM z, m, −500 to 9000
 * @returns Rso
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 37
 */
export function clearSkyRadiationMJPerM2({
  raMJPerM2,
  altitudeM,
}: {
  readonly raMJPerM2: number;
  readonly altitudeM: number;
}): number {
  requireAtLeast('raMJPerM2', raMJPerM2, 0);
  requireBetween('altitudeM', altitudeM, { min: -500, max: 9_000 });
  return (0.75 + 2e-5 * altitudeM) * raMJPerM2;
}
