/** No dead rules: every condition of the pack comes out both ways for some lawn. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { evaluate } from '../../src/rules/evaluate.js';
import { expressionsOf } from '../../src/rules/expressions.js';
import type { Pack } from '../../src/rules/pack.js';
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
/** Winters from mild to killing, and lawns of which no place is known. */
const winters = [2, -9, -14].map((tMinC) => ({
  ...pack,
  ownClimate: {
    from: 'invented',
    hasRange: true,
    tMinC: Array(12).fill(tMinC),
    tMaxC: [0, 2, 6, 12, 18, 22, 24, 23, 18, 12, 6, 2],
  },
}));
const placeless = (answers: Answers): Answers => ({ ...answers, place: 'unknown', plainClimate: 'south' });
const sample = fc.sample(anyFullAnswers, { numRuns: LAWNS, seed: 20260401 });
const lawns: { readonly rules: Pack; readonly answers: Answers }[] = [
  ...sample.map((answers) => ({ rules: pack, answers })),
  ...sample.slice(0, 300).map((answers) => ({ rules: pack, answers: placeless(answers) })),
  ...winters.flatMap((rules) =>
    sample.slice(0, 300).map((answers) => ({ rules, answers: { ...answers, place: 'unknown' } })),
  ),
];
for (const { rules, answers } of lawns) {
  for (const [seasonWaitDays, people] of [
    [0, 1],
    [200, 2],
    [0, 5],
  ] as const) {
    const parting = { parts: people, people, dayHours: 6, notBefore: 0 };
    const timing = { seasonWaitDays, parting };
    const scope = scopeFor({ pack: rules, answers, today, assume: 'said', timing });
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
