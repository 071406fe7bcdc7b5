/** Which of a list of climate stations is nearest to a place. */
import { refuse, requireBetween } from '../base/refuse.js';

export interface Position {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** Mean radius of the earth as the geodetic union defines it. */
const EARTH_RADIUS_KM = 6371.0088;

/**
 * Distance along the great circle between two places, by the haversine.
 *
 *   a = sin²(Δφ ÷ 2) + cos φ1 cos φ2 sin²(Δλ ÷ 2); distance = 2 R asin √a
 *
 * @param from degrees, south and west negative; latitude −90 to 90, longitude −180 to 180
 * @param to as from
 * @returns km, on a sphere: within 0.6 % of the true earth
 * @throws {RangeError} when a latitude or longitude is outside the range above
 */
export function greatCircleKm(from: Position, to: Position): number {
  const [a, b] = [radians(from), radians(to)];
  const half =
    Math.sin((b.latitude - a.latitude) / 2) ** 2 +
    Math.cos(a.latitude) * Math.cos(b.latitude) * Math.sin((b.longitude - a.longitude) / 2) ** 2;
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(half)));
}

/**
 * The nearest of a list of places.
 *
 * @param place degrees
 * @param stations one or more
 * @returns its index in the list, the first of equals, and its distance in km
 * @throws {RangeError} when the list is empty, or as {@link greatCircleKm}
 */
export function nearestStation(
  place: Position,
  stations: readonly Position[],
): {
  readonly index: number;
  readonly distanceKm: number;
} {
  let nearest: { index: number; distanceKm: number } | undefined;
  for (const [index, station] of stations.entries()) {
    const distanceKm = greatCircleKm(place, station);
    if (nearest === undefined || distanceKm < nearest.distanceKm) nearest = { index, distanceKm };
  }
  return nearest ?? refuse('stations', 'must have one entry or more', 0);
}

function radians({ latitudeDeg, longitudeDeg }: Position): {
  readonly latitude: number;
  readonly longitude: number;
} {
  requireBetween('latitudeDeg', latitudeDeg, { min: -90, max: 90 });
  requireBetween('longitudeDeg', longitudeDeg, { min: -180, max: 180 });
  return { latitude: (latitudeDeg * Math.PI) / 180, longitude: (longitudeDeg * Math.PI) / 180 };
}
