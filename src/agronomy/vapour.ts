/**
 * Pressure of the air, and how much water vapour it could hold.
 *
 * Pressures are in kPa, temperatures in degrees Celsius.
 *
 * @source fao-56, equations 7 to 13
 */
import { requireAtLeast, requireBetween } from '../base/refuse.js';

export interface DailyTemperatures {
  readonly tMinC: number;
  readonly tMaxC: number;
}

/** Wider than any weather record; keeps the exponentials and the 237.3 °C pole of equation 11 far away. */
const AIR_TEMPERATURE_C = { min: -90, max: 65 };
/** From below the Dead Sea to above Everest. */
const ALTITUDE_M = { min: -500, max: 9_000 };

/**
 * Pressure of the air at an altitude.
 *
 *   P = 101.3 ((293 − 0.0065 z) ÷ 293)^5.26
 *
 * @param altitudeM z, m above the sea, −500 to 9000
 * @returns P, kPa
 * @throws {RangeError} when the altitude is outside the range above
 * @source fao-56, equation 7
 */
export function atmosphericPressureKPa(altitudeM: number): number {
  requireBetween('altitudeM', altitudeM, ALTITUDE_M);
  return 101.3 * ((293 - 0.0065 * altitudeM) / 293) ** 5.26;
}

/**
 * Psychrometric constant.
 *
 *   gamma = 0.000665 P
 *
 * @param pressureKPa P, kPa, ≥ 0
 * @returns gamma, kPa/°C
 * @throws {RangeError} when the pressure is negative
 * @source fao-56, equation 8
 */
export function psychrometricConstantKPaPerC(pressureKPa: number): number {
  requireAtLeast('pressureKPa', pressureKPa, 0);
  return 0.665e-3 * pressureKPa;
}

/**
 * Vapour pressure of air that can hold no more.
 *
 *   e0(T) = 0.6108 exp(17.27 T ÷ (T + 237.3))
 *
 * @param temperatureC T, °C, −90 to 65
 * @returns e0, kPa
 * @throws {RangeError} when the temperature is outside the range above
 * @source fao-56, equation 11
 */
export function saturationVapourPressureKPa(temperatureC: number): number {
  requireBetween('temperatureC', temperatureC, AIR_TEMPERATURE_C);
  return 0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3));
}

/**
 * Mean saturation vapour pressure of a day. Taking it at the mean temperature would come out low,
 * because the curve bends upwards.
 *
 *   es = (e0(Tmax) + e0(Tmin)) ÷ 2
 *
 * @returns es, kPa
 * @throws {RangeError} when the maximum is below the minimum, or a temperature is out of range
 * @source fao-56, equation 12
 */
export function meanSaturationVapourPressureKPa(day: DailyTemperatures): number {
  requireTemperatures(day);
  return (saturationVapourPressureKPa(day.tMaxC) + saturationVapourPressureKPa(day.tMinC)) / 2;
}

/**
 * Slope of the saturation curve.
 *
 *   slope = 4098 e0(T) ÷ (T + 237.3)²
 *
 * @param temperatureC T, °C, −90 to 65
 * @returns kPa/°C
 * @throws {RangeError} when the temperature is outside the range above
 * @source fao-56, equation 13
 */
export function saturationSlopeKPaPerC(temperatureC: number): number {
  return (4098 * saturationVapourPressureKPa(temperatureC)) / (temperatureC + 237.3) ** 2;
}

/** Refuses a day whose maximum is below its minimum, or temperatures that no weather has. */
export function requireTemperatures({ tMinC, tMaxC }: DailyTemperatures): void {
  requireBetween('tMinC', tMinC, AIR_TEMPERATURE_C);
  requireBetween('tMaxC', tMaxC, AIR_TEMPERATURE_C);
  requireAtLeast('tMaxC', tMaxC, tMinC, 'Are the two swapped?');
}
