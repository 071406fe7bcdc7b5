/**
 * Water that well-watered short grass gives off in a day: the Penman-Monteith and the Hargreaves
 * equation, and wind brought to the height that they want.
 *
 * @source fao-56, equations 6, 47 and 52
 */
import { requireAbove, requireAtLeast, requireFinite } from '../base/refuse.js';
import { evaporationEquivalentMm } from './sun.js';
import {
  atmosphericPressureKPa,
  type DailyTemperatures,
  meanSaturationVapourPressureKPa,
  psychrometricConstantKPaPerC,
  requireTemperatures,
  saturationSlopeKPaPerC,
} from './vapour.js';

export interface PenmanMonteithInputs extends DailyTemperatures {
  readonly vapourPressureKPa: number;
  readonly windAt2MMPerS: number;
  readonly netRadiationMJPerM2: number;
  readonly soilHeatFluxMJPerM2: number;
  readonly altitudeM: number;
}

/**
 * Wind at 2 m over short grass.
 *
 *   u2 = uz × 4.87 ÷ ln(67.8 z − 5.42)
 *
 * @param windMPerS uz, m/s, ≥ 0
 * @param heightM z, height of the instrument, m, above 0.1
 * @returns u2, m/s
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 47
 */
export function windAt2MMPerS({
  windMPerS,
  heightM,
}: {
  readonly windMPerS: number;
  readonly heightM: number;
}): number {
  requireAtLeast('windMPerS', windMPerS, 0);
  requireAbove('heightM', heightM, 0.1, 'Below that the grass itself stops the wind.');
  return (windMPerS * 4.87) / Math.log(67.8 * heightM - 5.42);
}

/**
 * Reference evapotranspiration by Penman-Monteith.
 *
 *   ET0 = (0.408 slope (Rn − G) + gamma × 900 ÷ (T + 273) × u2 (es − ea)) ÷ (slope + gamma (1 + 0.34 u2))
 *
 * with T = (Tmax + Tmin) ÷ 2.
 *
 * @param vapourPressureKPa ea, kPa, ≥ 0
 * @param windAt2MMPerS u2, m/s, ≥ 0
 * @param netRadiationMJPerM2 Rn, MJ/m²/day
 * @param soilHeatFluxMJPerM2 G, MJ/m²/day; 0 for a single day
 * @param altitudeM m, −500 to 9000
 * @returns ET0, mm/day; where the equation gives dew it is 0
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 6
 */
export function penmanMonteithMm(day: PenmanMonteithInputs): number {
  requireAtLeast('vapourPressureKPa', day.vapourPressureKPa, 0);
  requireAtLeast('windAt2MMPerS', day.windAt2MMPerS, 0);
  requireFinite('netRadiationMJPerM2', day.netRadiationMJPerM2);
  requireFinite('soilHeatFluxMJPerM2', day.soilHeatFluxMJPerM2);
  const deficitKPa = meanSaturationVapourPressureKPa(day) - day.vapourPressureKPa;
  const meanC = (day.tMaxC + day.tMinC) / 2;
  const slope = saturationSlopeKPaPerC(meanC);
  const gamma = psychrometricConstantKPaPerC(atmosphericPressureKPa(day.altitudeM));
  const energyTerm = slope * evaporationEquivalentMm(day.netRadiationMJPerM2 - day.soilHeatFluxMJPerM2);
  const windTerm = (gamma * 900 * day.windAt2MMPerS * deficitKPa) / (meanC + 273);
  return Math.max(0, (energyTerm + windTerm) / (slope + gamma * (1 + 0.34 * day.windAt2MMPerS)));
}

/**
 * Reference evapotranspiration from temperatures alone, by Hargreaves.
 *
 *   ET0 = 0.0023 (Tmean + 17.8) √(Tmax − Tmin) × 0.408 Ra
 *
 * The equation wants Ra as mm of water; left in MJ the answer comes out 2.45 times too large.
 *
 * @param raMJPerM2 Ra, MJ/m²/day, ≥ 0
 * @returns ET0, mm/day; 0 when the mean is below −17.8 °C
 * @throws {RangeError} when the maximum is below the minimum, or an argument is out of range
 * @source fao-56, equation 52
 */
export function hargreavesMm({
  tMinC,
  tMaxC,
  raMJPerM2,
}: DailyTemperatures & { readonly raMJPerM2: number }): number {
  requireTemperatures({ tMinC, tMaxC });
  requireAtLeast('raMJPerM2', raMJPerM2, 0);
  const warmth = Math.max(0, (tMaxC + tMinC) / 2 + 17.8);
  return 0.0023 * warmth * Math.sqrt(tMaxC - tMinC) * evaporationEquivalentMm(raMJPerM2);
}
