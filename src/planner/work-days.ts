/** The days that work takes: hours of one step spread over fit days, and what is left of each day. */
import type { WindowedPoint } from './latest-starts.js';
import type { ScheduleStep } from './schedule.js';

export interface WorkPoint extends WindowedPoint {
  readonly joinsNext: boolean;
  readonly joinBy: number | undefined;
  readonly hours: number;
  /** The days of the work with the hours on each, when it starts on the fit day given. */
  readonly workOn: (start: number) => readonly WorkDay[];
}

export interface WorkDay {
  readonly day: number;
  readonly hours: number;
}

/** The step as a point of the net; its work is spread once for each day it may start on. */
export function workPoint(step: ScheduleStep, dayHours: number): WorkPoint {
  const { id, notBefore, nextFit, lastFit, joinsNext, joinBy, workHours } = step;
  const workOn = remembered((start: number): readonly WorkDay[] => {
    const days: WorkDay[] = [];
    let left = workHours;
    for (let day = start; days.length === 0 || left > 0; day = nextFit(day + 1)) {
      days.push({ day, hours: Math.min(left, dayHours) });
      left -= dayHours;
    }
    return days;
  });
  const endOf =
    workHours <= dayHours ? (start: number) => start : (start: number) => workOn(start).at(-1)?.day ?? start;
  return { id, notBefore, nextFit, lastFit, joinsNext, joinBy, hours: workHours, workOn, endOf };
}

/** Looks each day up once. */
export function remembered<Value>(work: (day: number) => Value): (day: number) => Value {
  const kept = new Map<number, Value>();
  return (day) => {
    if (kept.has(day)) return kept.get(day) as Value;
    const value = work(day);
    kept.set(day, value);
    return value;
  };
}

/** Hours already given away, by day. */
export type HoursTaken = ReadonlyMap<number, number>;

/** A diary of hours, day by day; what was given last can be taken back. */
export function openDiary(dayHours: number, already: HoursTaken = new Map()) {
  const taken = new Map(already);
  /** For each work taken in, the hours that its days had before. */
  const before: (readonly WorkDay[])[] = [];
  const on = (day: number): number => taken.get(day) ?? 0;
  return {
    taken: taken as HoursTaken,
    hasRoomFor: (work: readonly WorkDay[]): boolean =>
      work.every(({ day, hours }) => hours === 0 || on(day) === 0 || on(day) + hours <= dayHours),
    take: (work: readonly WorkDay[]): void => {
      before.push(work.map(({ day }) => ({ day, hours: on(day) })));
      for (const { day, hours } of work) taken.set(day, on(day) + hours);
    },
    /** Leaves only the first so many works in. */
    keep: (count: number): void => {
      while (before.length > count)
        for (const { day, hours } of before.pop() as readonly WorkDay[]) taken.set(day, hours);
    },
  };
}
