/** What a value carries with it: how far it may be off, and which names it rests on. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, type Known, type Outcome, RuleFault, type Scope } from '../../src/rules/evaluate.js';
import type { Expression } from '../../src/rules/schema.js';
import { known, scopeOf } from './scopes.js';

const spread = (value: number, least: number, most: number, name: string): Known => ({
  ...known(value, [name]),
  least,
  most,
});
const scopeWith = (outcomes: Readonly<Record<string, Outcome>>): Scope => {
  return (name) => outcomes[name] ?? { known: false, open: [name] };
};
const x: Expression = { var: 'x' };
const y: Expression = { var: 'y' };
const test: Expression = { var: 'test' };

describe('an if with an open test', () => {
  const rule: Expression = { if: [test, x, y] };

  it('is known when both branches agree, and rests on both of them but not on the test', () => {
    const outcome = evaluate(rule, scopeWith({ x: known(3, ['x']), y: known(3, ['y']) }));
    expect(outcome).toEqual({ known: true, value: 3, used: ['x', 'y'], from: ['x', 'y'] });
  });

  it('stays open when the branches agree in the value and not in how far it may be off', () => {
    const outcome = evaluate(rule, scopeWith({ x: spread(3, 2, 4, 'x'), y: known(3, ['y']) }));
    expect(outcome).toEqual({ known: false, open: ['test'] });
  });

  it.each([
    ['at the lower end', spread(3, 1, 4, 'y')],
    ['at the upper end', spread(3, 2, 5, 'y')],
  ])('stays open when the branches may be off differently %s', (_, other) => {
    const outcome = evaluate(rule, scopeWith({ x: spread(3, 2, 4, 'x'), y: other }));
    expect(outcome).toEqual({ known: false, open: ['test'] });
  });

  it('keeps a spread on which the branches agree', () => {
    const outcome = evaluate(rule, scopeWith({ x: spread(3, 2, 4, 'x'), y: spread(3, 2, 4, 'y') }));
    expect(outcome).toMatchObject({ known: true, value: 3, least: 2, most: 4 });
  });

  it('names the test and the open branch', () => {
    expect(evaluate(rule, scopeWith({ x: known(3) }))).toEqual({ known: false, open: ['test', 'y'] });
  });
});

describe('an if whose test is known', () => {
  it('does not look at the other branch, whatever is wrong there', () => {
    const rule: Expression = { if: [test, 1, { '/': [1, 0] }] };
    expect(evaluate(rule, scopeOf({ test: true }))).toMatchObject({ value: 1, used: ['test'] });
    expect(() => evaluate(rule, scopeOf({ test: false }))).toThrow(RuleFault);
  });

  it('is open as its branch is', () => {
    expect(evaluate({ if: [test, x, 1] }, scopeOf({ test: true }))).toEqual({ known: false, open: ['x'] });
  });
});

describe('a spread', () => {
  const scope = scopeWith({ x: spread(10, 8, 13, 'x'), y: spread(-2, -3, 1, 'y'), test: known(true) });

  it.each<[Expression, number, number, number]>([
    [{ '-': [x] }, -10, -13, -8],
    [{ '*': [x, y] }, -20, -39, 13],
    [{ '+': [x, y, 1] }, 9, 6, 15],
    [{ max: [x, 9] }, 10, 9, 13],
    [{ min: [x, 9] }, 9, 8, 9],
    [{ '/': [1, x] }, 0.1, 1 / 13, 1 / 8],
    [{ if: [test, { '+': [x, x] }, 0] }, 20, 16, 26],
  ])('of %j reaches from corner to corner', (rule, value, least, most) => {
    const outcome = evaluate(rule, scope) as Known;
    expect([outcome.value, outcome.least, outcome.most]).toEqual([value, least, most]);
  });

  it('is not there where nothing had one', () => {
    const outcome = evaluate({ '+': [x, 1] }, scopeOf({ x: 2 }));
    expect(outcome).toEqual({ known: true, value: 3, used: ['x'], from: ['x'] });
  });

  it('ends in a fault where a divisor may be 0', () => {
    expect(() => evaluate({ '/': [x, y] }, scopeWith({ x: known(1), y: spread(1, 0, 2, 'y') }))).toThrow(
      RuleFault,
    );
  });

  // Any value inside the spreads of the operands gives a result inside the spread of the whole.
  it('holds every result that its operands could give', () => {
    const operators = fc.constantFrom('+', '-', '*', 'min', 'max');
    const span = fc.tuple(fc.integer({ min: -20, max: 20 }), fc.nat(10), fc.nat(10), fc.nat(20));
    fc.assert(
      fc.property(operators, span, span, (operator, [a, under, over, share], [b, low, high, part]) => {
        const rule: Expression = { [operator]: [x, y] };
        const whole = evaluate(
          rule,
          scopeWith({ x: spread(a, a - under, a + over, 'x'), y: spread(b, b - low, b + high, 'y') }),
        ) as Known & { least: number; most: number };
        const inX = a - under + (share / 20) * (under + over);
        const inY = b - low + (part / 20) * (low + high);
        const one = evaluate(rule, scopeOf({ x: inX, y: inY })) as Known;
        expect(one.value).toBeGreaterThanOrEqual(whole.least - 1e-9);
        expect(one.value).toBeLessThanOrEqual(whole.most + 1e-9);
        expect(whole.value).toBeGreaterThanOrEqual(whole.least);
        expect(whole.value).toBeLessThanOrEqual(whole.most);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('what is no number', () => {
  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    '%s comes out of no sum',
    (value) => {
      expect(() => evaluate({ '+': [x, 1] }, scopeOf({ x: value }))).toThrow(RuleFault);
      expect(() => evaluate({ '*': [x, 0] }, scopeOf({ x: value }))).toThrow(RuleFault);
    },
  );

  it.each([[{ max: [] }], [{ min: [] }]])('%j has no value', (rule) => {
    expect(() => evaluate(rule, scopeOf({}))).toThrow(RuleFault);
  });

  it.each(['+', '-', '*', '/', 'min', 'max', '<', '<=', '>', '>='])(
    'text that looks like one is none to %s',
    (operator) => {
      expect(() => evaluate({ [operator]: [x, 1] }, scopeOf({ x: '5' }))).toThrow(/not a number/);
      expect(() => evaluate({ [operator]: [1, x] }, scopeOf({ x: '5' }))).toThrow(/not a number/);
    },
  );
});

describe('operators that only JSON can spell', () => {
  it.each([
    '{"__proto__": [1]}',
    '{"hasOwnProperty": ["x"]}',
    '{"valueOf": []}',
    '{"method": ["x", "call"]}',
  ])('%s is refused', (text) => {
    expect(() => evaluate(JSON.parse(text) as Expression, scopeOf({}))).toThrow(/is not allowed/);
  });

  it('a default inside var is not taken for the answer', () => {
    expect(evaluate({ var: ['x', 7] }, scopeOf({}))).toEqual({ known: false, open: ['x'] });
  });

  it('a dotted path does not reach into anything', () => {
    expect(evaluate({ var: 'x.length' }, scopeOf({ x: 'clay' }))).toEqual({
      known: false,
      open: ['x.length'],
    });
  });
});
