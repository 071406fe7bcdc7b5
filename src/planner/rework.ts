/** The rest of a plan worked out again from where things stand, and what of it moved, and why. */
import { addDays, daysBetween, formatDay, formatKnown, type IsoDate, type KnownTo } from '../base/dates.js';
import { daysWords } from '../base/quantity-words.js';
import { assemblePlan, type PlanInput, plannedScope } from './assemble-plan.js';
import type { Plan, PlanStep } from './plan.js';
import { type FollowRecord, type Progress, progressOf } from './progress.js';
import { type Say, sayer } from './texts.js';

export interface Reworked {
  readonly plan: Plan;
  readonly progress: Progress;
}

/** Puts the plan's figures into sentences of the rules, in the reader's units. */
export const sayerOf = (input: PlanInput): Say =>
  sayer({
    pack: input.pack,
    scope: plannedScope(input),
    note: () => undefined,
    units: input.units ?? 'metric',
  });

/** @throws {ScheduleClash} when no dates hold */
export function reworked(input: PlanInput, records: readonly FollowRecord[], today: IsoDate): Reworked {
  const scope = plannedScope(input);
  const progress = progressOf(input.pack, records, { today, scope, say: sayerOf(input) });
  // However far the sowing moves, it is the same season's work.
  const { season } = assemblePlan(input);
  return { plan: { ...assemblePlan({ ...input, progress }), season }, progress };
}

export interface Move {
  readonly step: string;
  readonly title: string;
  /** Null: it was not in the plan before. */
  readonly from: IsoDate | null;
  /** Null: it is not in the plan any more. */
  readonly to: IsoDate | null;
  readonly why: string;
  /** It only follows another step that moved. */
  readonly isCarried: boolean;
}

/** The work itself; what goes on after it, such as keeping off, is no end. */
export const workEnd = (step: PlanStep): IsoDate => (step.parts.at(-1) as PlanStep['parts'][number]).endOn;

/** Every step still to do that has another first day than before, in the order of the new days. */
export function movesOf(before: Plan, { plan, progress }: Reworked): Move[] {
  const was = new Map(before.steps.map((step) => [step.id, step]));
  const moved = plan.steps
    .filter(({ id, doneOn, startOn }) => doneOn === null && was.get(id)?.startOn !== startOn)
    .map((step): Move => {
      const from = was.get(step.id)?.startOn ?? null;
      const { id, title, startOn } = step;
      return { step: id, title, from, to: startOn, ...reasonOf(step, plan, progress) };
    });
  const gone = before.steps
    .filter(({ id }) => !plan.steps.some((step) => step.id === id) && !progress.done.has(id))
    // A wait that is over is no loss.
    .filter(({ id, endOn }) => progress.leftOut.has(id) || endOn >= progress.today)
    .map(({ id, title, startOn }): Move => {
      const why = progress.leftOut.has(id)
        ? 'it was not done, and what comes after it has been'
        : 'it is no longer needed';
      return { step: id, title, from: startOn, to: null, why, isCarried: false };
    });
  return [...moved, ...gone];
}

const TODAY_FIRST = 'still to do, and today is the first day it can be';

interface Limit {
  readonly on: IsoDate;
  readonly why: string;
  readonly isCarried: boolean;
}

/** What holds the step back longest: a sign, a wait, today; then whatever its season or its fellows ask besides. */
function reasonOf(step: PlanStep, plan: Plan, { today, held }: Progress): Omit<Limit, 'on'> {
  const hold = held.get(step.id);
  const limits: Limit[] = [
    ...(step.startOn < today ? [] : [{ on: today, why: TODAY_FIRST, isCarried: false }]),
    ...step.after.flatMap((wait) => limitOf(wait, plan)),
    ...(hold === undefined ? [] : [{ on: hold.until, why: hold.why, isCarried: false }]),
  ];
  const [first] = limits;
  if (first === undefined) return { why: 'it began by itself', isCarried: false };
  const last = limits.reduce((most, each) => (each.on >= most.on ? each : most), first);
  if (last.on >= step.startOn) return last;
  if (step.window !== null && daysBetween(last.on, step.startOn) > DAYS_PER_WEEK)
    return { why: `${last.why}, and then it waits for its season`, isCarried: false };
  return { why: 'it goes with what comes after it', isCarried: true };
}

function limitOf({ step: id, minDays }: PlanStep['after'][number], plan: Plan): Limit[] {
  const before = plan.steps.find((each) => each.id === id);
  if (before === undefined) return [];
  const { title, startOn, doneOn } = before;
  const after = minDays === 0 ? 'it follows' : `it comes ${daysWords(minDays)} after`;
  const stands =
    doneOn === null ? `now due ${dueWords(startOn, plan.datesKnownTo)}` : `done on ${formatDay(doneOn)}`;
  const why = `${after} "${title}", ${stands}`;
  return [{ on: addDays(workEnd(before), minDays), why, isCarried: doneOn === null }];
}

/** `on Saturday 3 April 2027`, or `in April 2027?`. */
export const dueWords = (day: IsoDate, knownTo: KnownTo): string =>
  `${knownTo === 'day' ? 'on' : 'in'} ${formatKnown(day, knownTo)}`;

const DAYS_PER_WEEK = 7;

/** Steps still to do whose greatest wait after something done can no longer be kept. */
export function overdue({ plan }: Reworked): { readonly title: string; readonly says: string }[] {
  return plan.steps.flatMap((step) => {
    if (step.doneOn !== null) return [];
    const late = step.after.flatMap(({ step: id, maxDays }) => {
      const before = plan.steps.find((each) => each.id === id);
      if (before === undefined || before.doneOn === null || maxDays === null) return [];
      const last = step.parts.at(-1)?.startOn ?? step.startOn;
      const gap = daysBetween(before.doneOn, last);
      if (gap <= maxDays) return [];
      const was = maxDays === 0 ? 'on the same day' : `within ${daysWords(maxDays)}`;
      return [
        `It should follow "${before.title}" ${was}, and comes ${daysWords(gap)} after it. Look first whether this still holds: ${before.doneWhen}`,
      ];
    });
    return late[0] === undefined ? [] : [{ title: step.title, says: late[0] }];
  });
}
