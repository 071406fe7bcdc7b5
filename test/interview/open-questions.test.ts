/** Only what can still change the plan is asked, and nothing that can is left out: by brute force over made-up lawns. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { openSession } from '../../src/interview/session.js';
import { ASKED_BY_PROGRAM } from '../../src/planner/asked-by-program.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { numbersOf, thresholdsOf } from '../../src/rules/cells.js';
import type { Question } from '../../src/rules/schema.js';
import { times } from '../depth.js';
import { anyLawn, anyToday, pack } from '../planner/any-lawn.js';

const LAWNS = times(60, 300);
/** A plan takes milliseconds, and these take a plan for every cell of every question. */
const PERTURBED = 8;
const CHANGED_ALTOGETHER = 80;
const thresholds = thresholdsOf(pack);

interface Sitting {
  readonly answers: Answers;
  readonly asked: readonly string[];
  /** What was said each time about how many may follow. */
  readonly bounds: readonly number[];
}

/** Answers every question out of the lawn until none is left. */
function sit(lawn: Answers, today: Plan['madeOn']): Sitting {
  const session = openSession({
    pack,
    answers: {},
    scopeOf: (answers) => scopeFor({ pack, answers, today, assume: 'said', timing: 'open' }),
    alsoAsk: ASKED_BY_PROGRAM,
  });
  const asked: string[] = [];
  const bounds: number[] = [];
  for (let next = session.next(); next !== undefined; next = session.next()) {
    asked.push(next.question.id);
    bounds.push(next.mayFollow);
    session.answer(next.question.id, lawn[next.question.id] as AnswerValue);
  }
  return { answers: session.answers(), asked, bounds };
}

/**
 * What a plan has one do, buy, expect and beware of: not the words that repeat the answers, and not what the weather
 * is likely to be, which is said where it is known and which nobody is asked for.
 */
function toDo(answers: Answers, today: Plan['madeOn']): string {
  const plan = assemblePlan({ pack, answers, today, assumeAll: false });
  const { verdict, steps, watering, outlook, shopping, cautions, notDone } = plan;
  return JSON.stringify({
    verdict: [verdict.id, verdict.because],
    steps: steps.map(({ because: _, dayChecks, ...step }) => ({
      ...step,
      dayChecks: dayChecks.map(({ expect: _, ...check }) => check),
    })),
    watering,
    outlook,
    shopping,
    cautions,
    notDone,
  });
}

/** One answer out of every cell, and what stands for not knowing. */
function cellsOf(question: Question): AnswerValue[] {
  switch (question.kind) {
    case 'yes-no':
      return [true, false, 'unknown'];
    case 'choice':
      return [...(question.options ?? []).map(({ value }) => value), 'unknown'];
    case 'date':
      return ['2025-01-01', 'unknown'];
    case 'text':
    case 'place':
    case 'parts':
      return [];
    default:
      return [...numbersOf(question, thresholds.get(question.id) ?? []), 'unknown'];
  }
}

const lawns = fc.sample(fc.tuple(anyLawn, anyToday), { numRuns: LAWNS, seed: 4 });
const sittings = lawns.map(([lawn, today]) => ({ today, ...sit(lawn, today) }));

describe('a question that was never asked', () => {
  const unasked = (asked: readonly string[]): Question[] =>
    pack.questions.filter(({ id, optional }) => !asked.includes(id) && optional !== true);

  it('would not have changed the plan, whatever the answer', () => {
    let tried = 0;
    for (const { answers, asked, today } of sittings.slice(0, PERTURBED)) {
      const before = toDo(answers, today);
      for (const question of unasked(asked)) {
        for (const value of cellsOf(question)) {
          tried++;
          expect(toDo({ ...answers, [question.id]: value }, today), `${question.id} ${value}`).toBe(before);
        }
      }
    }
    expect(tried).toBeGreaterThan(PERTURBED * 30);
  });

  it('would not have changed it together with all the others either', () => {
    for (const [index, { answers, asked, today }] of sittings.slice(0, CHANGED_ALTOGETHER).entries()) {
      const [other] = lawns[(index + 1) % lawns.length] as (typeof lawns)[number];
      const rest = Object.fromEntries(unasked(asked).map(({ id }) => [id, other[id] as AnswerValue]));
      expect(toDo({ ...rest, ...answers }, today)).toBe(toDo(answers, today));
    }
  });
});

describe('the number of questions that may follow', () => {
  it('is never less than the number that does', () => {
    for (const { asked, bounds } of sittings)
      bounds.forEach((bound, index) => {
        expect(bound, `after ${asked[index]}`).toBeGreaterThanOrEqual(asked.length - 1 - index);
      });
  });

  it('only falls, so that it can be trusted', () => {
    for (const { bounds } of sittings)
      bounds.slice(1).forEach((bound, index) => {
        expect(bound).toBeLessThan(bounds[index] as number);
      });
  });
});

describe('the questions asked', () => {
  it('are about half of all there are, and never as many', () => {
    const counts = sittings.map(({ asked }) => asked.length);
    const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
    // The README states the mean and the worst.
    expect(mean).toBeLessThan(pack.questions.length * 0.55);
    expect(Math.max(...counts)).toBeLessThan(pack.questions.length * 0.8);
  });

  it('stand section by section; back goes only what had to wait for a later answer', () => {
    const order = pack.sections.map(({ id }) => id);
    for (const { asked } of sittings) {
      const at = (id: string): number => order.indexOf(pack.questionById.get(id)?.section ?? '');
      const straight = asked.filter((id) => pack.questionById.get(id)?.askWhen === undefined);
      expect(straight.map(at)).toEqual(straight.map(at).sort((a, b) => a - b));
    }
  });

  it('begin with safety', () => {
    const isSafety = (id: string): boolean => pack.questionById.get(id)?.safety === true;
    for (const { asked } of sittings) {
      const first = asked.findIndex((id) => !isSafety(id));
      expect(asked.slice(first).filter(isSafety)).toEqual([]);
    }
  });
});
