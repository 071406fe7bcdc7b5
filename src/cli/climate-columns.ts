/** Reads the heading of a column of weather: what it holds and in which unit, from the words that people use. */
import { celsiusFromFahrenheit, LENGTH_IN_M } from '../base/units.js';

export type Holds = 'date' | 'month' | 'min' | 'max' | 'mean' | 'rain' | 'frost';

export interface Column {
  readonly name: string;
  readonly holds: Holds;
  /** To C, mm or days; the value itself for dates. */
  readonly toMetric: (value: number) => number;
}

/** A column that was recognised but for its unit. */
export interface UnitMissing {
  readonly name: string;
  readonly allowed: string;
}

const HOLDS: Readonly<Record<string, Holds>> = {
  date: 'date',
  day: 'date',
  month: 'month',
  min: 'min',
  tmin: 'min',
  minimum: 'min',
  low: 'min',
  lowest: 'min',
  max: 'max',
  tmax: 'max',
  maximum: 'max',
  high: 'max',
  highest: 'max',
  mean: 'mean',
  tmean: 'mean',
  avg: 'mean',
  tavg: 'mean',
  average: 'mean',
  rain: 'rain',
  rainfall: 'rain',
  precip: 'rain',
  precipitation: 'rain',
  prcp: 'rain',
  frost: 'frost',
};

const MM_PER_M = 1000;
const celsius = (value: number): number => value;
const inMm =
  (unit: keyof typeof LENGTH_IN_M) =>
  (value: number): number =>
    value * LENGTH_IN_M[unit] * MM_PER_M;

const WARMTH: Readonly<Record<string, (value: number) => number>> = {
  c: celsius,
  degc: celsius,
  celsius,
  f: celsiusFromFahrenheit,
  degf: celsiusFromFahrenheit,
  fahrenheit: celsiusFromFahrenheit,
};
const DEPTH: Readonly<Record<string, (value: number) => number>> = {
  mm: inMm('mm'),
  millimetres: inMm('mm'),
  cm: inMm('cm'),
  in: inMm('in'),
  inch: inMm('in'),
  inches: inMm('in'),
};
/** Words that may stand beside the others and change nothing. */
const FILLING = new Set([
  't',
  'temp',
  'temps',
  'temperature',
  'air',
  'daily',
  'monthly',
  'total',
  'days',
  'deg',
]);
const AS_IT_IS: Readonly<Record<string, (value: number) => number>> = { days: (value) => value };

/** The column, what its unit could be where it has none, or undefined for a heading that says something else. */
export function columnOf(name: string): Column | UnitMissing | undefined {
  const words = name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word !== '');
  const held = words.map((word) => HOLDS[word]).filter((each) => each !== undefined);
  // "Rain days" and "mean of max" say something else than their words alone.
  const holds =
    held.length === 1 ? held[0] : held.length === 0 && words.includes('temp') ? 'mean' : undefined;
  if (holds === undefined) return undefined;
  const units = unitsOf(holds);
  const isKnown = (word: string): boolean =>
    HOLDS[word] !== undefined || FILLING.has(word) || Object.hasOwn(units, word);
  if (!words.every(isKnown)) return undefined;
  const unit = words.find((word) => Object.hasOwn(units, word));
  if (unit !== undefined) return { name, holds, toMetric: units[unit] as (value: number) => number };
  if (units === AS_IT_IS) return { name, holds, toMetric: celsius };
  return { name, allowed: units === DEPTH ? 'mm, cm or in' : 'C or F' };
}

function unitsOf(holds: Holds): Readonly<Record<string, (value: number) => number>> {
  if (holds === 'rain') return DEPTH;
  return holds === 'min' || holds === 'max' || holds === 'mean' ? WARMTH : AS_IT_IS;
}
