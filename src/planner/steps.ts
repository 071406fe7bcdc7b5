/** Chooses the steps that apply and puts them on dates. */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Step } from '../rules/schema.js';
import { hoursOf } from './amounts.js';
import { dateOr, startOf } from './computed-facts.js';
import { isSouthern, placeOf } from './place.js';
import { type Placed, type Schedule, type ScheduleWait, schedule } from './schedule.js';
import { fitDaysOf, type Season } from './windows.js';

/** A number of whole days, or undefined while it is open. */
export function daysOf(expression: Expression | undefined, scope: Scope): number | undefined {
  if (expression === undefined) return undefined;
  const outcome = evaluate(expression, scope);
  return outcome.known && typeof outcome.value === 'number' ? Math.ceil(outcome.value) : undefined;
}

export const holds = (condition: Expression, scope: Scope): boolean => {
  const outcome = evaluate(condition, scope);
  return outcome.known && outcome.value === true;
};

/** Steps in the plan, in the trade's order. */
export function activeSteps(pack: Pack, scope: Scope): Step[] {
  return pack.steps.filter((step) => holds(step.when, scope));
}

/** What decides on which days work may be done. */
export function seasonOf(pack: Pack, scope: Scope): Season {
  const place = scope('place');
  return {
    southern: isSouthern(place.known ? placeOf(String(place.value), pack.climate) : undefined),
    warmSeasonGrass: answered(scope, 'grassType') === 'warm-season',
    weekendsOnly: answered(scope, 'workDays') === 'weekends',
  };
}

export function answered(scope: Scope, name: string): unknown {
  const outcome = scope(name);
  return outcome.known ? outcome.value : undefined;
}

/**
 * Dates of all active steps; inactive ones only carry the order through.
 * Work that takes more than a day holds up what comes after it; a lawn too large for that inside its waits and
 * season is worked part by part instead, each part in the same order.
 */
export function scheduleSteps(
  pack: Pack,
  scope: Scope,
  today: IsoDate,
  season = seasonOf(pack, scope),
): Schedule {
  const stepByStep = scheduleOf(pack, scope, today, { season, partByPart: false });
  return stepByStep.possible ? stepByStep : scheduleOf(pack, scope, today, { season, partByPart: true });
}

function scheduleOf(
  pack: Pack,
  scope: Scope,
  today: IsoDate,
  { season, partByPart }: { readonly season: Season; readonly partByPart: boolean },
): Schedule {
  const active = new Set(activeSteps(pack, scope).map(({ id }) => id));
  const anyDay = { nextFitDay: (date: IsoDate) => date, lastFitDay: () => undefined };
  const spans = new Map(
    pack.steps.map((step) => [
      step.id,
      active.has(step.id) && !partByPart ? moreDaysOf(step, pack, scope) : 0,
    ]),
  );
  const waits: ScheduleWait[] = pack.steps.flatMap((step) =>
    step.after.map((wait) => {
      const binds = active.has(step.id) && active.has(wait.step);
      const maxDays = binds ? daysOf(wait.maxDays, scope) : undefined;
      // A wait counts from the last day of the work before it; what must follow at once goes on part by part.
      const span = maxDays === undefined ? (spans.get(wait.step) ?? 0) : 0;
      return {
        from: wait.step,
        to: step.id,
        minDays: binds ? (daysOf(wait.minDays, scope) ?? 0) + span : 0,
        maxDays,
        binds,
      };
    }),
  );
  return schedule({
    startOn: startOf(answered(scope, 'startOn'), today),
    waits,
    dayHours: dayHoursOf(pack),
    steps: pack.steps.map((step) => ({
      id: step.id,
      ...(active.has(step.id) ? fitDaysOf(step, season) : anyDay),
      joinsNext: active.has(step.id) && step.joinsNext === true,
      workHours: active.has(step.id) ? hoursOf(step, scope).value : 0,
      notBefore: active.has(step.id) ? notBeforeOf(step, scope, today) : undefined,
    })),
  });
}

/** Days that the work of a step goes on after its first, because it is more than fits into one. */
export function moreDaysOf(step: Step, pack: Pack, scope: Scope): number {
  return Math.max(0, Math.ceil(hoursOf(step, scope).value / dayHoursOf(pack)) - 1);
}

/** Hours of work in a day; without the figure nothing is parted. */
function dayHoursOf(pack: Pack): number {
  return pack.figureById.get('work-day-h')?.typical ?? Number.POSITIVE_INFINITY;
}

function notBeforeOf(step: Step, scope: Scope, today: IsoDate): IsoDate | undefined {
  const dates = (step.notBefore ?? [])
    .filter(({ when }) => holds(when, scope))
    .map(({ date, plusDays }) => {
      const outcome = evaluate(date, scope);
      const from = dateOr(
        outcome.known ? outcome.value : undefined,
        startOf(answered(scope, 'startOn'), today),
      );
      return addDays(from, daysOf(plusDays, scope) ?? 0);
    });
  return dates.sort().at(-1);
}

/**
 * Days that the season alone holds the sowing back: its date with windows, less its date without.
 * 0 when nothing is sown or nothing waits.
 */
export function seasonWaitOf(pack: Pack, scope: Scope, today: IsoDate): number {
  const season = seasonOf(pack, scope);
  const inSeason = scheduleSteps(pack, scope, today, season);
  const anyTime = scheduleSteps(pack, scope, today, { ...season, anyTimeOfYear: true });
  if (!inSeason.possible || !anyTime.possible) return 0;
  const days = activeSteps(pack, scope)
    .filter(({ id }) => SOWINGS.includes(id))
    .map(({ id }) =>
      daysBetween((anyTime.placed.get(id) as Placed).startOn, (inSeason.placed.get(id) as Placed).startOn),
    );
  return Math.max(0, ...days);
}

/** The steps that the whole work leads up to. */
const SOWINGS: readonly string[] = ['sow', 'patch-sow'];
