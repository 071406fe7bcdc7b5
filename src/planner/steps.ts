/** Chooses the steps that apply. */
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Step } from '../rules/schema.js';

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

/** Whether it holds or may hold: what keeps people safe goes only where an answer rules it out. */
export const isNotRuledOut = (condition: Expression, scope: Scope): boolean => {
  const outcome = evaluate(condition, scope);
  return !outcome.known || outcome.value === true;
};

/** Steps in the plan, in the trade's order; what only serves others goes with them. */
export function activeSteps(pack: Pack, scope: Scope, leftOut?: ReadonlySet<string>): Step[] {
  const chosen = pack.steps.filter((step) => leftOut?.has(step.id) !== true && holds(step.when, scope));
  const staying = new Set<string>();
  // What a step serves stands later in the list.
  for (const { id, serves } of chosen.toReversed())
    if (serves === undefined || serves.some((served) => staying.has(served))) staying.add(id);
  return chosen.filter(({ id }) => staying.has(id));
}

export function answered(scope: Scope, name: string): unknown {
  const outcome = scope(name);
  return outcome.known ? outcome.value : undefined;
}

/** A state that begins by itself, such as a wait for the season or a lawn nobody walks on: nobody "does" it. */
export const goesOnByItself = (step: Step): boolean =>
  step.lastsDays !== undefined && step.labour === undefined;
