/** Nothing that decides a plan is left open once everything is answered, or assumed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { judgeFinding } from '../../src/diagnosis/diagnose.js';
import { openQuestions } from '../../src/interview/open-questions.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { evaluate } from '../../src/rules/evaluate.js';
import { expressionsOf } from '../../src/rules/expressions.js';
import { anyAnswers, anyToday, pack } from '../planner/any-lawn.js';

const deciding = expressionsOf(pack).filter(({ decides }) => decides);
const today = parseIsoDate('2026-04-01');
const allUnknown = Object.fromEntries(
  pack.questions.filter(({ id }) => id !== 'lawnParts').map(({ id }) => [id, 'unknown']),
);

describe('what decides a plan', () => {
  it('is there to be looked at', () => {
    expect(deciding.length).toBeGreaterThan(150);
  });

  it('is settled when every question was answered or said to be unknown', () => {
    fc.assert(
      fc.property(anyAnswers, anyToday, (answers, day) => {
        const scope = scopeFor({ pack, answers: { ...allUnknown, ...answers }, today: day, assume: 'said' });
        for (const { expression, owner } of deciding)
          expect(evaluate(expression, scope).known, owner).toBe(true);
        // Only what stands on a label or a person's purse may stay open: nothing is assumed for it.
        for (const { id, dontKnow } of openQuestions(pack, scope)) expect(dontKnow.assume, id).toBeNull();
      }),
      { numRuns: 400 },
    );
  });

  it('is settled by the assumptions alone', () => {
    const scope = scopeFor({ pack, answers: {}, today, assume: 'all' });
    for (const { expression, owner } of deciding) expect(evaluate(expression, scope).known, owner).toBe(true);
  });
});

describe('findings', () => {
  it('are told one way or the other when every question has a value', () => {
    fc.assert(
      fc.property(anyAnswers, (some) => {
        const known = Object.fromEntries(Object.entries(some).filter(([, value]) => value !== 'unknown'));
        const missing = pack.questions.filter(({ id }) => id !== 'lawnParts' && !Object.hasOwn(known, id));
        const scope = scopeFor({ pack, answers: known, today, assume: 'nothing' });
        for (const finding of pack.findings) {
          const judged = judgeFinding(finding, scope);
          if (judged.verdict !== 'cannotTell') continue;
          // Open only for a question that is really unanswered, never because it reads a dormant one.
          expect(judged.open.length, finding.id).toBeGreaterThan(0);
          for (const id of judged.open) expect(missing.map((question) => question.id)).toContain(id);
        }
      }),
      { numRuns: 400 },
    );
  });
});

describe('the pack', () => {
  it('covers the job as far as it is promised', () => {
    expect(pack.questions.length).toBeGreaterThanOrEqual(45);
    expect(pack.findings.length).toBeGreaterThanOrEqual(25);
    expect(pack.steps.length).toBeGreaterThanOrEqual(28);
    expect(pack.cautions.length).toBeGreaterThanOrEqual(30);
    expect(pack.sources.length).toBeGreaterThanOrEqual(40);
    expect(pack.figures.length).toBeGreaterThanOrEqual(120);
  });
});
