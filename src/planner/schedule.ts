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
  readonly workHours: number;
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

export interface ScheduleInput {
  readonly startOn: IsoDate;
  readonly steps: readonly ScheduleStep[];
  readonly waits: readonly ScheduleWait[];
  /** Hours that fit into one day; a longer step has a day of its own. */
  readonly dayHours: number;
}

/** The earliest dates that hold; work is parted by the hours of a day as long as waits and windows allow it. */
export function schedule(input: ScheduleInput): Schedule {
  const parted = settled(input, true);
  return parted.possible ? parted : settled(input, false);
}

function settled(input: ScheduleInput, isParted: boolean): Schedule {
  const { startOn, steps, waits, dayHours } = input;
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
    const tooMuch = moved.size === 0 && isParted ? firstBeyondTheDay(steps, at, dayHours) : undefined;
    if (tooMuch !== undefined) raise(tooMuch, at(tooMuch) + 1);
    if (steps.some(({ id }) => at(id) > HORIZON_DAYS)) return { possible: false, clash: [...moved].sort() };
  } while (moved.size > 0);
  const days = joined({ startOn, steps, waits, earliest, dayHours });
  return { possible: true, placed: withLatest(startOn, steps, waits, days) };
}

/** The first step, in the order given, whose work no longer fits into its day; undefined when all does. */
function firstBeyondTheDay(
  steps: readonly ScheduleStep[],
  at: (id: string) => number,
  dayHours: number,
): string | undefined {
  const hoursOn = new Map<number, number>();
  for (const { id, workHours } of steps) {
    const taken = hoursOn.get(at(id)) ?? 0;
    if (workHours > 0 && taken > 0 && taken + workHours > dayHours) return id;
    hoursOn.set(at(id), taken + workHours);
  }
  return undefined;
}

/**
 * Moves each joining step to the last fit day that its followers leave and that still has the hours for it,
 * the later steps first; others stay. Where that would break a wait, everything stays where it was.
 */
function joined({
  startOn,
  steps,
  waits,
  earliest,
  dayHours,
}: {
  readonly startOn: IsoDate;
  readonly steps: readonly ScheduleStep[];
  readonly waits: readonly ScheduleWait[];
  readonly earliest: ReadonlyMap<string, number>;
  readonly dayHours: number;
}): ReadonlyMap<string, number> {
  const days = new Map(earliest);
  const at = (id: string): number => days.get(id) ?? 0;
  const hoursOn = new Map<number, number>();
  const take = (day: number, hours: number): void => void hoursOn.set(day, (hoursOn.get(day) ?? 0) + hours);
  for (const { id, joinsNext, workHours } of steps) if (!joinsNext) take(at(id), workHours);
  for (const { id, nextFitDay, joinsNext, workHours } of laterFirst(steps, waits)) {
    if (!joinsNext) continue;
    const limits = waits
      .filter(({ from, binds }) => from === id && binds)
      .map(({ to, minDays }) => at(to) - minDays);
    const fits = (day: number): boolean => {
      const date = addDays(startOn, day);
      const taken = hoursOn.get(day) ?? 0;
      return nextFitDay(date) === date && (taken === 0 || taken + workHours <= dayHours);
    };
    let day = limits.length === 0 ? at(id) : Math.max(at(id), Math.min(...limits));
    while (day > at(id) && !fits(day)) day--;
    days.set(id, day);
    take(day, workHours);
  }
  const holds = waits.every(({ from, to, minDays, maxDays, binds }) => {
    if (!binds) return true;
    const gap = at(to) - at(from);
    return gap >= minDays && (maxDays === undefined || gap <= maxDays);
  });
  return holds ? days : earliest;
}

/** Steps so that whatever follows a step comes before it in the list. */
function laterFirst(steps: readonly ScheduleStep[], waits: readonly ScheduleWait[]): ScheduleStep[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const sorted = new Map<string, ScheduleStep>();
  const visit = (step: ScheduleStep): void => {
    if (sorted.has(step.id)) return;
    for (const { to } of waits.filter(({ from }) => from === step.id)) {
      const follower = byId.get(to);
      if (follower !== undefined) visit(follower);
    }
    sorted.set(step.id, step);
  };
  steps.forEach(visit);
  return [...sorted.values()];
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
