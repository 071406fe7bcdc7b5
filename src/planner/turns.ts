/** To what an open answer is turned, to see whether the plan would still be the same. */
import { addDays, type IsoDate } from '../base/dates.js';
import { clean } from '../base/quantity/show.js';
import type { AnswerValue } from '../interview/answers.js';
import { numbersOf, type Thresholds } from '../rules/cells.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Question } from '../rules/schema.js';
import { isNumeric, triesFor } from './reach.js';

export interface TurnRoom {
  readonly thresholds: Thresholds;
  readonly today: IsoDate;
  /** What tells whether two neighbouring numbers lie in one band: where it differs, both are tried. */
  readonly bandOf: (value: AnswerValue) => unknown;
}

/** Every option, both truths, a number out of every band, or what the rules name in place of a day or a place. */
export function turnsOf(question: Question, { thresholds, today, bandOf }: TurnRoom): AnswerValue[] {
  const { orElse } = question.dontKnow;
  if (orElse !== undefined)
    return orElse.map((value) => (typeof value === 'number' ? addDays(today, value) : value));
  if (!isNumeric(question)) return [...triesFor(question, thresholds)];
  const { min = 0, max = 1, oddAbove = max } = question.bounds ?? {};
  const cells = numbersOf(question, thresholds.get(question.id) ?? []).filter((value) => value <= oddAbove);
  const tries = triesFor(question, thresholds).filter((value) => Number(value) <= oddAbove);
  const bands = tries.map((value) => bandOf(value));
  const edges = tries.filter(
    (_, index) =>
      (index > 0 && bands[index] !== bands[index - 1]) ||
      (index + 1 < tries.length && bands[index] !== bands[index + 1]),
  );
  return [...new Set([min, ...cells, ...(edges as number[]), oddAbove])].sort((a, b) => a - b);
}

/** A number that was judged by eye, as far up and down as it may be out; nothing where it stands as answered. */
export function nearbyOf(question: Question, value: AnswerValue | undefined, scope: Scope): AnswerValue[] {
  if (question.readWithin === undefined || typeof value !== 'number') return [];
  const within = evaluate(question.readWithin, scope);
  if (!within.known || typeof within.value !== 'number') return [];
  const { min = 0, max = 1 } = question.bounds ?? {};
  return [value - within.value, value + within.value]
    .map((near) => clean(Math.min(max, Math.max(min, near))))
    .filter((near) => near !== value);
}
