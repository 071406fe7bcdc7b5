/** Chooses the steps that apply and puts them on dates. */
import { addDays, type IsoDate } from '../base/dates.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Step } from '../rules/schema.js';
import { startOf } from './computed-facts.js';
import { isSouthern, placeOf } from './place.js';
import { type Schedule, type ScheduleWait, schedule } from './schedule.js';
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
    warmSeasonGrass: valueOf(scope, 'grassType') === 'warm-season',
    weekendsOnly: valueOf(scope, 'workDays') === 'weekends',
  };
}

export function valueOf(scope: Scope, name: string): unknown {
  const outcome = scope(name);
  return outcome.known ? outcome.value : undefined;
}

/** Dates of all active steps; inactive ones only carry the order through. */
export function scheduleSteps(pack: Pack, scope: Scope, today: IsoDate): Schedule {
  const active = new Set(activeSteps(pack, scope).map(({ id }) => id));
  const season = seasonOf(pack, scope);
  const anyDay = { nextFitDay: (date: IsoDate) => date, lastFitDay: () => undefined };
  const waits: ScheduleWait[] = pack.steps.flatMap((step) =>
    step.after.map((wait) => {
      const counts = active.has(step.id) && active.has(wait.step);
      return {
        from: wait.step,
        to: step.id,
        minDays: counts ? (daysOf(wait.minDays, scope) ?? 0) : 0,
        maxDays: counts ? daysOf(wait.maxDays, scope) : undefined,
        binds: counts,
      };
    }),
  );
  return schedule({
    startOn: startOf(valueOf(scope, 'startOn'), today),
    waits,
    steps: pack.steps.map((step) => ({
      id: step.id,
      ...(active.has(step.id) ? fitDaysOf(step, season) : anyDay),
      joinsNext: active.has(step.id) && step.joinsNext === true,
      notBefore: active.has(step.id) ? notBeforeOf(step, scope, today) : undefined,
    })),
  });
}

function notBeforeOf(step: Step, scope: Scope, today: IsoDate): IsoDate | undefined {
  const dates = (step.notBefore ?? [])
    .filter(({ when }) => holds(when, scope))
    .map(({ date, plusDays }) => {
      const outcome = evaluate(date, scope);
      const from = startOf(
        outcome.known ? outcome.value : undefined,
        startOf(valueOf(scope, 'startOn'), today),
      );
      return addDays(from, daysOf(plusDays, scope) ?? 0);
    });
  return dates.sort().at(-1);
}

/** Days from the first free day until the first seasonal step can be done; 0 when nothing waits. */
export function seasonWaitOf(
  pack: Pack,
  scope: Scope,
  placed: Schedule,
  daysFromStart: (date: IsoDate) => number,
): number {
  if (!placed.possible) return 0;
  const waiting = stepsAfter('wait-for-season', pack);
  const days = activeSteps(pack, scope)
    .filter((step) => step.window !== undefined && waiting.has(step.id) && leadsToSowing(step.id, pack))
    .map((step) => daysFromStart((placed.placed.get(step.id) as { startOn: IsoDate }).startOn));
  return days.length === 0 ? 0 : Math.max(0, Math.min(...days));
}

const leadsToSowing = (id: string, pack: Pack): boolean =>
  id === 'sow' || id === 'patch-sow' || stepsAfter(id, pack).has('sow');

/** Every step that comes after the given one, directly or over others. */
function stepsAfter(id: string, pack: Pack): Set<string> {
  const found = new Set<string>();
  const visit = (from: string): void => {
    for (const step of pack.steps) {
      if (found.has(step.id) || !step.after.some((wait) => wait.step === from)) continue;
      found.add(step.id);
      visit(step.id);
    }
  };
  visit(id);
  return found;
}
