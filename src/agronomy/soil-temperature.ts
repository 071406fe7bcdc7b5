/**
 * Soil temperature through the year: a wave at the surface that sinks, fades and lags with depth.
 *
 * The daily swing is left out: these are daily means.
 *
 * @source hillel-1982, as set out by the Oklahoma State University soil physics toolkit
 */
import { requireAbove, requireAtLeast, requireBetween, requireFinite } from '../base/refuse.js';

/** The yearly wave of daily means. */
export interface YearlyWave {
  /** Mean of the year, °C. */
  readonly meanC: number;
  /** Half the yearly range of daily means, °C. */
  readonly amplitudeC: number;
  /** Day of the year on which the surface is coldest; may have a part of a day. */
  readonly coldestDay: number;
}

const DAYS_PER_YEAR = 365;
const SECONDS_PER_DAY = 86_400;

/**
 * Diffusivity of heat, k ÷ (density × heat capacity).
 *
 * @param conductivityWPerMK k, W/m/K, > 0
 * @param densityKgPerM3 kg/m³, > 0
 * @param heatJPerKgK J/kg/K, > 0
 * @returns m²/s
 * @throws {RangeError} when an argument is not above 0
 */
export function thermalDiffusivityM2PerS({
  conductivityWPerMK,
  densityKgPerM3,
  heatJPerKgK,
}: {
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly heatJPerKgK: number;
}): number {
  requireAbove('conductivityWPerMK', conductivityWPerMK, 0);
  requireAbove('densityKgPerM3', densityKgPerM3, 0);
  requireAbove('heatJPerKgK', heatJPerKgK, 0);
  return conductivityWPerMK / (densityKgPerM3 * heatJPerKgK);
}

/**
 * Depth at which a wave of temperature has faded to 37 % (1 ÷ e).
 *
 *   d = √(2 D ÷ w), w = 2π ÷ period
 *
 * @param diffusivityM2PerS D, m²/s, > 0
 * @param periodDays 365 for the yearly wave, 1 for the daily one; > 0
 * @returns d, m
 * @throws {RangeError} when an argument is not above 0
 * @source hillel-1982; the toolkit's glossary prints w = 1 a day for the daily wave, which should be 2π
 */
export function dampingDepthM({
  diffusivityM2PerS,
  periodDays,
}: {
  readonly diffusivityM2PerS: number;
  readonly periodDays: number;
}): number {
  requireAbove('diffusivityM2PerS', diffusivityM2PerS, 0);
  requireAbove('periodDays', periodDays, 0);
  return Math.sqrt((diffusivityM2PerS * periodDays * SECONDS_PER_DAY) / Math.PI);
}

/**
 * The yearly wave at a depth: amplitude A exp(−z ÷ d), coldest z ÷ d × 365 ÷ 2π days later.
 *
 * @param depthM z, m, ≥ 0
 * @param dampingDepthM d of the yearly wave, m, > 0
 * @returns the wave that a thermometer at that depth would show
 * @throws {RangeError} when an argument is outside the range above
 * @source hillel-1982
 */
export function waveAtDepth(
  surface: YearlyWave,
  {
    depthM,
    dampingDepthM,
  }: {
    readonly depthM: number;
    readonly dampingDepthM: number;
  },
): YearlyWave {
  requireWave(surface);
  requireAtLeast('depthM', depthM, 0);
  requireAbove('dampingDepthM', dampingDepthM, 0);
  const depths = depthM / dampingDepthM;
  return {
    meanC: surface.meanC,
    amplitudeC: surface.amplitudeC * Math.exp(-depths),
    coldestDay: surface.coldestDay + (depths * DAYS_PER_YEAR) / (2 * Math.PI),
  };
}

/**
 * Temperature on a day of a yearly wave.
 *
 *   T(t) = mean + A sin(2π (t − coldest) ÷ 365 − π ÷ 2)
 *
 * With {@link waveAtDepth} this is the whole equation,
 * T(z, t) = mean + A exp(−z ÷ d) sin(2π (t − coldest) ÷ 365 − z ÷ d − π ÷ 2).
 *
 * @param dayOfYear t, days; any number, the wave repeats every 365
 * @returns °C
 * @throws {RangeError} when the amplitude is negative or an argument is not finite
 * @source hillel-1982
 */
export function temperatureOnDayC(wave: YearlyWave, dayOfYear: number): number {
  requireWave(wave);
  requireFinite('dayOfYear', dayOfYear);
  return (
    wave.meanC - wave.amplitudeC * Math.cos((2 * Math.PI * (dayOfYear - wave.coldestDay)) / DAYS_PER_YEAR)
  );
}

/**
 * Soil temperature at a depth on a day of the year.
 *
 * @param depthM m, ≥ 0
 * @param diffusivityM2PerS m²/s, > 0; a figure of the caller
 * @param dayOfYear 1 to 366
 * @param coldestDay day of the yearly minimum at the surface, 1 to 366
 * @returns °C, mean of the day
 * @throws {RangeError} when an argument is outside the range above
 * @source hillel-1982
 */
export function soilTemperatureC({
  depthM,
  diffusivityM2PerS,
  dayOfYear,
  ...surface
}: YearlyWave & {
  readonly depthM: number;
  readonly diffusivityM2PerS: number;
  readonly dayOfYear: number;
}): number {
  requireBetween('dayOfYear', dayOfYear, { min: 1, max: 366 });
  requireBetween('coldestDay', surface.coldestDay, { min: 1, max: 366 });
  const yearlyDepthM = dampingDepthM({ diffusivityM2PerS, periodDays: DAYS_PER_YEAR });
  return temperatureOnDayC(waveAtDepth(surface, { depthM, dampingDepthM: yearlyDepthM }), dayOfYear);
}

function requireWave({ meanC, amplitudeC, coldestDay }: YearlyWave): void {
  requireFinite('meanC', meanC);
  requireAtLeast('amplitudeC', amplitudeC, 0);
  requireFinite('coldestDay', coldestDay);
}
