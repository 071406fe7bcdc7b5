import fc from 'fast-check';
import { LogicEngine } from 'json-logic-engine';
import { describe, expect, it } from 'vitest';
import { namesIn } from '../../src/rules/call.js';
import { evaluate } from '../../src/rules/evaluate.js';
import { lint } from '../../src/rules/lint.js';
import { anyData, anyPartOfData, anyTruth, completionsOf, NAMES } from './any-rule.js';
import { scopeOf } from './scopes.js';

describe('generated rules', () => {
  it('pass the lint, so that what follows is about rules that a pack may hold', () => {
    fc.assert(
      fc.property(anyTruth, (rule) => {
        expect(lint(rule, 'truth', '', { file: 'any', names: NAMES, nearest: () => undefined })).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });

  // json-logic-engine is a second, independent evaluator of the same language.
  it('come out with complete data as a second evaluator has them', () => {
    const engine = new LogicEngine();
    fc.assert(
      fc.property(anyTruth, anyData, (rule, data) => {
        const outcome = evaluate(rule, scopeOf(data));
        expect(outcome.known).toBe(true);
        if (outcome.known) expect(outcome.value).toBe(engine.run(rule, data));
      }),
      { numRuns: 6000 },
    );
  });

  it('once decided, stay so whatever the open answers turn out to be', () => {
    let decided = 0;
    fc.assert(
      fc.property(anyTruth, anyPartOfData, (rule, data) => {
        const outcome = evaluate(rule, scopeOf(data));
        if (!outcome.known) return;
        decided++;
        for (const whole of completionsOf(data)) {
          expect(evaluate(rule, scopeOf(whole))).toMatchObject({ known: true, value: outcome.value });
        }
      }),
      { numRuns: 3000 },
    );
    expect(decided).toBeGreaterThan(500);
  });

  it('name as open only questions that they read and that have no answer', () => {
    fc.assert(
      fc.property(anyTruth, anyPartOfData, (rule, data) => {
        const outcome = evaluate(rule, scopeOf(data));
        if (outcome.known) return;
        expect(outcome.open.length).toBeGreaterThan(0);
        for (const name of outcome.open) {
          expect(namesIn(rule)).toContain(name);
          expect(Object.hasOwn(data, name)).toBe(false);
        }
      }),
      { numRuns: 3000 },
    );
  });

  it('rest only on what they say they used: the rest may be taken away', () => {
    fc.assert(
      fc.property(anyTruth, fc.oneof(anyData, anyPartOfData), (rule, data) => {
        const outcome = evaluate(rule, scopeOf(data));
        if (!outcome.known) return;
        const cited = Object.fromEntries(
          Object.entries(data).filter(([name]) => outcome.used.includes(name)),
        );
        expect(evaluate(rule, scopeOf(cited))).toMatchObject({ known: true, value: outcome.value });
      }),
      { numRuns: 3000 },
    );
  });
});
