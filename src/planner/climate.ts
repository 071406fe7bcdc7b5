/** The climate of the place: the soil through the year, from the monthly means of the nearest station. */

import { meanDailyRainMm } from '../agronomy/rain.js';
import { hargreavesMm } from '../agronomy/reference-evapotranspiration.js';
import { temperatureOnDayC } from '../agronomy/soil-temperature.js';
import { fitYearlyWave } from '../agronomy/soil-temperature-harmonic.js';
import { extraterrestrialRadiationMJPerM2 } from '../agronomy/sun.js';
import { dayOfYear, daysInMonth, type IsoDate, monthOf, yearOf } from '../base/dates.js';
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
  /** Water use of the reference crop, ET0, mm on a day of the month that the date lies in, by Hargreaves. */
  readonly waterUseMmOn: (date: IsoDate) => number;
  /** Mean rain of a day of that month, mm; rain comes in lumps, so this is a budget and no forecast. */
  readonly rainMmOn: (date: IsoDate) => number;
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
    waterUseMmOn: (date) => {
      const month = monthOf(date) - 1;
      const sun = { latitudeDeg: station.latitudeDeg, dayOfYear: dayOfYear(date) };
      return hargreavesMm({
        tMinC: station.tMinC[month] as number,
        tMaxC: station.tMaxC[month] as number,
        raMJPerM2: extraterrestrialRadiationMJPerM2(sun),
      });
    },
    rainMmOn: (date) =>
      meanDailyRainMm({
        monthlyRainMm: station.rainMm[monthOf(date) - 1] as number,
        daysInMonth: daysInMonth(yearOf(date), monthOf(date)),
      }),
    soilCOn: remembered((day) => temperatureOnDayC(wave, day)),
  };
}
