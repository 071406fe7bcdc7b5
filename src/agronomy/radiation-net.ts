/**
 * From the sun at the ground to the energy that a lawn keeps. All amounts are MJ/m²/day.
 *
 * @source fao-56, equations 38 to 44
 */
import { requireAtLeast, requireFinite } from '../base/refuse.js';
import { type DailyTemperatures, requireTemperatures } from './vapour.js';

/** Share that short reference grass reflects. */
const ALBEDO = 0.23;
const STEFAN_BOLTZMANN_MJ_PER_K4_PER_M2_PER_DAY = 4.903e-9;
const KELVIN_AT_0_C = 273.16;

/**
 * Solar radiation that the grass does not reflect, Rns = 0.77 Rs.
 *
 * @param rsMJPerM2 Rs, ≥ 0
 * @returns Rns
 * @throws {RangeError} when Rs is negative
 * @source fao-56, equation 38
 */
export function netShortwaveMJPerM2(rsMJPerM2: number): number {
  requireAtLeast('rsMJPerM2', rsMJPerM2, 0);
  return (1 - ALBEDO) * rsMJPerM2;
}

/**
 * Heat that the lawn radiates away to the sky, net.
 *
 *   Rnl = 4.903e-9 ((Tmax + 273.16)⁴ + (Tmin + 273.16)⁴) ÷ 2 × (0.34 − 0.14 √ea) × (1.35 Rs ÷ Rso − 0.35)
 *
 * Rs ÷ Rso is kept at 1 or less. Two guards are ours: in polar night there is no sun to judge the
 * cloud by, so a clear sky is taken; and under the thickest cloud the last factor stops at 0, because
 * a sky does not warm the ground.
 *
 * @param vapourPressureKPa ea, kPa, ≥ 0
 * @param rsMJPerM2 Rs, ≥ 0
 * @param rsoMJPerM2 Rso, ≥ 0
 * @returns Rnl
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 39
 */
export function netLongwaveMJPerM2({
  tMinC,
  tMaxC,
  vapourPressureKPa,
  rsMJPerM2,
  rsoMJPerM2,
}: DailyTemperatures & {
  readonly vapourPressureKPa: number;
  readonly rsMJPerM2: number;
  readonly rsoMJPerM2: number;
}): number {
  requireTemperatures({ tMinC, tMaxC });
  requireAtLeast('vapourPressureKPa', vapourPressureKPa, 0);
  requireAtLeast('rsMJPerM2', rsMJPerM2, 0);
  requireAtLeast('rsoMJPerM2', rsoMJPerM2, 0);
  const clearness = rsoMJPerM2 === 0 ? 1 : Math.min(1, rsMJPerM2 / rsoMJPerM2);
  const blackBody = ((tMaxC + KELVIN_AT_0_C) ** 4 + (tMinC + KELVIN_AT_0_C) ** 4) / 2;
  const humidity = 0.34 - 0.14 * Math.sqrt(vapourPressureKPa);
  const openSky = Math.max(0, 1.35 * clearness - 0.35);
  return STEFAN_BOLTZMANN_MJ_PER_K4_PER_M2_PER_DAY * blackBody * humidity * openSky;
}

/**
 * Energy left at the surface, Rn = Rns − Rnl.
 *
 * @returns Rn; negative when more is radiated away than came in
 * @source fao-56, equation 40
 */
export function netRadiationMJPerM2({
  rnsMJPerM2,
  rnlMJPerM2,
}: {
  readonly rnsMJPerM2: number;
  readonly rnlMJPerM2: number;
}): number {
  requireFinite('rnsMJPerM2', rnsMJPerM2);
  requireFinite('rnlMJPerM2', rnlMJPerM2);
  return rnsMJPerM2 - rnlMJPerM2;
}

/**
 * Heat that goes into the soil in a month, from the months on both sides.
 *
 *   G = 0.07 (T[i+1] − T[i−1])
 *
 * Over single days it is taken as 0.
 *
 * @param previousC mean air temperature of the month before, °C
 * @param nextC mean air temperature of the month after, °C
 * @returns G; negative while the soil gives heat back
 * @source fao-56, equation 43
 */
export function soilHeatFluxBetweenMonthsMJPerM2({
  previousC,
  nextC,
}: {
  readonly previousC: number;
  readonly nextC: number;
}): number {
  requireFinite('previousC', previousC);
  requireFinite('nextC', nextC);
  return 0.07 * (nextC - previousC);
}

/**
 * Heat that goes into the soil in a month, when the month after is not known.
 *
 *   G = 0.14 (T[i] − T[i−1])
 *
 * @param previousC mean air temperature of the month before, °C
 * @param monthC mean air temperature of the month, °C
 * @returns G; negative while the soil gives heat back
 * @source fao-56, equation 44
 */
export function soilHeatFluxSincePreviousMonthMJPerM2({
  previousC,
  monthC,
}: {
  readonly previousC: number;
  readonly monthC: number;
}): number {
  requireFinite('previousC', previousC);
  requireFinite('monthC', monthC);
  return 0.14 * (monthC - previousC);
}
