/** How far an answer could differ and still do the same: the options or the stretch of numbers around it. */
import type { AnswerValue } from '../interview/answers.js';
import { numbersOf, type Thresholds } from '../rules/cells.js';
import type { Question } from '../rules/schema.js';

/** A stretch of numbers; an end that is left out runs to the end of what can be answered. */
export interface Stretch {
  readonly from?: End;
  readonly to?: End;
}

/** `isWithin`: the number itself belongs to the stretch. */
export interface End {
  readonly value: number;
  readonly isWithin: boolean;
}

const NUMERIC = ['number', 'fraction', 'days-ago', 'area'];
/** Evenly spread tries beside the thresholds, since a sum of several answers may turn anywhere. */
const TRIES = 4 * 10;
/** Halvings to find the number at which the outcome turns. */
const HALVINGS = 4 * 10;

export const isNumeric = ({ kind }: Question): boolean => NUMERIC.includes(kind);

/** Answers to try: every option, or numbers below, at, between and above all thresholds. */
export function triesFor(question: Question, thresholds: Thresholds): readonly AnswerValue[] {
  if (question.kind === 'yes-no') return [true, false];
  if (question.kind === 'choice') return (question.options ?? []).map(({ value }) => value);
  if (!isNumeric(question)) return [];
  const { min = 0, max = 1, oddAbove = max } = question.bounds ?? {};
  const even = Array.from({ length: TRIES + 1 }, (_, index) => min + ((oddAbove - min) * index) / TRIES);
  const all = [...numbersOf(question, thresholds.get(question.id) ?? []), ...even];
  return [...new Set(all)].sort((a, b) => a - b);
}

/** The stretch around `middle`, which holds, over which it goes on holding. */
export function stretchAround(
  question: Question,
  middle: number,
  { holds, thresholds }: { readonly holds: (value: number) => boolean; readonly thresholds: Thresholds },
): Stretch {
  const tries = triesFor(question, thresholds) as readonly number[];
  const ending = (onwards: readonly number[]): End | undefined => {
    let last = middle;
    for (const value of onwards) {
      if (!holds(value)) return turningPoint(last, value, holds);
      last = value;
    }
    return undefined;
  };
  const from = ending(tries.filter((value) => value < middle).reverse());
  const to = ending(tries.filter((value) => value > middle));
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

/** Where holding turns into not holding, as the round number nearest to it. */
function turningPoint(inside: number, outside: number, holds: (value: number) => boolean): End {
  let [kept, lost] = [inside, outside];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const between = (kept + lost) / 2;
    if (holds(between)) kept = between;
    else lost = between;
  }
  const value = Number(kept.toPrecision(3));
  return { value, isWithin: holds(value) };
}
