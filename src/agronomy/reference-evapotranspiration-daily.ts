/**
 * A day's reference evapotranspiration from whatever was measured, and a list of what was not.
 *
 * In: place, day, temperatures, and any of humidity, wind, sunshine, altitude.
 * Out: mm/day, the equation used, and each fall-back that stood in for a missing measurement.
 * Nothing is filled in without being listed.
 *
 * @source fao-56, chapter 3, missing data: equations 47, 48, 50 and 52
 */
import { refuse } from '../base/refuse.js';
import { netLongwaveMJPerM2, netRadiationMJPerM2, netShortwaveMJPerM2 } from './radiation-net.js';
import {
  clearSkyRadiationMJPerM2,
  solarRadiationFromSunshineMJPerM2,
  solarRadiationFromTemperaturesMJPerM2,
} from './radiation-solar.js';
import { hargreavesMm, penmanMonteithMm, windAt2MMPerS } from './reference-evapotranspiration.js';
import { dayLengthH, extraterrestrialRadiationMJPerM2, type LatitudeAndDay } from './sun.js';
import type { DailyTemperatures } from './vapour.js';
import {
  vapourPressureFromDewPointKPa,
  vapourPressureFromHumiditiesKPa,
  vapourPressureFromMaxHumidityKPa,
} from './vapour-actual.js';

export interface DailyWeather extends LatitudeAndDay, DailyTemperatures {
  readonly altitudeM?: number;
  readonly rhMaxFraction?: number;
  readonly rhMinFraction?: number;
  readonly windMPerS?: number;
  readonly windHeightM?: number;
  readonly sunshineH?: number;
  /** Measured or otherwise known actual vapour pressure; wins over the humidities. */
  readonly vapourPressureKPa?: number;
  /** Heat into the soil, MJ/m²/day; over a single day it is 0. */
  readonly soilHeatFluxMJPerM2?: number;
  /** True where the sea sets the weather; only read when sunshine is missing. */
  readonly isNearCoast?: boolean;
}

/** What stood in for a missing measurement. */
export type Fallback =
  | 'altitude-sea-level'
  | 'dew-point-is-minimum'
  | 'humidity-from-maximum-only'
  | 'wind-2-m-per-s'
  | 'wind-height-2-m'
  | 'sunshine-from-temperatures';

export interface DailyEvapotranspiration {
  readonly et0Mm: number;
  readonly method: 'penman-monteith' | 'hargreaves';
  readonly fallbacks: readonly Fallback[];
}

interface Part {
  readonly value: number;
  readonly fallbacks: readonly Fallback[];
}

/** What the source advises where no wind was measured. */
const WIND_WHEN_UNKNOWN_M_PER_S = 2;

/**
 * Reference evapotranspiration by Hargreaves when temperatures are all there is, otherwise by
 * Penman-Monteith with fall-backs for what is missing.
 *
 * @param weather humidities as shares 0 to 1, wind m/s, instrument height m, sunshine h, altitude m
 * @returns ET0 in mm/day, ≥ 0; the method; the fall-backs used, in a fixed order
 * @throws {RangeError} when a value is outside its range, or the maximum is below the minimum
 * @source fao-56, equations 6 and 52
 */
export function referenceEvapotranspiration(weather: DailyWeather): DailyEvapotranspiration {
  const measured = [
    weather.vapourPressureKPa,
    weather.rhMaxFraction,
    weather.rhMinFraction,
    weather.windMPerS,
    weather.sunshineH,
  ];
  if (measured.some((value) => value !== undefined)) return penmanMonteithWithFallbacks(weather);
  const et0Mm = hargreavesMm({ ...weather, raMJPerM2: extraterrestrialRadiationMJPerM2(weather) });
  return { et0Mm, method: 'hargreaves', fallbacks: [] };
}

/**
 * Reference evapotranspiration by Penman-Monteith, whatever is missing.
 *
 * Missing altitude is taken as sea level; humidity from the minimum temperature as dew point; wind
 * as 2 m/s; sunshine from the range of temperature.
 *
 * @returns as {@link referenceEvapotranspiration}
 * @throws {RangeError} as {@link referenceEvapotranspiration}
 * @source fao-56, equation 6, with equations 35, 47, 48 and 50
 */
