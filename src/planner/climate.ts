/** The climate of the place: the soil through the year, from the monthly means of the nearest station. */

import { isSouthernYear } from '../agronomy/monthly-means.js';
import { meanDailyRainMm } from '../agronomy/rain.js';
import { hargreavesMm } from '../agronomy/reference-evapotranspiration.js';
import { temperatureOnDayC } from '../agronomy/soil-temperature.js';
import { fitYearlyWave } from '../agronomy/soil-temperature-harmonic.js';
import { extraterrestrialRadiationMJPerM2 } from '../agronomy/sun.js';
import { dayOfYear, daysInMonth, type IsoDate, monthOf, yearOf } from '../base/dates.js';
import type { OwnClimate, Pack } from '../rules/pack.js';
import type { Climate } from '../rules/schema-pack.js';
import { isSouthern, type Place } from './place.js';
import { remembered } from './work-days.js';

export interface LocalClimate {
  /** The station whose means they are; absent where the user brought the means. */
  readonly station?: {
    readonly name: string;
    readonly km: number;
    readonly licenceLine: string;
    readonly sourceId: string;
  };
  /** The years of the means, or the file and its days. */
  readonly period: string;
  /** The year for which windows are worked out; only leap years differ, by a day. */
  readonly year: number;
  /** Mean soil temperature near the surface on a day of the year, C; the yearly wave of the air stands for it. */
  readonly soilCOn: (dayOfYear: number) => number;
  /** Water use of the reference crop, ET0, mm on a day of the month that the date lies in, by Hargreaves. */
  readonly waterUseMmOn: (date: IsoDate) => number | undefined;
  /** Mean rain of a day of that month, mm; rain comes in lumps, so this is a budget and no forecast. */
  readonly rainMmOn: (date: IsoDate) => number | undefined;
  /** Days of air frost in that month of a normal year. */
  readonly frostDaysIn: (date: IsoDate) => number | undefined;
}

interface Reach {
  readonly reachKm: number;
  readonly year: number;
}

/** The user's own climate where there is one, else that of a station near enough to speak for the place. */
export function climateFor(pack: Pack, place: Place | undefined, reach: Reach): LocalClimate | undefined {
  const { ownClimate } = pack;
  if (ownClimate === undefined) return climateAt(place, pack.climate, reach);
  const latitudeDeg = place?.position.latitudeDeg;
  return { period: ownClimate.from, ...throughTheYear({ ...ownClimate, latitudeDeg }, reach.year) };
}

/** Whether the seasons are those of the south: by the place, else by the months of an own climate. */
export function isSouthernHere(pack: Pack, place: Place | undefined): boolean {
  if (place !== undefined || pack.ownClimate === undefined) return isSouthern(place);
  return isSouthernYear(pack.ownClimate);
}

/** The climate of a station that is near enough to speak for the place; otherwise none is made up. */
export function climateAt(
  place: Place | undefined,
  climate: Climate,
  { reachKm, year }: Reach,
): LocalClimate | undefined {
  const nearest = place?.station;
  if (nearest === undefined || nearest.km > reachKm) return undefined;
  const station = climate.stations.find(({ name }) => name === nearest.name);
  if (station === undefined) return undefined;
  const { licenceLine, sourceId, period } = climate;
  return {
    station: { name: station.name, km: nearest.km, licenceLine, sourceId },
    period,
    ...throughTheYear({ ...station, hasRange: true }, year),
  };
}

type Means = Omit<OwnClimate, 'from'> & { readonly latitudeDeg?: number | undefined };

function throughTheYear(
  { tMinC, tMaxC, hasRange, rainMm, airFrostDays, latitudeDeg }: Means,
  year: number,
): Omit<LocalClimate, 'station' | 'period'> {
  const wave = fitYearlyWave(tMinC.map((least, month) => (least + (tMaxC[month] as number)) / 2));
  return {
    year,
    soilCOn: remembered((day) => temperatureOnDayC(wave, day)),
    waterUseMmOn: (date) => {
      if (!hasRange || latitudeDeg === undefined) return undefined;
      const month = monthOf(date) - 1;
      return hargreavesMm({
        tMinC: tMinC[month] as number,
        tMaxC: tMaxC[month] as number,
        raMJPerM2: extraterrestrialRadiationMJPerM2({ latitudeDeg, dayOfYear: dayOfYear(date) }),
      });
    },
    rainMmOn: (date) => {
      const monthlyRainMm = rainMm?.[monthOf(date) - 1];
      return monthlyRainMm === undefined
        ? undefined
        : meanDailyRainMm({ monthlyRainMm, daysInMonth: daysInMonth(yearOf(date), monthOf(date)) });
    },
    frostDaysIn: (date) => airFrostDays?.[monthOf(date) - 1],
  };
}
