/**
 * Puts steps on dates: the earliest that respect every wait and every window.
 *
 * Works in whole days from the first free day. Lower bounds are raised until nothing moves, which gives the least
 * dates that hold, or a clash when a wait and a window drive each other past the horizon.
 * Steps that are not in the plan stay in the net as points without work, so that order is kept across them.
 */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';

export interface ScheduleStep {
  readonly id: string;
  /** Nearest fit day on or after the one given; the same day when it is fit. */
  readonly nextFitDay: (date: IsoDate) => IsoDate;
  /** Last day of the window that the date lies in, or undefined for no limit. */
  readonly lastFitDay: (date: IsoDate) => IsoDate | undefined;
  /** Earliest date from outside the net, such as the end of a weedkiller's wait. */
  readonly notBefore?: IsoDate | undefined;
  /** Moved up to what follows it, so that a work day stays together. */
  readonly joinsNext: boolean;
}

export interface ScheduleWait {
  readonly from: string;
  readonly to: string;
  readonly minDays: number;
  readonly maxDays: number | undefined;
  /** Both ends are in the plan; otherwise the wait only carries the order through. */
  readonly binds: boolean;
}

export interface Placed {
  readonly startOn: IsoDate;
  readonly latestOn: IsoDate | undefined;
}

export type Schedule =
  | { readonly possible: true; readonly placed: ReadonlyMap<string, Placed> }
  /** The steps that could not settle. */
  | { readonly possible: false; readonly clash: readonly string[] };

/** Three years: every window opens twice before a search is given up. */
const HORIZON_DAYS = 3 * 366;

export function schedule(input: {
  readonly startOn: IsoDate;
  readonly steps: readonly ScheduleStep[];
  readonly waits: readonly ScheduleWait[];
}): Schedule {
  const { startOn, steps, waits } = input;
  const earliest = new Map<string, number>();
  for (const { id, notBefore } of steps) {
    earliest.set(id, notBefore === undefined ? 0 : Math.max(0, daysBetween(startOn, notBefore)));
  }
  const at = (id: string): number => earliest.get(id) ?? 0;
  let moved = new Set<string>();
  const raise = (id: string, day: number): void => {
    if (day <= at(id)) return;
    earliest.set(id, day);
    moved.add(id);
  };
  do {
    moved = new Set();
    for (const { from, to, minDays, maxDays } of waits) {
      raise(to, at(from) + minDays);
      if (maxDays !== undefined) raise(from, at(to) - maxDays);
    }
    for (const { id, nextFitDay } of steps) {
      const day = addDays(startOn, at(id));
      raise(id, at(id) + daysBetween(day, nextFitDay(day)));
    }
    if (steps.some(({ id }) => at(id) > HORIZON_DAYS)) return { possible: false, clash: [...moved].sort() };
  } while (moved.size > 0);
  return {
    possible: true,
    placed: withLatest(startOn, steps, waits, joined(startOn, steps, waits, earliest)),
  };
}

/**
 * Moves each joining step to the last fit day that its followers leave, without moving them.
 * Repeats, because a moved follower makes room for what comes before it; days only grow, so it ends.
 */
function joined(
  startOn: IsoDate,
  steps: readonly ScheduleStep[],
  waits: readonly ScheduleWait[],
  earliest: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  const days = new Map(earliest);
  const at = (id: string): number => days.get(id) ?? 0;
  const latestFor = (id: string): number =>
    Math.min(
      ...waits.filter(({ from, binds }) => from === id && binds).map(({ to, minDays }) => at(to) - minDays),
      ...waits
        .filter(({ to, maxDays }) => to === id && maxDays !== undefined)
        .map(({ from, maxDays }) => at(from) + (maxDays as number)),
    );
  let moved = true;
  while (moved) {
    moved = false;
    for (const { id, nextFitDay, joinsNext } of steps) {
      if (!joinsNext) continue;
      for (let day = latestFor(id); Number.isFinite(day) && day > at(id); day--) {
        const date = addDays(startOn, day);
        if (nextFitDay(date) !== date) continue;
        days.set(id, day);
        moved = true;
        break;
      }
    }
  }
  return days;
}

/** The latest day of each step while its window stays open and every later step still fits. */
function withLatest(
  startOn: IsoDate,
  steps: readonly ScheduleStep[],
  waits: readonly ScheduleWait[],
  earliest: ReadonlyMap<string, number>,
): ReadonlyMap<string, Placed> {
  const latest = new Map<string, number>();
  for (const { id, lastFitDay } of steps) {
    const last = lastFitDay(addDays(startOn, earliest.get(id) ?? 0));
    latest.set(id, last === undefined ? Number.POSITIVE_INFINITY : daysBetween(startOn, last));
  }
  const at = (id: string): number => latest.get(id) ?? Number.POSITIVE_INFINITY;
  let changed = true;
  const lower = (id: string, day: number): void => {
    if (day >= at(id)) return;
    latest.set(id, day);
    changed = true;
  };
  while (changed) {
    changed = false;
    for (const { from, to, minDays, maxDays } of waits) {
      lower(from, at(to) - minDays);
      if (maxDays !== undefined) lower(to, at(from) + maxDays);
    }
  }
  return new Map(
    steps.map(({ id }) => {
      const day = latest.get(id) ?? Number.POSITIVE_INFINITY;
      return [
        id,
        {
          startOn: addDays(startOn, earliest.get(id) ?? 0),
          latestOn: Number.isFinite(day) ? addDays(startOn, day) : undefined,
        },
      ];
    }),
  );
}
