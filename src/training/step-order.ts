/** The order of steps: every order that keeps the plan's own waits is a good one. */
import type { Plan } from '../planner/plan.js';
import { namedStep } from './described.js';
import type { Named } from './looks.js';
import type { WorkedCase } from './worked-case.js';

/** Pairs [first, then] of these steps that the plan binds, directly or through steps between them. */
export function boundPairs(plan: Plan, steps: readonly string[]): [string, string][] {
  const afterOf = new Map(plan.steps.map(({ id, after }) => [id, after.map(({ step }) => step)]));
  const before = (id: string, seen: Set<string>): Set<string> => {
    for (const earlier of afterOf.get(id) ?? []) {
      if (seen.has(earlier)) continue;
      seen.add(earlier);
      before(earlier, seen);
    }
    return seen;
  };
  return steps.flatMap((then) => {
    const behind = before(then, new Set());
    return steps
      .filter((first) => first !== then && behind.has(first))
      .map((first): [string, string] => [first, then]);
  });
}

/** The pairs that are the wrong way round in `order`; steps that are not in it break nothing. */
export function brokenPairs(plan: Plan, order: readonly string[]): [string, string][] {
  return boundPairs(plan, order).filter(([first, then]) => order.indexOf(first) > order.indexOf(then));
}

/** The steps to choose from: the key ones and the mistaken ones, by their titles, so that the list tells nothing. */
export function offeredSteps({ lesson, pack }: WorkedCase): Named[] {
  const { expected, dangers, wrongTurns } = lesson;
  const ids = new Set([
    ...expected.steps,
    ...expected.notSteps,
    ...dangers.flatMap(({ neverSteps = [] }) => neverSteps),
    ...wrongTurns.flatMap(({ step }) => (step === undefined ? [] : [step])),
  ]);
  return [...ids]
    .flatMap((id) => pack.stepById.get(id) ?? [])
    .map(namedStep)
    .sort((a, b) => (a.label < b.label ? -1 : 1));
}
