/** The climate of the place: the soil through the year, from the monthly means of the nearest station. */

import { temperatureOnDayC } from '../agronomy/soil-temperature.js';
import { fitYearlyWave } from '../agronomy/soil-temperature-harmonic.js';
import type { Climate } from '../rules/schema-pack.js';
import type { Place } from './place.js';
import { remembered } from './work-days.js';

export interface LocalClimate {
  readonly station: string;
  readonly km: number;
  readonly period: string;
  readonly licenceLine: string;
  readonly sourceId: string;
  /** The year for which windows are worked out; only leap years differ, by a day. */
  readonly year: number;
  /** Mean soil temperature near the surface on a day of the year, C; the yearly wave of the air stands for it. */
  readonly soilCOn: (dayOfYear: number) => number;
}

/** The climate of a station that is near enough to speak for the place; otherwise none is made up. */
export function climateAt(
  place: Place | undefined,
  climate: Climate,
  { reachKm, year }: { readonly reachKm: number; readonly year: number },
): LocalClimate | undefined {
  const nearest = place?.station;
  if (nearest === undefined || nearest.km > reachKm) return undefined;
  const station = climate.stations.find(({ name }) => name === nearest.name);
  if (station === undefined) return undefined;
  const wave = fitYearlyWave(
    station.tMinC.map((tMinC, month) => (tMinC + (station.tMaxC[month] as number)) / 2),
  );
  return {
    station: station.name,
    km: nearest.km,
    period: climate.period,
    licenceLine: climate.licenceLine,
    sourceId: climate.sourceId,
    year,
    soilCOn: remembered((dayOfYear) => temperatureOnDayC(wave, dayOfYear)),
  };
}
