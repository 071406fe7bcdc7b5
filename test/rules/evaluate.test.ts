import { describe, expect, it } from 'vitest';
import { evaluate, RuleFault, type Scope } from '../../src/rules/evaluate.js';
import type { Expression } from '../../src/rules/schema.js';
import { known, scopeOf } from './scopes.js';

type Truth = true | false | undefined;
const TRUTHS: readonly Truth[] = [true, false, undefined];

/** Strong Kleene, written down here as its truth tables say; the code under test is not asked. */
const AND: Readonly<Record<string, Truth>> = {
  'true true': true,
  'true false': false,
  'true undefined': undefined,
  'false true': false,
  'false false': false,
  'false undefined': false,
  'undefined true': undefined,
  'undefined false': false,
  'undefined undefined': undefined,
};
const OR: Readonly<Record<string, Truth>> = {
  'true true': true,
  'true false': true,
  'true undefined': true,
  'false true': true,
  'false false': false,
  'false undefined': undefined,
  'undefined true': true,
  'undefined false': undefined,
  'undefined undefined': undefined,
};
const NOT: Readonly<Record<string, Truth>> = { true: false, false: true, undefined: undefined };

const given = (values: Readonly<Record<string, Truth>>): Scope =>
  scopeOf(
    Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Record<
      string,
      boolean
    >,
  );
const outcomeOf = (expression: Expression, scope: Scope): Truth => {
  const outcome = evaluate(expression, scope);
  return outcome.known ? (outcome.value as boolean) : undefined;
};
const a: Expression = { var: 'a' };
const b: Expression = { var: 'b' };
const c: Expression = { var: 'c' };
const pairs = TRUTHS.flatMap((left) => TRUTHS.map((right) => [left, right] as const));
const triples = pairs.flatMap(([left, right]) => TRUTHS.map((third) => [left, right, third] as const));

describe('strong Kleene truth tables', () => {
  it.each(pairs)('%s and %s', (left, right) => {
    expect(outcomeOf({ and: [a, b] }, given({ a: left, b: right }))).toBe(AND[`${left} ${right}`]);
  });

  it.each(pairs)('%s or %s', (left, right) => {
    expect(outcomeOf({ or: [a, b] }, given({ a: left, b: right }))).toBe(OR[`${left} ${right}`]);
  });

  it.each(TRUTHS)('not %s', (value) => {
    expect(outcomeOf({ '!': [a] }, given({ a: value }))).toBe(NOT[`${value}`]);
  });

  it.each(triples)('%s and %s and %s is the two-armed table twice', (left, right, third) => {
    expect(outcomeOf({ and: [a, b, c] }, given({ a: left, b: right, c: third }))).toBe(
      AND[`${AND[`${left} ${right}`]} ${third}`],
    );
  });

  it.each(triples)('%s or %s or %s is the two-armed table twice', (left, right, third) => {
    expect(outcomeOf({ or: [a, b, c] }, given({ a: left, b: right, c: third }))).toBe(
      OR[`${OR[`${left} ${right}`]} ${third}`],
    );
  });

  it.each(triples)('if %s then %s else %s', (test, then, otherwise) => {
    const wanted = test === true ? then : test === false ? otherwise : then === otherwise ? then : undefined;
    expect(outcomeOf({ if: [a, b, c] }, given({ a: test, b: then, c: otherwise }))).toBe(wanted);
  });

  it('takes a chain of if as one if inside another', () => {
    const chain: Expression = { if: [a, 'one', b, 'two', 'three'] };
    expect(evaluate(chain, given({ a: false, b: true }))).toMatchObject({ value: 'two' });
    expect(evaluate(chain, given({ a: false, b: false }))).toMatchObject({ value: 'three' });
    expect(evaluate(chain, given({ a: false }))).toEqual({ known: false, open: ['b'] });
    expect(evaluate({ if: [a, 'x', b, 'x', 'x'] }, given({}))).toMatchObject({ known: true, value: 'x' });
  });
});

describe('operators with numbers and words', () => {
  it.each<[string, readonly [number, number], boolean]>([
    ['<', [1, 2], true],
    ['<', [2, 2], false],
    ['<=', [2, 2], true],
    ['<=', [3, 2], false],
    ['>', [3, 2], true],
    ['>', [2, 2], false],
    ['>=', [2, 2], true],
    ['>=', [1, 2], false],
    ['===', [2, 2], true],
    ['===', [2, 3], false],
    ['!==', [2, 3], true],
    ['!==', [2, 2], false],
  ])('%s of %j is %s, and open while one side is', (operator, [left, right], wanted) => {
    const rule = { [operator]: [{ var: 'x' }, { var: 'y' }] };
    expect(evaluate(rule, scopeOf({ x: left, y: right }))).toMatchObject({ known: true, value: wanted });
    expect(evaluate(rule, scopeOf({ x: left }))).toEqual({ known: false, open: ['y'] });
    expect(evaluate(rule, scopeOf({}))).toEqual({ known: false, open: ['x', 'y'] });
  });

  it('takes < and <= with three operands as "between"', () => {
    const between: Expression = { '<=': [0, { var: 'x' }, 10] };
    expect(evaluate(between, scopeOf({ x: 10 }))).toMatchObject({ value: true });
    expect(evaluate(between, scopeOf({ x: 11 }))).toMatchObject({ value: false });
  });

  it.each<[string, readonly number[], number]>([
    ['+', [1, 2, 3], 6],
    ['-', [5, 2], 3],
    ['-', [5], -5],
    ['*', [2, 3, 4], 24],
    ['/', [6, 4], 1.5],
    ['min', [3, 1, 2], 1],
    ['max', [3, 1, 2], 3],
  ])('%s of %j is %s', (operator, operands, wanted) => {
    expect(evaluate({ [operator]: [...operands] }, scopeOf({}))).toMatchObject({
      known: true,
      value: wanted,
    });
    expect(evaluate({ [operator]: [...operands.slice(1), { var: 'x' }] }, scopeOf({}))).toEqual({
      known: false,
      open: ['x'],
    });
  });

  it('finds a word only as a whole member of a list', () => {
    const rule: Expression = { in: [{ var: 'x' }, ['clay', 'clay-loam']] };
    expect(evaluate(rule, scopeOf({ x: 'clay' }))).toMatchObject({ value: true });
    expect(evaluate(rule, scopeOf({ x: 'cl' }))).toMatchObject({ value: false });
    expect(evaluate(rule, scopeOf({}))).toEqual({ known: false, open: ['x'] });
  });
});

