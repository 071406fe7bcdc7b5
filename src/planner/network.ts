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
  /** The least starts, none before `from`; undefined when no starts can hold. */
  readonly leastStarts: (from?: Starts) => Map<string, number> | undefined;
}

export function networkOf(points: readonly Point[], links: readonly Link[]): Network {
  const indexById = new Map(points.map(({ id }, index) => [id, index]));
  const arcs = links.flatMap(({ from, to, minDays, maxDays }) => {
    const [fromIndex, toIndex] = [indexById.get(from), indexById.get(to)];
    return fromIndex === undefined || toIndex === undefined ? [] : [{ fromIndex, toIndex, minDays, maxDays }];
  });
  const horizon = HORIZON_DAYS + Math.max(0, ...points.map(({ notBefore }) => notBefore));
  return {
    leastStarts: (from) => {
      const starts = points.map(({ id, notBefore }) => Math.max(0, notBefore, from?.get(id) ?? 0));
      // Waits alone settle within as many rounds as there are points, or they run in a circle for ever.
      let roundsOfWaits = 0;
      for (;;) {
        const waitMoved = raiseByWaits(points, arcs, starts);
        const windowMoved = raiseToFitDays(points, starts);
        if (starts.some((start) => start > horizon)) return undefined;
        if (!waitMoved && !windowMoved)
          return new Map(points.map(({ id }, index) => [id, starts[index] as number]));
        roundsOfWaits = windowMoved ? 0 : roundsOfWaits + 1;
        if (roundsOfWaits > points.length) return undefined;
      }
    },
  };
}

interface Arc {
  readonly fromIndex: number;
  readonly toIndex: number;
  readonly minDays: number;
  readonly maxDays: number | undefined;
}

function raiseByWaits(points: readonly Point[], arcs: readonly Arc[], starts: number[]): boolean {
  let moved = false;
  for (const { fromIndex, toIndex, minDays, maxDays } of arcs) {
    const first = points[fromIndex] as Point;
    const end = first.endOf(starts[fromIndex] as number);
    const start = starts[toIndex] as number;
    if (start < end + minDays) {
      starts[toIndex] = end + minDays;
      moved = true;
    } else if (maxDays !== undefined && start > end + maxDays) {
      starts[fromIndex] = startToEndBy(first, starts[fromIndex] as number, start - maxDays);
      moved = true;
    }
  }
  return moved;
}

function raiseToFitDays(points: readonly Point[], starts: number[]): boolean {
  let moved = false;
  points.forEach(({ nextFit }, index) => {
    const start = starts[index] as number;
    const fit = nextFit(start);
    if (fit === start) return;
    starts[index] = fit;
    moved = true;
  });
  return moved;
}

/** The least start, from the one given, whose work ends on the day or later. */
function startToEndBy({ endOf }: Point, start: number, day: number): number {
  let least = start;
  while (endOf(least) < day) least++;
  return least;
}
