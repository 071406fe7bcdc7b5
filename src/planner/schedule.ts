/**
 * Puts steps on days: the earliest that keep every wait, every window and the hours of a day.
 *
 * Works in whole days from the first free day. Work that is more than a day holds goes on over the next fit days, and
 * what waits for it counts from its last one. Steps that are not in the plan stay in the net as points without
 * work, so that order is kept across them.
 */
import { grouped } from '../base/grouped.js';
import { latestStarts } from './latest-starts.js';
import { type Link, networkOf, type Starts } from './network.js';
import { type HoursTaken, openDiary, type WorkPoint, workPoint } from './work-days.js';

/** A step and its work; days count from the first free day. */
export interface ScheduleStep {
  readonly id: string;
  /** Nearest fit day on or after the one given; the same day when it is fit. */
  readonly nextFit: (day: number) => number;
  /** Last day of the window that the day lies in, or undefined for no limit. */
  readonly lastFit: (day: number) => number | undefined;
  /** Earliest day from outside the net, such as the end of a weedkiller's wait; 0 for the first free day. */
  readonly notBefore: number;
  /** Moved up to what follows it, so that a work day stays together. */
  readonly joinsNext: boolean;
  /** It is moved up no further than to this day. */
  readonly joinBy?: number | undefined;
  readonly workHours: number;
}

export interface ScheduleWait extends Link {
  /** Both ends are in the plan; otherwise the wait only carries the order through. */
  readonly binds: boolean;
}

export interface Placed {
  readonly start: number;
  /** Last day of the work. */
  readonly end: number;
  /** Last day on which it may begin, if anything limits it. */
  readonly latest: number | undefined;
}

export type Schedule = ReadonlyMap<string, Placed>;

export interface ScheduleInput {
  /** In the order of the trade: where the hours of a day run out, the later step moves. */
  readonly steps: readonly ScheduleStep[];
  readonly waits: readonly ScheduleWait[];
  /** Hours of work that fit into one day, above 0. */
  readonly dayHours: number;
  /** Hours that other work has already, such as that on another area. */
  readonly taken?: HoursTaken | undefined;
}

/** The earliest days that hold; undefined when there are none. */
export function schedule(input: ScheduleInput): Schedule | undefined {
  const { waits, dayHours } = input;
  const points = input.steps.map((step) => workPoint(step, dayHours));
  const least = withinHours(points, input);
  if (least === undefined) return undefined;
  const starts = joined(points, input, least);
  const latest = latestStarts(points, waits, least);
  return new Map(
    points.map(({ id, endOf }) => {
      const start = starts.get(id) as number;
      const last = Math.max(start, latest.get(id) as number);
      return [id, { start, end: endOf(start), latest: Number.isFinite(last) ? last : undefined }];
    }),
  );
}

/** The least starts with no day overfull: the first step whose work no longer fits moves on, until all does. */
function withinHours(
  points: readonly WorkPoint[],
  { waits, dayHours, taken }: ScheduleInput,
): Starts | undefined {
  const network = networkOf(points, waits);
  if (network.leastStarts() === undefined) return undefined;
  const moves = points.map(() => 0);
  // Work that makes room more often than there are days of work in all is tied to what it makes room for.
  const daysOfWork = points.reduce((sum, { hours }) => sum + Math.ceil(hours / dayHours), 0);
  const mostMoves = daysOfWork + (taken?.size ?? 0);
  const diary = openDiary(dayHours, taken);
  let index = 0;
  while (index < points.length) {
    const start = network.startOf(index);
    const work = (points[index] as WorkPoint).workOn(start);
    if (diary.hasRoomFor(work)) {
      diary.take(work);
      index++;
      continue;
    }
    moves[index] = (moves[index] as number) + 1;
    if ((moves[index] as number) > mostMoves) return undefined;
    const moved = network.raise(index, start + 1);
    if (moved === undefined) return undefined;
    // What comes before the first step that moved has its room already.
    diary.keep(moved);
    index = moved;
  }
  return network.leastStarts();
}

function firstBeyondTheDay(
  points: readonly WorkPoint[],
  starts: Starts,
  diary: ReturnType<typeof openDiary>,
): string | undefined {
  for (const { id, workOn } of points) {
    const work = workOn(starts.get(id) as number);
    if (!diary.hasRoomFor(work)) return id;
    diary.take(work);
  }
  return undefined;
}

/**
 * Moves each joining step to the last fit day that its followers leave and that still has the hours for it,
 * the later steps first; others stay. Where that would break a wait, everything stays where it was.
 */
function joined(
  points: readonly WorkPoint[],
  { waits, dayHours, taken }: ScheduleInput,
  least: Starts,
): Starts {
  const starts = new Map(least);
  const at = (id: string): number => starts.get(id) as number;
  const diary = openDiary(dayHours, taken);
  for (const { id, joinsNext, workOn } of points) if (!joinsNext) diary.take(workOn(at(id)));
  const byId = new Map(points.map((point) => [point.id, point]));
  const bound = waits.filter(({ binds }) => binds);
  const after = grouped(bound, ({ from }) => from);
  const before = grouped(bound, ({ to }) => to);
  for (const { id, nextFit, joinsNext, joinBy = Number.POSITIVE_INFINITY, workOn, endOf } of laterFirst(
    points,
    waits,
  )) {
    if (!joinsNext) continue;
    const followers = (after.get(id) ?? []).map(({ to, minDays }) => at(to) - minDays);
    // What joins too can still move after this one; the rest stays where it is and holds it back.
    const heldBack = (before.get(id) ?? []).flatMap(({ from, maxDays }) => {
      const first = byId.get(from);
      if (maxDays === undefined || first === undefined || first.joinsNext) return [];
      return [first.endOf(at(from)) + maxDays];
    });
    const limit = followers.length === 0 ? at(id) : Math.min(...followers, ...heldBack, joinBy);
    const fits = (day: number): boolean =>
      nextFit(day) === day && endOf(day) <= limit && diary.hasRoomFor(workOn(day));
    let day = Math.max(at(id), limit);
    while (day > at(id) && !fits(day)) day--;
    starts.set(id, day);
    diary.take(workOn(day));
  }
  const holds = waits.every(({ from, to, minDays, maxDays, binds }) => {
    if (!binds) return true;
    const gap = at(to) - (byId.get(from) as WorkPoint).endOf(at(from));
    return gap >= minDays && (maxDays === undefined || gap <= maxDays);
  });
  return holds && firstBeyondTheDay(points, starts, openDiary(dayHours, taken)) === undefined
    ? starts
    : least;
}

/** Steps so that whatever follows a step comes before it in the list. */
function laterFirst(points: readonly WorkPoint[], waits: readonly ScheduleWait[]): WorkPoint[] {
  const byId = new Map(points.map((point) => [point.id, point]));
  const after = grouped(waits, ({ from }) => from);
  const sorted = new Set<WorkPoint>();
  const visit = (point: WorkPoint): void => {
    if (sorted.has(point)) return;
    for (const { to } of after.get(point.id) ?? []) {
      const follower = byId.get(to);
      if (follower !== undefined) visit(follower);
    }
    sorted.add(point);
  };
  points.forEach(visit);
  return [...sorted];
}
