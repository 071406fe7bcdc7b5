/**
 * Sunshine that a latitude and a day of the year could get: the top of the air, and day length.
 *
 * In: latitude and day of the year. Out: the sun's geometry, radiation above the air, hours of day.
 * Polar day and night are ordinary results here, never NaN.
 *
 * @source fao-56, equations 20 to 25 and 34
 */
import { requireBetween } from '../base/refuse.js';

export interface LatitudeAndDay {
  readonly latitudeDeg: number;
  readonly dayOfYear: number;
}

const SOLAR_CONSTANT_MJ_PER_M2_PER_MIN = 0.082;
const MINUTES_PER_DAY = 24 * 60;
const DAYS_PER_YEAR = 365;
const MM_PER_MJ_PER_M2 = 0.408;

/**
 * Inverse relative distance from the earth to the sun.
 *
 *   dr = 1 + 0.033 cos(2π J ÷ 365)
 *
 * @param dayOfYear J, 1 to 366
 * @returns about 0.967 to 1.033, no unit
 * @throws {RangeError} when the day is outside the year
 * @source fao-56, equation 23
 */
export function inverseRelativeDistance(dayOfYear: number): number {
  requireDayOfYear(dayOfYear);
  return 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / DAYS_PER_YEAR);
}

/**
 * Angle of the sun north (+) or south (−) of the equator.
 *
 *   d = 0.409 sin(2π J ÷ 365 − 1.39)
 *
 * @param dayOfYear J, 1 to 366
 * @returns declination, rad
 * @throws {RangeError} when the day is outside the year
 * @source fao-56, equation 24
 */
export function solarDeclinationRad(dayOfYear: number): number {
  requireDayOfYear(dayOfYear);
  return 0.409 * Math.sin((2 * Math.PI * dayOfYear) / DAYS_PER_YEAR - 1.39);
}

/**
 * Angle through which the earth turns from solar noon to sunset.
 *
 *   ws = acos(−tan φ tan d), the argument kept within −1 to 1
 *
 * @param latitudeDeg φ, degrees, south negative, −90 to 90
 * @param dayOfYear J, 1 to 366
 * @returns 0 in polar night to π in polar day, rad
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 25
 */
export function sunsetHourAngleRad({ latitudeDeg, dayOfYear }: LatitudeAndDay): number {
  const cosine = -Math.tan(latitudeRad(latitudeDeg)) * Math.tan(solarDeclinationRad(dayOfYear));
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/**
 * Hours from sunrise to sunset.
 *
 *   N = 24 ws ÷ π
 *
 * @param latitudeDeg degrees, south negative, −90 to 90
 * @param dayOfYear 1 to 366
 * @returns day length, h, 0 to 24
 * @throws {RangeError} when an argument is outside the range above
 * @source fao-56, equation 34
 */
export function dayLengthH(place: LatitudeAndDay): number {
  return (24 * sunsetHourAngleRad(place)) / Math.PI;
}

/**
 * Radiation that a day brings to the top of the air.
 *
 *   Ra = (24 × 60 ÷ π) × 0.0820 × dr (ws sin φ sin d + cos φ cos d sin ws)
 *
 * @param latitudeDeg degrees, south negative, −90 to 90
 * @param dayOfYear 1 to 366
 * @returns Ra, MJ/m²/day, ≥ 0
 * @throws {RangeError} when an argument is outside the range above
 * Holds for latitudes up to 55 degrees all year; see {@link isLowWinterSun}.
 * @source fao-56, equation 21
 */
export function extraterrestrialRadiationMJPerM2(place: LatitudeAndDay): number {
  const latitude = latitudeRad(place.latitudeDeg);
  const declination = solarDeclinationRad(place.dayOfYear);
  const sunset = sunsetHourAngleRad(place);
  const geometry =
    sunset * Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset);
  const scale = (MINUTES_PER_DAY / Math.PI) * SOLAR_CONSTANT_MJ_PER_M2_PER_MIN;
  // At the edge of polar night the two terms cancel; rounding must not turn nothing into less than nothing.
  return Math.max(0, scale * inverseRelativeDistance(place.dayOfYear) * geometry);
}

/**
 * Depth of water that an amount of radiation could evaporate.
 *
 *   mm = 0.408 × MJ/m²
 *
 * @param radiationMJPerM2 MJ/m² (a day), any sign
 * @returns mm (a day)
 * @source fao-56, equation 20
 */
export function evaporationEquivalentMm(radiationMJPerM2: number): number {
  return MM_PER_MJ_PER_M2 * radiationMJPerM2;
}

/**
 * True where the radiation and day-length equations lose their footing: nearer the pole than the
 * limit, in the half of the year when the sun stands over the other hemisphere.
 *
 * @param limitDeg latitude beyond which to say so, degrees, 0 to 90
 * @throws {RangeError} when an argument is outside its range
 * @source fao-56, note to equations 21 to 34: not valid beyond 55 degrees in the winter months
 */
export function isLowWinterSun({
  latitudeDeg,
  dayOfYear,
  limitDeg,
}: LatitudeAndDay & { readonly limitDeg: number }): boolean {
  requireBetween('latitudeDeg', latitudeDeg, { min: -90, max: 90 });
  requireBetween('limitDeg', limitDeg, { min: 0, max: 90 });
  const sunIsAcrossTheEquator = latitudeDeg * solarDeclinationRad(dayOfYear) < 0;
  return Math.abs(latitudeDeg) > limitDeg && sunIsAcrossTheEquator;
}

function latitudeRad(latitudeDeg: number): number {
  requireBetween('latitudeDeg', latitudeDeg, { min: -90, max: 90 });
  return (latitudeDeg * Math.PI) / 180;
}

function requireDayOfYear(dayOfYear: number): void {
  requireBetween('dayOfYear', dayOfYear, { min: 1, max: 366 });
}
