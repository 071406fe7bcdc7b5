/**
 * The cells of a question: the sets of answers that no condition of the pack tells apart.
 * A number splits at every threshold it is compared with, a choice into its options, yes and no into two.
 */
import { callOf } from './call.js';
import { evaluate } from './evaluate.js';
import { expressionsOf } from './expressions.js';
import type { Pack } from './pack.js';
import type { Expression, Question } from './schema.js';

const COMPARISONS = ['===', '!==', '<', '<=', '>', '>='];

/** By name, the fixed numbers that it is compared with, rising. */
export type Thresholds = ReadonlyMap<string, readonly number[]>;

export function thresholdsOf(pack: Pack): Thresholds {
  const found = new Map<string, Set<number>>();
  const note = (left: Expression, right: Expression): void => {
    const name = callOf(left)?.operator === 'var' ? String(callOf(left)?.operands[0]) : undefined;
    const limit = name === undefined ? undefined : constantOf(right, pack);
    if (name === undefined || limit === undefined) return;
    found.set(name, (found.get(name) ?? new Set()).add(limit));
  };
  const walk = (node: Expression): void => {
    const call = callOf(node);
    if (call === undefined) return;
    if (COMPARISONS.includes(call.operator)) {
      call.operands.forEach((operand, index) => {
        const next = call.operands[index + 1];
        if (next === undefined) return;
        note(operand, next);
        note(next, operand);
      });
    }
    call.operands.forEach(walk);
  };
  // A sign is told and changes no plan: its numbers part no answers.
  for (const { expression, kindOfRecord } of expressionsOf(pack))
    if (kindOfRecord !== 'sign') walk(expression);
  return new Map([...found].map(([name, limits]) => [name, [...limits].sort((a, b) => a - b)]));
}

/** The number that an expression over figures alone comes to. */
function constantOf(expression: Expression, pack: Pack): number | undefined {
  const outcome = evaluate(expression, (name) => {
    const figure = name.startsWith('figures.')
      ? pack.figureById.get(name.slice('figures.'.length))
      : undefined;
    if (figure === undefined) return { known: false, open: [name] };
    return { known: true, value: figure.typical, used: [], from: [] };
  });
  return outcome.known && typeof outcome.value === 'number' ? outcome.value : undefined;
}

/**
 * One value out of each cell of a numeric question, rising: below, at and above every threshold inside the bounds.
 */
export function numbersOf(question: Question, thresholds: readonly number[]): number[] {
  const { min = 0, max = 1 } = question.bounds ?? {};
  const limits = [...new Set([min, ...thresholds.filter((limit) => limit > min && limit < max), max])];
  return limits.flatMap((limit, index) => {
    const next = limits[index + 1];
    return next === undefined ? [limit] : [limit, (limit + next) / 2];
  });
}
