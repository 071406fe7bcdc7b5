/** Decision diagrams against brute force: a name stands in one exactly when some answer to it changes the outcome. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thresholdsOf } from '../../src/rules/cells.js';
import { openDiagramStore, TooManyCells } from '../../src/rules/diagram.js';
import { evaluate, type Scope, type Value } from '../../src/rules/evaluate.js';
import type { Expression } from '../../src/rules/schema.js';
import { openUnfolding, supportOf, unfolder } from '../../src/rules/unfold.js';
import { question, tinyPack } from './tiny-pack.js';

const VALUES: Readonly<Record<string, readonly Value[]>> = {
  dog: [true, false],
  paving: [true, false],
  texture: ['sand', 'loam', 'clay'],
  // Below, at, between, at and above the two limits that the expressions use.
  depth: [0, 10, 15, 20, 30],
};
const questions = [
  question('dog', { dontKnow: { assume: true, effect: '' } }),
  question('paving', { dontKnow: { assume: true, effect: '' } }),
  question('texture', {
    kind: 'choice',
    options: ['sand', 'loam', 'clay'].map((value) => ({ value, label: value })),
    dontKnow: { assume: 'loam', effect: '' },
  }),
  question('depth', {
    kind: 'number',
    bounds: { min: 0, max: 30, says: '' },
    dontKnow: { assume: 0, effect: '' },
  }),
];

const name = (id: string): Expression => ({ var: id });
const { expression } = fc.letrec<{ expression: Expression }>((tie) => ({
  expression: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom(name('dog'), name('paving')),
    fc.constantFrom('sand', 'loam', 'clay').map((word) => ({ '===': [name('texture'), word] })),
    fc
      .tuple(fc.constantFrom('<', '<=', '>', '>=', '===', '!=='), fc.constantFrom(10, 20))
      .map(([operator, limit]) => ({ [operator]: [name('depth'), limit] })),
    fc.constant({ in: [name('texture'), ['sand', 'clay']] }),
    tie('expression').map((inner) => ({ '!': [inner] })),
    fc
      .tuple(fc.constantFrom('and', 'or'), tie('expression'), tie('expression'))
      .map(([operator, left, right]) => ({ [operator]: [left, right] })),
    fc.tuple(tie('expression'), tie('expression'), tie('expression')).map((parts) => ({ if: parts })),
  ),
}));

const packOf = (value: Expression) =>
  tinyPack({ questions, facts: [{ id: 'it', what: 'it', kind: 'truth', value }] });
const scopeOf =
  (answers: Readonly<Record<string, Value>>): Scope =>
  (id) =>
    Object.hasOwn(answers, id)
      ? { known: true, value: answers[id] as Value, used: [], from: [] }
      : { known: false, open: [id] };

const combinations = Object.entries(VALUES).reduce<Record<string, Value>[]>(
  (built, [id, values]) => built.flatMap((each) => values.map((value) => ({ ...each, [id]: value }))),
  [{}],
);

/** Names for which two full sets of answers, alike but for them, give different outcomes. */
function dependedOn(value: Expression, given: Readonly<Record<string, Value>>): string[] {
  const outcomeOf = (answers: Readonly<Record<string, Value>>): unknown => {
    const outcome = evaluate(value, scopeOf({ ...answers, ...given }));
    return outcome.known && outcome.value;
  };
  return Object.entries(VALUES)
    .filter(([id]) => !Object.hasOwn(given, id))
    .filter(([id, values]) =>
      combinations.some((answers) =>
        values.some((other) => outcomeOf(answers) !== outcomeOf({ ...answers, [id]: other })),
      ),
    )
    .map(([id]) => id);
}

function unfolded(value: Expression, given: Readonly<Record<string, Value>>): string[] {
  const pack = packOf(value);
  const unfolding = openUnfolding(pack, thresholdsOf(pack), 10_000);
  return [...supportOf(unfolder(unfolding, scopeOf(given))(value), unfolding)].sort();
}

describe('the diagram of a condition', () => {
  it('holds a question exactly when the outcome depends on it', () => {
    const someAnswers = fc.record(
      { dog: fc.boolean(), texture: fc.constantFrom('sand', 'clay'), depth: fc.constantFrom(5, 10, 25) },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(expression, someAnswers, (value, given) => {
        expect(unfolded(value, given)).toEqual(dependedOn(value, given).sort());
      }),
      { numRuns: 1000 },
    );
  });

  it('sees that a thing or its contrary always holds, where three values alone cannot', () => {
    const either = { or: [name('dog'), { '!': [name('dog')] }] };
    expect(evaluate(either, scopeOf({}))).toEqual({ known: false, open: ['dog'] });
    expect(unfolded(either, {})).toEqual([]);
  });

  it('settles a sum by its bounds, and keeps all its questions where the bounds leave it open', () => {
    const sumAbove = (limit: number): Expression => ({ '>=': [{ '+': [name('depth'), 5] }, limit] });
    expect(unfolded(sumAbove(5), {})).toEqual([]);
    expect(unfolded(sumAbove(40), {})).toEqual([]);
    expect(unfolded(sumAbove(20), {})).toEqual(['depth']);
  });
});

describe('the store of diagrams', () => {
  it('gives up at its limit and says so', () => {
    const store = openDiagramStore(2);
    const leaf = (value: number) => store.leaf({ kind: 'value', key: `${value}`, value });
    leaf(1);
    leaf(2);
    expect(leaf(1)).toBe(leaf(1));
    expect(() => leaf(3)).toThrow(TooManyCells);
  });
});
