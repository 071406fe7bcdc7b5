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

/** A net that is being solved; its starts only ever rise. */
export interface Network {
  /** The start of the point at this place in the list, as it stands. */
  readonly startOf: (index: number) => number;
  /** The least starts that keep everything asked so far; undefined when none can hold. */
  readonly leastStarts: () => Map<string, number> | undefined;
  /**
   * Asks a point to start no earlier than a day, and moves whatever follows from that.
   * The first place in the list that moved; undefined when no starts can hold.
   */
  readonly raise: (index: number, day: number) => number | undefined;
}

export function networkOf(points: readonly Point[], links: readonly Link[]): Network {
  const arcsAt = arcsByPoint(points, links);
  const starts = points.map(({ notBefore }) => Math.max(0, notBefore));
  const horizon = HORIZON_DAYS + Math.max(0, ...starts);
  const settle = (from: Iterable<number>) => settled(points, starts, { arcsAt, from, horizon });
  return {
    startOf: (index) => starts[index] as number,
    leastStarts: () =>
      settle(points.keys()) === undefined
        ? undefined
        : new Map(points.map(({ id }, index) => [id, starts[index] as number])),
    raise: (index, day) => {
      starts[index] = Math.max(starts[index] as number, day);
      return settle([index]);
    },
  };
}

interface Arc {
  readonly fromIndex: number;
  readonly toIndex: number;
  readonly minDays: number;
  readonly maxDays: number | undefined;
}

/** For every point the waits that begin or end at it. */
function arcsByPoint(points: readonly Point[], links: readonly Link[]): readonly (readonly Arc[])[] {
  const indexById = new Map(points.map(({ id }, index) => [id, index]));
  const arcsAt: Arc[][] = points.map(() => []);
  for (const { from, to, minDays, maxDays } of links) {
    const [fromIndex, toIndex] = [indexById.get(from), indexById.get(to)];
    if (fromIndex === undefined || toIndex === undefined) continue;
    const arc = { fromIndex, toIndex, minDays, maxDays };
    arcsAt[fromIndex]?.push(arc);
    arcsAt[toIndex]?.push(arc);
  }
  return arcsAt;
}

interface Unsettled {
  readonly arcsAt: readonly (readonly Arc[])[];
  /** Places of the points that may break a wait or stand on an unfit day. */
  readonly from: Iterable<number>;
  /** Last day that is looked at. */
  readonly horizon: number;
}

/** Raises starts until nothing moves. The first place looked at or moved; undefined when a start passes the horizon. */
function settled(
  points: readonly Point[],
  starts: number[],
  { arcsAt, from, horizon }: Unsettled,
): number | undefined {
  const waiting = new Set(from);
  let first = Number.POSITIVE_INFINITY;
  // A set hands out what is put into it while it is walked.
  for (const index of waiting) {
    waiting.delete(index);
    first = Math.min(first, index);
    const start = (points[index] as Point).nextFit(starts[index] as number);
    if (start > horizon) return undefined;
    starts[index] = start;
    for (const arc of arcsAt[index] as readonly Arc[]) {
      const moved = keepWait(points, starts, arc);
      if (moved !== undefined) waiting.add(moved);
    }
  }
  return first;
}

/** Raises one end of a wait that is too short or too long; the place of the point that moved. */
function keepWait(
  points: readonly Point[],
  starts: number[],
  { fromIndex, toIndex, minDays, maxDays }: Arc,
): number | undefined {
  const first = points[fromIndex] as Point;
  const end = first.endOf(starts[fromIndex] as number);
  const start = starts[toIndex] as number;
  if (start < end + minDays) {
    starts[toIndex] = end + minDays;
    return toIndex;
  }
  if (maxDays === undefined || start <= end + maxDays) return undefined;
  starts[fromIndex] = startToEndBy(first, starts[fromIndex] as number, start - maxDays);
  return fromIndex;
}

/** The least start, from the one given, whose work ends on the day or later. */
function startToEndBy({ endOf }: Point, start: number, day: number): number {
  let least = start;
  while (endOf(least) < day) least++;
  return least;
}
