import fc from 'fast-check';
import { LogicEngine } from 'json-logic-engine';
import { describe, expect, it } from 'vitest';
import { evaluate, RuleFault } from '../../src/rules/evaluate.js';
import { lint } from '../../src/rules/lint.js';
import { type Expression, expression } from '../../src/rules/schema.js';
import { anyExpression } from './any-expression.js';
import { anyData, NAMES } from './any-rule.js';
import { scopeOf } from './scopes.js';

const problemsOf = (rule: Expression) =>
  lint(rule, 'truth', '', { file: 'any', names: NAMES, nearest: () => undefined });
const isDivisionByZero = (error: unknown): boolean =>
  error instanceof RuleFault && error.message.startsWith('"/"');

describe('an expression of any shape that the lint lets pass', () => {
  it('is worked out without a fault, but for a division by zero, and as a second evaluator has it', () => {
    const engine = new LogicEngine();
    let passed = 0;
    fc.assert(
      fc.property(anyExpression, anyData, (rule, data) => {
        if (problemsOf(rule).length > 0) return;
        if (typeof rule === 'object') passed++;
        try {
          const outcome = evaluate(rule, scopeOf(data));
          expect(outcome.known && outcome.value).toBe(engine.run(rule, data));
        } catch (error) {
          if (!isDivisionByZero(error)) throw error;
        }
      }),
      { numRuns: 60000 },
    );
    expect(passed).toBeGreaterThan(300);
  });

  it('never makes the lint itself fail', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (json) => {
        const read = expression.safeParse(json);
        if (read.success) expect(() => problemsOf(read.data)).not.toThrow();
      }),
      { numRuns: 2000 },
    );
  });
});
