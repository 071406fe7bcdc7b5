/** Random rules that lint.ts accepts, over a few questions with few answers, so that every completion can be tried. */
import fc from 'fast-check';
import type { Value } from '../../src/rules/evaluate.js';
import type { Named } from '../../src/rules/lint.js';
import type { Expression } from '../../src/rules/schema.js';

/** Question to every value it can take. */
export const DOMAINS: Readonly<Record<string, readonly Value[]>> = {
  dog: [true, false],
  soil: ['sand', 'loam', 'clay'],
  moss: [0, 1, 5],
  depth: [0, 1, 2],
};

export const NAMES: ReadonlyMap<string, Named> = new Map<string, Named>([
  ['dog', { kind: 'truth' }],
  ['soil', { kind: 'word', words: ['sand', 'loam', 'clay'] }],
  ['moss', { kind: 'number' }],
  ['depth', { kind: 'number' }],
]);

export const { truth: anyTruth } = fc.letrec<{ truth: Expression; number: Expression }>((tie) => ({
  number: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom<Expression>({ var: 'moss' }, { var: 'depth' }, 0, 1, -1),
    fc
      .tuple(fc.constantFrom('+', '*', 'min', 'max'), tie('number'), tie('number'))
      .map(([op, x, y]) => ({ [op]: [x, y] })),
    fc.tuple(tie('number'), tie('number')).map(([x, y]) => ({ '-': [x, y] })),
    fc.tuple(tie('truth'), tie('number'), tie('number')).map(([test, x, y]) => ({ if: [test, x, y] })),
  ),
  truth: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom<Expression>({ var: 'dog' }, true, false),
    fc.constantFrom('sand', 'loam', 'clay').map((word) => ({ '===': [{ var: 'soil' }, word] })),
    fc
      .subarray(['sand', 'loam', 'clay'], { minLength: 1 })
      .map((words) => ({ in: [{ var: 'soil' }, words] })),
    fc
      .tuple(fc.constantFrom('<', '<=', '>', '>=', '===', '!=='), tie('number'), tie('number'))
      .map(([op, x, y]) => ({ [op]: [x, y] })),
    fc
      .tuple(fc.constantFrom('and', 'or'), fc.array(tie('truth'), { minLength: 1, maxLength: 3 }))
      .map(([op, arms]) => ({ [op]: arms })),
    tie('truth').map((inner) => ({ '!': [inner] })),
    fc.tuple(tie('truth'), tie('truth'), tie('truth')).map((arms) => ({ if: [...arms] })),
  ),
}));

export type Data = Readonly<Record<string, Value>>;

/** Data with a value for every question. */
export const anyData: fc.Arbitrary<Data> = fc.record(
  Object.fromEntries(Object.entries(DOMAINS).map(([name, values]) => [name, fc.constantFrom(...values)])),
) as fc.Arbitrary<Data>;

/** Data for some of the questions. */
export const anyPartOfData: fc.Arbitrary<Data> = fc.record(
  Object.fromEntries(Object.entries(DOMAINS).map(([name, values]) => [name, fc.constantFrom(...values)])),
  { requiredKeys: [] },
) as fc.Arbitrary<Data>;

/** Every way to answer what is still open. */
export function completionsOf(data: Data): Data[] {
  return Object.entries(DOMAINS).reduce<Data[]>(
    (built, [name, values]) =>
      Object.hasOwn(data, name)
        ? built
        : built.flatMap((each) => values.map((value) => ({ ...each, [name]: value }))),
    [data],
  );
}
