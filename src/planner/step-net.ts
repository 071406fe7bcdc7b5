/** The steps of the rules as a net of work and waits, with the windows of the season and the working days. */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import { likelyHoursOf } from './amounts.js';
import { dateOr, startOf } from './computed-facts.js';
import type { ByPart, Parted } from './parts.js';
import type { ScheduleWait } from './schedule.js';
import { skeletonWaits } from './skeleton-waits.js';
import { activeSteps, answered, daysOf, holds } from './steps.js';
import { whereabouts } from './whereabouts.js';
import { type FitDays, fitDaysOf, type NumberOf, type Season } from './windows.js';
import { type HoursTaken, remembered } from './work-days.js';

export interface StepNet extends Parted, ByPart {
  readonly startOn: IsoDate;
  /** Hours that one person works in a day. */
  readonly dayHours: number;
  /** Steps that are in the plan; the others only carry order. */
  readonly inPlan: ReadonlySet<string>;
  /** Hours that are given away already, by days from the first free one. */
  readonly taken?: HoursTaken;
}

export interface NetChoice {
  readonly today: IsoDate;
  readonly season: Season;
  readonly leftOut?: ReadonlySet<string> | undefined;
  readonly taken?: HoursOnDays | undefined;
}

/** Hours of work on each day. */
export type HoursOnDays = ReadonlyMap<IsoDate, number>;

export function stepNet(
  pack: Pack,
  scope: Scope,
  { today, season, leftOut, taken = new Map() }: NetChoice,
): StepNet {
  const inPlan = activeSteps(pack, scope, leftOut);
  const active = new Set(inPlan.map(({ id }) => id));
  const written = writtenWaits(pack, scope, active);
  const startOn = startOf(answered(scope, 'startOn'), today);
  const dayHours = scope('hoursPerDay');
  return {
    startOn,
    dayHours: dayHours.known ? (dayHours.value as number) : Number.POSITIVE_INFINITY,
    inPlan: active,
    taken: new Map([...taken].map(([on, hours]) => [daysBetween(startOn, on), hours])),
    inParts: new Set(pack.steps.filter(({ inParts }) => inParts === true).map(({ id }) => id)),
    eachPart: new Set(pack.steps.filter(({ eachPart }) => eachPart === true).map(({ id }) => id)),
    waits: [
      ...written,
      ...skeletonWaits(
        pack,
        inPlan,
        written.filter(({ binds }) => binds),
      ),
    ],
    steps: pack.steps.map((step) =>
      active.has(step.id)
        ? {
            id: step.id,
            ...byDay(fitDaysOf(step, season, numbersOf(scope)), startOn),
            ...(step.maySlip === true ? { lastFit: () => undefined } : {}),
            joinsNext: step.joinsNext === true,
            workHours: likelyHoursOf(step, scope),
            notBefore: notBeforeOf(step, scope, startOn),
          }
        : { id: step.id, ...WITHOUT_WORK },
    ),
  };
}

/** The waits of the rules; where one of its ends is not in the plan, a wait only carries order. */
function writtenWaits(pack: Pack, scope: Scope, active: ReadonlySet<string>): ScheduleWait[] {
  return pack.steps.flatMap((step) =>
    step.after.map((wait) => {
      const binds = active.has(step.id) && active.has(wait.step);
      return {
        from: wait.step,
        to: step.id,
        minDays: binds ? (daysOf(wait.minDays, scope) ?? 0) : 0,
        maxDays: binds ? daysOf(wait.maxDays, scope) : undefined,
        binds,
      };
    }),
  );
}

const WITHOUT_WORK = {
  nextFit: (day: number) => day,
  lastFit: () => undefined,
  notBefore: 0,
  joinsNext: false,
  workHours: 0,
};

/** Fit days counted from the first free day, each looked up once. */
function byDay({ nextFitDay, lastFitDay }: FitDays, startOn: IsoDate) {
  return {
    nextFit: remembered((day) => daysBetween(startOn, nextFitDay(addDays(startOn, day)))),
    lastFit: remembered((day) => {
      const last = lastFitDay(addDays(startOn, day));
      return last === undefined ? undefined : daysBetween(startOn, last);
    }),
  };
}

function notBeforeOf(step: Step, scope: Scope, startOn: IsoDate): number {
  const dates = (step.notBefore ?? [])
    .filter(({ when }) => holds(when, scope))
    .map(({ date, plusDays }) => {
      const outcome = evaluate(date, scope);
      const from = dateOr(outcome.known ? outcome.value : undefined, startOn);
      return addDays(from, daysOf(plusDays, scope) ?? 0);
    });
  return Math.max(0, ...dates.map((date) => daysBetween(startOn, date)));
}

/** What decides on which days work may be done. */
export function seasonOf(pack: Pack, scope: Scope, today: IsoDate): Season {
  const { southern, climate, lateSpring, shutDays } = whereabouts(pack, scope, today);
  return {
    southern,
    warmSeasonGrass: answered(scope, 'grassType') === 'warm-season',
    weekendsOnly: answered(scope, 'workDays') === 'weekends',
    rainFed: answered(scope, 'facts.keepsWet') === false,
    climate,
    lateSpring,
    shutDays,
  };
}

export function numbersOf(scope: Scope): NumberOf {
  return (expression) => {
    const outcome = evaluate(expression, scope);
    return outcome.known && typeof outcome.value === 'number' ? outcome.value : undefined;
  };
}
