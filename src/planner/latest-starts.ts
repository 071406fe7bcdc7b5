/** The latest starts of a net whose least starts are known: how far each step may slip. */
import type { Link, Point, Starts } from './network.js';

export interface WindowedPoint extends Point {
  /** Last fit day of the window around a day; undefined where there is no window. */
  readonly lastFit: (day: number) => number | undefined;
}

/** The latest starts within the windows that the least starts lie in; infinite where nothing limits them. */
export function latestStarts(
  points: readonly WindowedPoint[],
  links: readonly Link[],
  starts: Starts,
): Starts {
  const byId = new Map(points.map((point) => [point.id, point]));
  const earliest = (id: string): number => starts.get(id) as number;
  const latest = new Map(
    points.map((point) => {
      const last = point.lastFit(earliest(point.id));
      return [
        point.id,
        last === undefined ? Number.POSITIVE_INFINITY : latestEndingBy(point, earliest(point.id), last),
      ] as const;
    }),
  );
  const at = (id: string): number => latest.get(id) as number;
  let moved = true;
  const lower = (id: string, day: number): void => {
    if (day >= at(id)) return;
    latest.set(id, day);
    moved = true;
  };
  while (moved) {
    moved = false;
    for (const { from, to, minDays, maxDays } of links) {
      const first = byId.get(from);
      if (first === undefined || !byId.has(to)) continue;
      if (Number.isFinite(at(to))) lower(from, latestEndingBy(first, earliest(from), at(to) - minDays));
      if (maxDays !== undefined && Number.isFinite(at(from))) lower(to, first.endOf(at(from)) + maxDays);
    }
  }
  return latest;
}

/** The latest start, not before the one given, whose work ends by the day. */
function latestEndingBy({ endOf }: Point, start: number, day: number): number {
  let latest = Math.max(start, day);
  while (latest > start && endOf(latest) > day) latest--;
  return latest;
}
