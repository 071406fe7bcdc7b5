/** Turns what was typed for the place into a position: a station of the climate table, or latitude and longitude. */
import { nearestStation, type Position } from '../agronomy/season.js';
import { nearest } from '../base/nearest.js';
import type { Climate } from '../rules/schema-pack.js';

export interface Place {
  readonly position: Position;
  /** The station itself, or the nearest one with its distance. */
  readonly station: { readonly name: string; readonly km: number } | undefined;
}

const POLE_DEG = 90;
const DATE_LINE_DEG = 180;
/** A shorter word is held by too many names. */
const LEAST_LETTERS = 3;
const PAIR = /^\s*(-?\d+(?:\.\d+)?)\s*(?:[,;]\s*|\s+)(-?\d+(?:\.\d+)?)\s*$/;

/** The place, or undefined when the words name no station and hold no pair of degrees. */
export function placeOf(typed: string, climate: Climate): Place | undefined {
  const wanted = typed.trim().toLowerCase();
  const station = climate.stations.find(({ name }) => name.toLowerCase() === wanted);
  if (station !== undefined) return { position: station, station: { name: station.name, km: 0 } };
  const pair = PAIR.exec(typed);
  if (pair === null) return undefined;
  const position = { latitudeDeg: Number(pair[1]), longitudeDeg: Number(pair[2]) };
  if (Math.abs(position.latitudeDeg) > POLE_DEG || Math.abs(position.longitudeDeg) > DATE_LINE_DEG)
    return undefined;
  const nearest = nearestStation(position, climate.stations);
  const name = climate.stations[nearest.index]?.name;
  return { position, station: name === undefined ? undefined : { name, km: nearest.distanceKm } };
}

/** The station that was most likely meant: one whose name begins the same or holds the word, else the nearest in letters. */
export function stationMeant(typed: string, climate: Climate): string | undefined {
  const wanted = typed.trim().toLowerCase();
  const names = climate.stations.map(({ name }) => name);
  const holding =
    wanted.length < LEAST_LETTERS ? [] : names.filter((name) => name.toLowerCase().includes(wanted));
  const begun = holding.find((name) => name.toLowerCase().startsWith(wanted));
  return begun ?? holding[0] ?? nearest(typed.trim(), names);
}

/** The place as a reader knows it: a station by its own name, however it was typed; degrees as they stand. */
export function placeName(typed: string, climate: Climate): string {
  const station = placeOf(typed, climate)?.station;
  return station?.km === 0 ? station.name : typed;
}

/** What is wrong with a place, and what is allowed; undefined when it can be found. */
export function placeFault(typed: string, climate: Climate): string | undefined {
  if (placeOf(typed, climate) !== undefined) return undefined;
  const meant = stationMeant(typed, climate);
  const names = climate.stations.map(({ name }) => name).join(', ');
  const hint =
    meant !== undefined
      ? ` Did you mean "${meant}"?`
      : /\p{L}/u.test(typed)
        ? ` The stations: ${names}.`
        : '';
  return `Allowed: a weather station of the climate table such as "${climate.stations[0]?.name}", or latitude and longitude in degrees such as "51.5, -0.1" (-${POLE_DEG} to ${POLE_DEG}, -${DATE_LINE_DEG} to ${DATE_LINE_DEG}), or "unknown".${hint}`;
}

/** Whether the seasons of the place are those of the south; unknown places count as north. */
export function isSouthern(place: Place | undefined): boolean {
  return place !== undefined && place.position.latitudeDeg < 0;
}
