/** Lawns whose owner answered everything, or said "don't know" to it: nothing is left in the air, and nothing is made bolder. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { diagnose } from '../../src/diagnosis/diagnose.js';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { openQuestions } from '../../src/interview/open-questions.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { evaluate, type Scope } from '../../src/rules/evaluate.js';
import { expressionsOf } from '../../src/rules/expressions.js';
import { isAsked } from '../../src/rules/scope.js';
import { pack } from '../planner/any-lawn.js';
import { anyFullAnswers } from './full-answers.js';

const today = parseIsoDate('2026-04-01');
const scopeOf = (answers: Answers, assume: 'nothing' | 'said' = 'nothing'): Scope =>
  scopeFor({ pack, answers, today, assume });
const isTrue = (outcome: ReturnType<Scope>): boolean => outcome.known && outcome.value === true;

const conditions = expressionsOf(pack).filter(({ wanted }) => wanted === 'truth');

describe('a lawn about which everything was answered', () => {
  it('really has an answer to every question that is asked', () => {
    fc.assert(
      fc.property(anyFullAnswers, (answers) => {
        const scope = scopeOf(answers);
        const missing = pack.questions.filter(
          (question) => isAsked(question, scope) !== false && !Object.hasOwn(answers, question.id),
        );
        expect(missing.map(({ id }) => id)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('leaves no finding untold, no fact and no condition open, and no question to ask', () => {
    fc.assert(
      fc.property(anyFullAnswers, (answers) => {
        const scope = scopeOf(answers);
        for (const { finding, verdict } of diagnose(pack, scope))
          expect(verdict, finding.id).not.toBe('cannotTell');
        const isWinterKnown = isTrue(scope('facts.winterKnown'));
        for (const fact of pack.facts)
          expect(scope(`facts.${fact.id}`).known, fact.id).toBe(fact.id !== 'coldestMonthC' || isWinterKnown);
        for (const { expression, owner, pointer } of conditions)
          expect(evaluate(expression, scope).known, owner + pointer).toBe(true);
        expect(openQuestions(pack, scope)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  // The interview rests on this: an answer to a dormant question must not come back through its assumption.
  it('finds nothing on the strength of a question that was not asked', () => {
    fc.assert(
      fc.property(anyFullAnswers, (answers) => {
        const scope = scopeOf(answers);
        for (const finding of pack.findings) {
          const outcome = evaluate(finding.when, scope);
          if (!outcome.known || outcome.value !== true) continue;
          for (const name of outcome.used.filter((used) => !used.startsWith('figures.')))
            expect(Object.hasOwn(answers, name), `${finding.id} rests on ${name}`).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('a lawn about which nothing is known', () => {
  it('leaves nothing open that decides', () => {
    const unknown = Object.fromEntries(pack.questions.map(({ id }) => [id, 'unknown'])) as Answers;
    const scope = scopeOf(unknown, 'said');
    for (const { expression, owner, pointer } of expressionsOf(pack).filter(({ decides }) => decides))
      expect(evaluate(expression, scope).known, owner + pointer).toBe(true);
    for (const { finding, verdict } of diagnose(pack, scope))
      expect(verdict, finding.id).not.toBe('cannotTell');
  });

  // Not knowing is no reason to tear a lawn open, to spray it or to start an engine.
  it('is left standing: no seedbed, no product, no machine', () => {
    const unknown = Object.fromEntries(pack.questions.map(({ id }) => [id, 'unknown'])) as Answers;
    const scope = scopeOf(unknown, 'said');
    const steps = pack.steps.filter(({ when }) => isTrue(evaluate(when, scope))).map(({ id }) => id);
    for (const bold of [
      'treat-moss',
      'scarify',
      'core',
      'fork',
      'dig-over',
      'clear-old-turf',
      'low-cut',
      'lime',
    ])
      expect(steps).not.toContain(bold);
    expect(scope('scarifier')).toMatchObject({ value: 'rake' });
    expect(scope('mossTreatment')).toMatchObject({ value: 'rake-only' });
  });
});

describe('not knowing whom the work could hurt', () => {
  const values: Readonly<Record<string, readonly AnswerValue[]>> = {
    dog: [true, false],
    children: [true, false],
    pavingBeside: [true, false],
    treesNear: [true, false],
    waterWithinM: [0, 2, 50],
    wateringBan: [true, false],
    slopeDeg: [0, 10, 16, 30],
  };

  it.each(Object.entries(values))('%s: no caution is lost by "don\'t know"', (id, all) => {
    fc.assert(
      fc.property(anyFullAnswers, (answers) => {
        const cautionsWith = (value: AnswerValue): string[] => {
          const scope = scopeOf({ ...answers, [id]: value } as Answers, 'said');
          return pack.cautions
            .filter(({ when }) => isTrue(evaluate(when, scope)))
            .map((caution) => caution.id);
        };
        const unknown = cautionsWith('unknown');
        for (const value of all) expect(unknown).toEqual(expect.arrayContaining(cautionsWith(value)));
      }),
      { numRuns: 150 },
    );
  });

  it('buried services: no digging machine is brought in on "don\'t know" that a known cable would forbid', () => {
    fc.assert(
      fc.property(anyFullAnswers, (answers) => {
        const stepsWith = (value: AnswerValue): string[] => {
          const scope = scopeOf({ ...answers, buriedServices: value } as Answers, 'said');
          return pack.steps.filter(({ when }) => isTrue(evaluate(when, scope))).map((step) => step.id);
        };
        expect(stepsWith('unknown')).toEqual(stepsWith('marked'));
      }),
      { numRuns: 150 },
    );
  });
});