export function penmanMonteithWithFallbacks(weather: DailyWeather): DailyEvapotranspiration {
  const altitude = valueOr(weather.altitudeM, 0, 'altitude-sea-level');
  const vapour = vapourPressure(weather);
  const wind = windAt2M(weather);
  const radiation = netRadiation(weather, { altitudeM: altitude.value, vapourPressureKPa: vapour.value });
  const et0Mm = penmanMonteithMm({
    tMinC: weather.tMinC,
    tMaxC: weather.tMaxC,
    vapourPressureKPa: vapour.value,
    windAt2MMPerS: wind.value,
    netRadiationMJPerM2: radiation.value,
    soilHeatFluxMJPerM2: weather.soilHeatFluxMJPerM2 ?? 0,
    altitudeM: altitude.value,
  });
  const fallbacks = [altitude, vapour, wind, radiation].flatMap((part) => part.fallbacks);
  return { et0Mm, method: 'penman-monteith', fallbacks };
}

function vapourPressure({
  tMinC,
  tMaxC,
  vapourPressureKPa,
  rhMaxFraction,
  rhMinFraction,
}: DailyWeather): Part {
  if (vapourPressureKPa !== undefined) return { value: vapourPressureKPa, fallbacks: [] };
  if (rhMaxFraction !== undefined && rhMinFraction !== undefined) {
    const value = vapourPressureFromHumiditiesKPa({ tMinC, tMaxC, rhMaxFraction, rhMinFraction });
    return { value, fallbacks: [] };
  }
  if (rhMinFraction !== undefined) {
    refuse('rhMinFraction', 'needs rhMaxFraction beside it', rhMinFraction);
  }
  if (rhMaxFraction !== undefined) {
    const value = vapourPressureFromMaxHumidityKPa({ tMinC, rhMaxFraction });
    return { value, fallbacks: ['humidity-from-maximum-only'] };
  }
  return { value: vapourPressureFromDewPointKPa(tMinC), fallbacks: ['dew-point-is-minimum'] };
}

function windAt2M({ windMPerS, windHeightM }: DailyWeather): Part {
  if (windMPerS === undefined) return { value: WIND_WHEN_UNKNOWN_M_PER_S, fallbacks: ['wind-2-m-per-s'] };
  if (windHeightM === undefined || windHeightM === 2) {
    return { value: windMPerS, fallbacks: windHeightM === undefined ? ['wind-height-2-m'] : [] };
  }
  return { value: windAt2MMPerS({ windMPerS, heightM: windHeightM }), fallbacks: [] };
}

function netRadiation(
  weather: DailyWeather,
  { altitudeM, vapourPressureKPa }: { readonly altitudeM: number; readonly vapourPressureKPa: number },
): Part {
  const raMJPerM2 = extraterrestrialRadiationMJPerM2(weather);
  const rsoMJPerM2 = clearSkyRadiationMJPerM2({ raMJPerM2, altitudeM });
  const { tMinC, tMaxC, sunshineH, isNearCoast = false } = weather;
  const rsMJPerM2 =
    sunshineH === undefined
      ? solarRadiationFromTemperaturesMJPerM2({ tMinC, tMaxC, raMJPerM2, rsoMJPerM2, isNearCoast })
      : solarRadiationFromSunshineMJPerM2({ sunshineH, dayLengthH: dayLengthH(weather), raMJPerM2 });
  const rnlMJPerM2 = netLongwaveMJPerM2({ tMinC, tMaxC, vapourPressureKPa, rsMJPerM2, rsoMJPerM2 });
  return {
    value: netRadiationMJPerM2({ rnsMJPerM2: netShortwaveMJPerM2(rsMJPerM2), rnlMJPerM2 }),
    fallbacks: sunshineH === undefined ? ['sunshine-from-temperatures'] : [],
  };
}

function valueOr(value: number | undefined, standIn: number, fallback: Fallback): Part {
  return value === undefined ? { value: standIn, fallbacks: [fallback] } : { value, fallbacks: [] };
}
