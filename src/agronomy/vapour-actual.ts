/**
 * Five ways to the water vapour that the air really holds, by what was measured.
 *
 * Pressures are in kPa, temperatures in degrees Celsius, humidities shares from 0 to 1.
 *
 * @source fao-56, equations 14 to 19 and 48
 */
import { requireAtLeast, requireFraction } from '../base/refuse.js';
import {
  type DailyTemperatures,
  meanSaturationVapourPressureKPa,
  requireTemperatures,
  saturationVapourPressureKPa,
} from './vapour.js';

/**
 * Actual vapour pressure from the dew point, ea = e0(Tdew). Where no humidity was measured, the
 * day's minimum temperature stands in for the dew point.
 *
 * @returns ea, kPa
 * @source fao-56, equations 14 and 48
 */
export function vapourPressureFromDewPointKPa(dewPointC: number): number {
  return saturationVapourPressureKPa(dewPointC);
}

/**
 * Actual vapour pressure from a dry and a wet thermometer.
 *
 *   ea = e0(Twet) − a P (Tdry − Twet)
 *
 * @param coefficientPerC a, of the instrument, 1/°C, ≥ 0; 0.000662 when air is drawn past the bulbs
 * @returns ea, kPa, ≥ 0
 * @throws {RangeError} when the wet bulb is warmer than the dry one
 * @source fao-56, equations 15 and 16
 */
export function vapourPressureFromWetBulbKPa({
  wetBulbC,
  dryBulbC,
  pressureKPa,
  coefficientPerC,
}: {
  readonly wetBulbC: number;
  readonly dryBulbC: number;
  readonly pressureKPa: number;
  readonly coefficientPerC: number;
}): number {
  requireAtLeast('dryBulbC', dryBulbC, wetBulbC, 'A wet bulb is never warmer than a dry one.');
  requireAtLeast('pressureKPa', pressureKPa, 0);
  requireAtLeast('coefficientPerC', coefficientPerC, 0);
  const missingKPa = coefficientPerC * pressureKPa * (dryBulbC - wetBulbC);
  return Math.max(0, saturationVapourPressureKPa(wetBulbC) - missingKPa);
}

/**
 * Actual vapour pressure from the highest and lowest humidity of the day.
 *
 *   ea = (e0(Tmin) RHmax + e0(Tmax) RHmin) ÷ 2
 *
 * @returns ea, kPa
 * @throws {RangeError} when a humidity is no share from 0 to 1, or a temperature is out of range
 * @source fao-56, equation 17
 */
export function vapourPressureFromHumiditiesKPa({
  tMinC,
  tMaxC,
  rhMaxFraction,
  rhMinFraction,
}: DailyTemperatures & {
  readonly rhMaxFraction: number;
  readonly rhMinFraction: number;
}): number {
  requireTemperatures({ tMinC, tMaxC });
  requireFraction('rhMaxFraction', rhMaxFraction);
  requireFraction('rhMinFraction', rhMinFraction);
  requireAtLeast('rhMaxFraction', rhMaxFraction, rhMinFraction);
  return (
    (saturationVapourPressureKPa(tMinC) * rhMaxFraction +
      saturationVapourPressureKPa(tMaxC) * rhMinFraction) /
    2
  );
}

/**
 * Actual vapour pressure from the highest humidity alone, which is met about when it is coldest.
 *
 *   ea = e0(Tmin) RHmax
 *
 * @returns ea, kPa
 * @throws {RangeError} when the humidity is no share from 0 to 1, or the temperature is out of range
 * @source fao-56, equation 18
 */
export function vapourPressureFromMaxHumidityKPa({
  tMinC,
  rhMaxFraction,
}: {
  readonly tMinC: number;
  readonly rhMaxFraction: number;
}): number {
  requireFraction('rhMaxFraction', rhMaxFraction);
  return saturationVapourPressureKPa(tMinC) * rhMaxFraction;
}

/**
 * Actual vapour pressure from the mean humidity of the day.
 *
 *   ea = RHmean × es
 *
 * @returns ea, kPa
 * @throws {RangeError} when the humidity is no share from 0 to 1, or a temperature is out of range
 * @source fao-56, equation 19
 */
export function vapourPressureFromMeanHumidityKPa({
  tMinC,
  tMaxC,
  rhMeanFraction,
}: DailyTemperatures & {
  readonly rhMeanFraction: number;
}): number {
  requireFraction('rhMeanFraction', rhMeanFraction);
  return rhMeanFraction * meanSaturationVapourPressureKPa({ tMinC, tMaxC });
}
