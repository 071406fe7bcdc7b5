/** No dead rules: every condition of the pack comes out both ways for some lawn. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { evaluate } from '../../src/rules/evaluate.js';
import { expressionsOf } from '../../src/rules/expressions.js';
import { pack } from '../planner/any-lawn.js';
import { anyFullAnswers } from './full-answers.js';

const LAWNS = 3000;
const today = parseIsoDate('2026-04-01');

const conditions = expressionsOf(pack)
  // What must hold of answers holds of every lawn that can be planned; its other side is tested by itself.
  .filter(
    ({ wanted, expression, kindOfRecord }) =>
      wanted === 'truth' && typeof expression !== 'boolean' && kindOfRecord !== 'together',
  )
  .map((placed) => ({ ...placed, name: `${placed.owner}${placed.pointer}` }));
const seen = new Map<string, Set<unknown>>(conditions.map(({ name }) => [name, new Set()]));
for (const answers of fc.sample(anyFullAnswers, { numRuns: LAWNS, seed: 20260401 })) {
  for (const [seasonWaitDays, people] of [
    [0, 1],
    [200, 2],
    [0, 5],
  ] as const) {
    const parting = { parts: people, people, dayHours: 6, notBefore: 0 };
    const timing = { seasonWaitDays, parting };
    const scope = scopeFor({ pack, answers, today, assume: 'said', timing });
    for (const { name, expression } of conditions) {
      const outcome = evaluate(expression, scope);
      seen.get(name)?.add(outcome.known ? outcome.value : 'open');
    }
  }
}

describe('no rule is dead', () => {
  it.each(conditions.map(({ name }) => name))('%s is true for some lawn and false for another', (name) => {
    expect([...(seen.get(name) ?? [])].sort()).toEqual([false, true]);
  });
});
