/** The climate of the place: the soil through the year, from the monthly means of the nearest station. */

import { halfYearDifferenceC, isSouthernYear } from '../agronomy/monthly-means.js';
import { meanDailyRainMm } from '../agronomy/rain.js';
import { hargreavesMm } from '../agronomy/reference-evapotranspiration.js';
import { greatCircleKm } from '../agronomy/season.js';
import { temperatureOnDayC } from '../agronomy/soil-temperature.js';
import { fitYearlyWave } from '../agronomy/soil-temperature-harmonic.js';
import { extraterrestrialRadiationMJPerM2 } from '../agronomy/sun.js';
import { dayOfYear, daysInMonth, type IsoDate, monthOf, yearOf } from '../base/dates.js';
import type { OwnClimate, Pack } from '../rules/pack.js';
import type { Climate } from '../rules/schema-pack.js';
import { isSouthern, type Place } from './place.js';
import { seasonNumber } from './season-figures.js';
import { remembered } from './work-days.js';

export interface LocalClimate {
  /** The station whose means they are; absent where the user brought the means. */
  readonly station?: {
    readonly name: string;
    readonly km: number;
    readonly licenceLine: string;
    readonly sourceId: string;
  };
  /** Where no station is near: those that speak for the place together, the nearest first; `station` is that one. */
  readonly neighbours?: readonly { readonly name: string; readonly km: number }[];
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
  /** Mean minimum of that month, C. */
  readonly tMinCIn: (date: IsoDate) => number;
  /** Mean of that month, C; the wave of the soil may miss it by a degree or two. */
  readonly tMeanCIn: (date: IsoDate) => number;
  /** Mean minimum of the coldest month, C; not where only mean temperatures are known. */
  readonly coldestTMinC: number | undefined;
}

interface Reach {
  readonly reachKm: number;
  readonly year: number;
  /** How many stations speak together for a place with none near, on the land that the table speaks for. */
  readonly neighbours?: number;
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

/** The half of the earth whose summer the months have; undefined near the equator, where they do not tell. */
export function halfOf(
  means: Pick<OwnClimate, 'tMinC' | 'tMaxC'>,
  pack: Pack,
): 'north' | 'south' | undefined {
  const clearC = seasonNumber(pack, pack.seasons?.halfClearC) ?? 0;
  const differenceC = halfYearDifferenceC(means);
  if (Math.abs(differenceC) < clearC) return undefined;
  return differenceC > 0 ? 'south' : 'north';
}

/** The climate of a station that is near enough to speak for the place, or of its neighbours; otherwise none is made up. */
export function climateAt(
  place: Place | undefined,
  climate: Climate,
  reach: Reach,
): LocalClimate | undefined {
  const nearest = place?.station;
  if (place === undefined || nearest === undefined) return undefined;
  if (nearest.km > reach.reachKm) return climateOfNeighbours(place, climate, reach);
  return climateOfStation(nearest, climate, reach.year);
}

type Distant = { readonly name: string; readonly km: number };

function climateOfStation({ name, km }: Distant, climate: Climate, year: number): LocalClimate | undefined {
  const station = climate.stations.find((each) => each.name === name);
  if (station === undefined) return undefined;
  const { licenceLine, sourceId, period } = climate;
  return {
    station: { name, km, licenceLine, sourceId },
    period,
    ...throughTheYear({ ...station, hasRange: true }, year),
  };
}

/** The nearest few as one: the coldest of them on any day, so that no date is the most hopeful one. */
function climateOfNeighbours(
  { position }: Place,
  climate: Climate,
  { year, neighbours = 0 }: Reach,
): LocalClimate | undefined {
  const { latitudeDeg, longitudeDeg } = position;
  const isIn = ({ min, max }: { readonly min: number; readonly max: number }, value: number): boolean =>
    value >= min && value <= max;
  const speaks = (climate.speaksFor ?? []).some(
    (box) => isIn(box.latitudeDeg, latitudeDeg) && isIn(box.longitudeDeg, longitudeDeg),
  );
  if (!speaks) return undefined;
  const nearest = climate.stations
    .map((station): Distant => ({ name: station.name, km: greatCircleKm(position, station) }))
    .sort((a, b) => a.km - b.km)
    .slice(0, neighbours);
  const climates = nearest.flatMap((each) => climateOfStation(each, climate, year) ?? []);
  const [first] = climates;
  if (first === undefined) return undefined;
  return {
    ...first,
    neighbours: nearest,
    soilCOn: remembered((day) => Math.min(...climates.map(({ soilCOn }) => soilCOn(day)))),
    waterUseMmOn: (date) => meanOf(climates.map(({ waterUseMmOn }) => waterUseMmOn(date))),
    rainMmOn: (date) => meanOf(climates.map(({ rainMmOn }) => rainMmOn(date))),
    frostDaysIn: (date) => mostOf(climates.map(({ frostDaysIn }) => frostDaysIn(date))),
    tMinCIn: (date) => Math.min(...climates.map(({ tMinCIn }) => tMinCIn(date))),
    tMeanCIn: (date) => Math.min(...climates.map(({ tMeanCIn }) => tMeanCIn(date))),
    coldestTMinC: Math.min(...known(climates.map(({ coldestTMinC }) => coldestTMinC))),
  };
}

const known = (values: readonly (number | undefined)[]): number[] =>
  values.filter((value) => value !== undefined);
const mostOf = (values: readonly (number | undefined)[]): number | undefined =>
  known(values).length === 0 ? undefined : Math.max(...known(values));
const meanOf = (values: readonly (number | undefined)[]): number | undefined =>
  known(values).length === 0
    ? undefined
    : known(values).reduce((sum, value) => sum + value, 0) / known(values).length;

type Means = Omit<OwnClimate, 'from'> & { readonly latitudeDeg?: number | undefined };

function throughTheYear(
  { tMinC, tMaxC, hasRange, rainMm, airFrostDays, latitudeDeg }: Means,
  year: number,
): Omit<LocalClimate, 'station' | 'neighbours' | 'period'> {
  const means = tMinC.map((least, month) => (least + (tMaxC[month] as number)) / 2);
  const wave = fitYearlyWave(means);
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
    tMinCIn: (date) => tMinC[monthOf(date) - 1] as number,
    tMeanCIn: (date) => means[monthOf(date) - 1] as number,
    coldestTMinC: hasRange ? Math.min(...tMinC) : undefined,
  };
}
