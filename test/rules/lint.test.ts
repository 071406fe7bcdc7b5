import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/base/nearest.js';
import { lint, type Named } from '../../src/rules/lint.js';
import { explain } from '../../src/rules/problem.js';
import type { Expression } from '../../src/rules/schema.js';

const names = new Map<string, Named>([
  ['thatchDepthMm', { kind: 'number', unit: 'mm' }],
  ['dog', { kind: 'truth' }],
  ['soil', { kind: 'word', words: ['sand', 'loam'] }],
  ['figures.thatch-limit', { kind: 'number', unit: 'mm' }],
  ['figures.rain-limit', { kind: 'number', unit: 'd' }],
]);
const check = (expression: unknown, wanted: 'truth' | 'number' | 'word' | 'any' = 'truth') =>
  lint(expression as Expression, wanted, '/when', { file: 'findings/x.json', names, nearest });

/** A rule nested `depth` deep. */
const nested = (depth: number): unknown => (depth === 0 ? true : { '!': [nested(depth - 1)] });

describe('lint', () => {
  it.each<[string, unknown]>([
    [
      'a comparison of a question with a figure of the same unit',
      { '>': [{ var: 'thatchDepthMm' }, { var: 'figures.thatch-limit' }] },
    ],
    ['a choice with one of its words', { '===': [{ var: 'soil' }, 'loam'] }],
    ['membership in a list of its words', { in: [{ var: 'soil' }, ['sand', 'loam']] }],
    ['counting numbers', { '>': [{ var: 'thatchDepthMm' }, 0] }],
    [
      'a sum and a choice in one unit, with a plain number among them',
      {
        '>': [
          { '+': [{ var: 'thatchDepthMm' }, { if: [{ var: 'dog' }, { var: 'figures.thatch-limit' }, 0] }] },
          { var: 'figures.thatch-limit' },
        ],
      },
    ],
    [
      'a product, whose unit is neither of the two',
      {
        '>': [
          { '*': [{ var: 'thatchDepthMm' }, { var: 'figures.rain-limit' }] },
          { var: 'figures.rain-limit' },
        ],
      },
    ],
    ['32 levels', nested(32)],
  ])('accepts %s', (_, rule) => {
    expect(check(rule)).toEqual([]);
  });

  it.each<[string, unknown, string, string]>([
    [
      'an unknown name',
      { '>': [{ var: 'thatchDepth' }, 0] },
      'unknown-name',
      'Did you mean "thatchDepthMm"?',
    ],
    ['an operator outside the list', { some: [[], true] }, 'operator', '"some" is not allowed'],
    ['loose equality', { '==': [{ var: 'dog' }, true] }, 'operator', '"==" is not allowed'],
    ['a prototype name as an operator', { constructor: [1] }, 'operator', '"constructor" is not allowed'],
    ['a prototype name as a name', { '!': [{ var: '__proto__' }] }, 'unknown-name', 'reads "__proto__"'],
    ['a missing operand', { '<': [{ var: 'thatchDepthMm' }] }, 'arguments', 'has 1 operands'],
    ['an operand too many', { '-': [1, 1, 1] }, 'arguments', 'has 3 operands; it takes 1 or 2'],
    ['a comparison of four', { '<': [0, 0, 1, 1] }, 'arguments', 'has 4 operands; it takes 2 or 3'],
    ['a third operand that would be dropped', { '>': [1, 1, 0] }, 'arguments', 'it takes 2.'],
    ['an empty and', { and: [] }, 'arguments', 'has 0 operands; it takes 1 or more'],
    ['the greatest of nothing', { '>': [{ max: [] }, 0] }, 'arguments', 'has 0 operands'],
    ['a default inside var', { '!': [{ var: ['dog', true] }] }, 'arguments', 'one name'],
    ["a list walker's names", { missing: ['dog'] }, 'operator', '"missing" is not allowed'],
    ['double negation as truthiness', { '!!': [1] }, 'operator', '"!!" is not allowed'],
    ['an if without else', { if: [{ var: 'dog' }, true] }, 'arguments', 'an odd number'],
    ['two operators in one object', { '<': [0, 1], '>': [0, 1] }, 'many-keys', 'one key, this has 2 keys'],
    ['a list where a value is due', { and: [[true, false]] }, 'many-keys', 'one key, this is a list'],
    ['an object without a key', { and: [{}] }, 'many-keys', 'one key, this has 0 keys'],
    [
      'a number where a truth is wanted',
      { and: [{ var: 'thatchDepthMm' }] },
      'kind',
      'a truth is wanted here',
    ],
    ['text compared with a number', { '===': [{ var: 'soil' }, 0] }, 'kind', 'wanted'],
    ['a truth in a sum', { '>': [{ '+': [{ var: 'dog' }, 1] }, 0] }, 'kind', 'a number is wanted'],
    ['branches of two kinds', { '===': [{ if: [{ var: 'dog' }, 1, 'one'] }, 1] }, 'kind', 'wanted'],
    ['a bare threshold', { '>': [{ var: 'thatchDepthMm' }, 13] }, 'bare-number', '13 stands in a condition'],
    ['a word that is no option', { '===': [{ var: 'soil' }, 'clay'] }, 'option', 'Allowed: sand, loam'],
    [
      'a listed word that is no option',
      { in: [{ var: 'soil' }, ['sand', 'clay']] },
      'option',
      '"clay" is no answer of "soil"',
    ],
    [
      'text that looks like a number',
      { '>': [{ var: 'thatchDepthMm' }, '13'] },
      'kind',
      'a number is wanted here, this gives a word',
    ],
    [
      'a name hidden in the list of "in"',
      { in: ['sand', [{ var: 'soil' }]] },
      'kind',
      'this gives a condition',
    ],
    ['a number among the words of "in"', { in: [{ var: 'soil' }, ['sand', 1]] }, 'kind', 'a word is wanted'],
    [
      'a threshold hidden in the list of "in"',
      { in: [{ var: 'thatchDepthMm' }, [13]] },
      'bare-number',
      '13 stands in a condition',
    ],
    ['"in" without a list', { in: [{ var: 'soil' }, 'sandy'] }, 'kind', 'list of literals'],
    [
      'days compared with millimetres',
      { '>': [{ var: 'thatchDepthMm' }, { var: 'figures.rain-limit' }] },
      'units',
      '"figures.rain-limit" is in d, but mm is wanted',
    ],
    [
      'days added to millimetres',
      { '>': [{ '+': [{ var: 'thatchDepthMm' }, 1, { var: 'figures.rain-limit' }] }, 0] },
      'units',
      '"figures.rain-limit" is in d, but mm is wanted',
    ],
    [
      'the lesser of days and millimetres',
      { '>': [{ min: [{ var: 'figures.rain-limit' }, { var: 'thatchDepthMm' }] }, 0] },
      'units',
      '"thatchDepthMm" is in mm, but d is wanted',
    ],
    [
      'days between millimetres',
      { '<': [0, { var: 'thatchDepthMm' }, { var: 'figures.rain-limit' }] },
      'units',
      '"figures.rain-limit" is in d, but mm is wanted',
    ],
    [
      'branches in two units',
      { '>': [{ if: [{ var: 'dog' }, { var: 'thatchDepthMm' }, { var: 'figures.rain-limit' }] }, 0] },
      'units',
      '"figures.rain-limit" is in d, but mm is wanted',
    ],
    [
      'a sum of millimetres compared with days',
      { '>': [{ '+': [{ var: 'thatchDepthMm' }, 1] }, { var: 'figures.rain-limit' }] },
      'units',
      '"figures.rain-limit" is in d, but mm is wanted',
    ],
    ['33 levels', nested(33), 'depth', 'deeper than 32'],
    ['a computed name', { '!': [{ var: [{ var: 'soil' }] }] }, 'arguments', 'one name'],
  ])('refuses %s', (_, rule, code, says) => {
    const problems = check(rule);
    expect(problems.map((problem) => problem.code)).toContain(code);
    const sentence = problems.map(explain).join('\n');
    expect(sentence).toContain(says);
    expect(sentence).toMatch(/^findings\/x\.json at \/when/);
  });

  it('reports every problem of a rule, not the first', () => {
    expect(
      check({ and: [{ tyop: [1] }, { var: 'cat' }, { '>': [{ var: 'thatchDepthMm' }, 5] }] }).map(
        ({ code }) => code,
      ),
    ).toEqual(['operator', 'unknown-name', 'bare-number']);
  });

  it('asks for the kind that the place wants', () => {
    expect(check({ var: 'thatchDepthMm' }, 'number')).toEqual([]);
    expect(check({ var: 'thatchDepthMm' }, 'truth')[0]?.code).toBe('kind');
    expect(check('renovate', 'word')).toEqual([]);
  });
});
