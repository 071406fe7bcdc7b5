/**
 * A net of steps and waits in whole days: the least starts that keep every wait and fall on fit days.
 *
 * A simple temporal network (Dechter, Meiri, Pearl 1991) whose points may also be choosy about their day. Starts are
 * raised until nothing moves; every demand is monotone, so the first rest is the least solution there is.
 */

/** A step as the net sees it; days count from the first free day. */
export interface Point {
  readonly id: string;
  readonly notBefore: number;
  /** Nearest fit day on or after the one given; the same day when it is fit. */
  readonly nextFit: (day: number) => number;
  /** Last day of the work when it starts on the day given. */
  readonly endOf: (start: number) => number;
}

/** `to` starts at least `minDays` and at most `maxDays` after the last day of `from`. */
export interface Link {
  readonly from: string;
  readonly to: string;
  readonly minDays: number;
  readonly maxDays: number | undefined;
}

export type Starts = ReadonlyMap<string, number>;

/** Three years from the last day that anything waits for: every window opens twice before a search is given up. */
const HORIZON_DAYS = 3 * 366;

/** Solves the same net again and again, each time from starts that are already known to be too early or right. */
export interface Network {
  /** The least starts; undefined when no starts can hold. */
  readonly leastStarts: () => Map<string, number> | undefined;
  /**
   * Raises starts, in the order of the points, to the least that hold; false when none do.
   *
   * @param moved the one point that was raised since they last held; without it all are looked at
   */
  readonly settle: (starts: number[], moved?: number) => boolean;
}

export function networkOf(points: readonly Point[], links: readonly Link[]): Network {
  const indexById = new Map(points.map(({ id }, index) => [id, index]));
  const after: Arc[][] = points.map(() => []);
  const before: Arc[][] = points.map(() => []);
  for (const { from, to, minDays, maxDays } of links) {
    const [fromIndex, toIndex] = [indexById.get(from), indexById.get(to)];
    if (fromIndex === undefined || toIndex === undefined) continue;
    after[fromIndex]?.push({ other: toIndex, days: minDays });
    if (maxDays !== undefined) before[toIndex]?.push({ other: fromIndex, days: maxDays });
  }
  const horizon = HORIZON_DAYS + Math.max(0, ...points.map(({ notBefore }) => notBefore));
  const settle: Network['settle'] = (starts, moved) =>
    settled({ points, after, before, horizon }, starts, moved);
  return {
    settle,
    leastStarts: () => {
      const starts = firstDays(points);
      return settle(starts) ? startsById(points, starts) : undefined;
    },
  };
}

/** The day before which no step can be begun, whatever the others do. */
export const firstDays = (points: readonly Point[]): number[] =>
  points.map(({ notBefore }) => Math.max(0, notBefore));

export const startsById = (points: readonly Point[], starts: readonly number[]): Map<string, number> =>
  new Map(points.map(({ id }, index) => [id, starts[index] as number]));

interface Arc {
  readonly other: number;
  readonly days: number;
}

interface Arcs {
  readonly points: readonly Point[];
  /** Least waits of what follows a point. */
  readonly after: readonly (readonly Arc[])[];
  /** Greatest waits after what comes before a point. */
  readonly before: readonly (readonly Arc[])[];
  readonly horizon: number;
}

/** Raises starts until all hold, looking again only at what moved; false when they pass the horizon, as in a circle. */
function settled(
  { points, after, before, horizon }: Arcs,
  starts: number[],
  moved: number | undefined,
): boolean {
  const queue = moved === undefined ? points.map((_, index) => index) : [moved];
  const isQueued = points.map((_, index) => moved === undefined || index === moved);
  const raise = (index: number, day: number): void => {
    starts[index] = day;
    if (isQueued[index] !== true) queue.push(index);
    isQueued[index] = true;
  };
  for (let next = 0; next < queue.length; next++) {
    const index = queue[next] as number;
    isQueued[index] = false;
    const { nextFit, endOf } = points[index] as Point;
    const start = nextFit(starts[index] as number);
    if (start > horizon) return false;
    starts[index] = start;
    const end = endOf(start);
    for (const { other, days } of after[index] as readonly Arc[])
      if ((starts[other] as number) < end + days) raise(other, end + days);
    for (const { other, days } of before[index] as readonly Arc[]) {
      const first = points[other] as Point;
      const firstStart = starts[other] as number;
      if (first.endOf(firstStart) + days < start) raise(other, startToEndBy(first, firstStart, start - days));
    }
  }
  return true;
}

/** The least start, from the one given, whose work ends on the day or later. */
function startToEndBy({ endOf }: Point, start: number, day: number): number {
  let least = start;
  while (endOf(least) < day) least++;
  return least;
}