describe('what a value rests on', () => {
  it('is the arm that settled it, not the others', () => {
    expect(evaluate({ and: [a, b] }, given({ a: true, b: false }))).toMatchObject({
      value: false,
      used: ['b'],
    });
    expect(evaluate({ or: [a, b] }, given({ a: false, b: true }))).toMatchObject({
      value: true,
      used: ['b'],
    });
    expect(evaluate({ and: [a, b] }, given({ a: true, b: true }))).toMatchObject({ used: ['a', 'b'] });
  });

  it('counts the test of an if as used, and computes from the branch alone', () => {
    const rule: Expression = { if: [a, { var: 'x' }, { var: 'y' }] };
    const scope = scopeOf({ a: true, x: 2, y: 3 });
    expect(evaluate(rule, scope)).toMatchObject({ value: 2, used: ['a', 'x'], from: ['x'] });
  });

  it('names every open question that could settle it, each once', () => {
    expect(evaluate({ and: [a, { or: [b, a] }] }, given({}))).toEqual({ known: false, open: ['a', 'b'] });
  });
});

describe('spreads', () => {
  const spread: Scope = (name) =>
    name === 'rate'
      ? { ...known(30, ['rate']), least: 20, most: 44 }
      : { ...known(100, ['area']), least: 90, most: 110 };

  it.each<[Expression, number, number, number]>([
    [{ '*': [{ var: 'area' }, { var: 'rate' }] }, 3000, 1800, 4840],
    [{ '+': [{ var: 'area' }, { var: 'rate' }] }, 130, 110, 154],
    [{ '-': [{ var: 'area' }, { var: 'rate' }] }, 70, 46, 90],
    [{ '/': [{ var: 'area' }, { var: 'rate' }] }, 100 / 30, 90 / 44, 110 / 20],
    [{ min: [{ var: 'area' }, { var: 'rate' }] }, 30, 20, 44],
  ])('%j is worked out at its corners', (rule, value, least, most) => {
    expect(evaluate(rule, spread)).toMatchObject({ value, least, most });
  });

  it('are not looked at by a comparison', () => {
    expect(evaluate({ '>': [{ var: 'rate' }, 29] }, spread)).toMatchObject({ value: true });
    expect(evaluate({ '>': [{ var: 'rate' }, 30] }, spread)).toMatchObject({ value: false });
  });

  it('pass through the branch that an if takes', () => {
    expect(evaluate({ if: [true, { var: 'rate' }, 0] }, spread)).toMatchObject({
      value: 30,
      least: 20,
      most: 44,
    });
  });
});

describe('traps of JSON Logic that are closed', () => {
  const faults = (expression: unknown, values = {}): void => {
    expect(() => evaluate(expression as Expression, scopeOf(values))).toThrow(RuleFault);
  };

  it('never takes a missing answer for 0', () => {
    for (const rule of [
      { '<': [{ var: 'x' }, 4] },
      { '<=': [{ var: 'x' }, 0] },
      { '>=': [{ var: 'x' }, 0] },
    ]) {
      expect(evaluate(rule, scopeOf({}))).toEqual({ known: false, open: ['x'] });
    }
  });

  it('never compares text with a number', () => {
    faults({ '>': [{ var: 'x' }, 4] }, { x: '12' });
    faults({ '===': [{ var: 'x' }, 0] }, { x: '' });
  });

  it.each([
    ['a loose comparison', { '==': [1, 1] }],
    ['a misspelt operator', { tyop: [1] }],
    ['a list walker', { some: [[1], true] }],
    ['missing', { missing: ['a'] }],
    ['log', { log: ['a'] }],
    ['two operators in one object', { '<': [1, 2], '>': [1, 2] }],
    ['an object without a key', {}],
    ['a list where a value is due', [1, 2]],
    ['text in "in"', { in: ['ill', 'hillside'] }],
    ['a word in and', { and: [1, 'a'] }],
    ['a word as a test', { if: ['a', 1, 2] }],
    ['a truth in a sum', { '+': [true, 1] }],
    ['a division by zero', { '/': [1, 0] }],
    ['zero by zero', { '/': [0, 0] }],
    ['a sum beyond all numbers', { '*': [1e308, 1e308] }],
    ['the prototype as an operator', { constructor: [1] }],
    ['toString as an operator', { toString: [] }],
    ['a dotted path as an operator', { 'cat.constructor': ['a'] }],
  ])('refuses %s', (_, expression) => faults(expression));

  it('hides no misspelt operator behind an arm that settles', () => {
    faults({ and: [false, { tyop: [1] }] });
  });

  it('reads no prototype through a name', () => {
    for (const name of ['constructor', '__proto__', 'hasOwnProperty', 'toString']) {
      expect(evaluate({ var: name }, scopeOf({}))).toEqual({ known: false, open: [name] });
    }
  });
});
