/** Every way to write a condition wrongly is told by the check of a whole pack, with the file and the remedy. */
import { describe, expect, it } from 'vitest';
import { type Json, problemsWith, told, withField } from './broken-pack.js';

const FILE = 'findings/mossy.json';
const nested = (depth: number): unknown => (depth === 0 ? true : { '!': [nested(depth - 1)] });
const moss = { var: 'mossFraction' };

describe('a condition of a pack', () => {
  it.each<[string, unknown, string, RegExp]>([
    ['loose equality', { '==': [moss, 0] }, 'operator', /"==" is not allowed.*===/],
    ['two operators', { '<': [moss, 1], '>': [moss, 0] }, 'many-keys', /has one key, this has 2 keys/],
    ['too few operands', { '<': [moss] }, 'arguments', /"<" has 1 operands; it takes 2 or 3/],
    ['a number as a truth', { and: [moss] }, 'kind', /a truth is wanted here, this gives a number/],
    ['a bare threshold', { '>=': [moss, 0.1] }, 'bare-number', /0\.1 stands in a condition.*figure/],
    ['a wrong option', { '===': [{ var: 'soilTexture' }, 'chalk'] }, 'option', /"chalk".*sand, sandy-loam/],
    [
      'two units',
      { '>': [{ var: 'thatchDepthMm' }, { var: 'figures.drought-days-from' }] },
      'units',
      /"figures\.drought-days-from" is in d, but mm is wanted/,
    ],
    ['33 levels', nested(33), 'depth', /deeper than 32.*facts\.json/],
    ['a prototype name', { '!': [{ var: 'constructor' }] }, 'unknown-name', /reads "constructor"/],
    ['a prototype operator', JSON.parse('{"__proto__": [true]}'), 'many-keys', /has 0 keys/],
    ['hasOwnProperty called', { hasOwnProperty: ['dog'] }, 'operator', /"hasOwnProperty" is not allowed/],
    ['null', { '===': [moss, null] }, 'shape', /seedbed rules schema/],
  ])('with %s is told with its place', (_, when, code, says) => {
    const problems = problemsWith(FILE, withField('when', when));
    expect(problems.map((problem) => problem.code)).toContain(code);
    const problem = problems.find((each) => each.code === code);
    expect(problem?.file).toBe(FILE);
    expect(problem?.pointer).toMatch(/\/when/);
    expect(told(problems)).toMatch(says);
  });
});

describe('a pack nested so deep that reading it would overflow', () => {
  it.each([200, 5000, 100_000])('is told as too deep at %s levels', (depth) => {
    const deep = `${'{"!":['.repeat(depth)}true${']}'.repeat(depth)}`;
    const problems = problemsWith(FILE, (finding: Json) =>
      JSON.stringify({ ...finding, when: '<here>' }).replace('"<here>"', deep),
    );
    expect(problems.map(({ file }) => file)).toEqual([FILE]);
    expect(told(problems)).toMatch(/deep/);
  });
});

describe('names that every object has', () => {
  it('are no formula', () => {
    const problems = problemsWith(
      'steps/cut.json',
      withField('labour', { formula: 'constructor', inputs: {} }),
    );
    expect(told(problems)).toMatch(/no formula "constructor"/);
  });

  it('are no step, source or caution', () => {
    const problems = problemsWith('steps/cut.json', withField('cautions', ['constructor']));
    expect(told(problems)).toMatch(/no caution "constructor"/);
  });

  it('are a possible id of a question, that reads no prototype', () => {
    const problems = problemsWith('questions/care.json', (questions: Json[]) => [
      ...questions,
      { ...questions[0], id: 'constructor' },
    ]);
    expect(told(problems)).toMatch(/nothing uses the question "constructor"/);
    expect(problems).toHaveLength(1);
  });
});

describe('what nobody uses', () => {
  it.each<[string, string]>([
    ['questions/care.json', 'question'],
    ['cautions/body.json', 'caution'],
    ['materials/soil.json', 'material'],
    ['facts.json', 'fact'],
  ])('in %s is told', (file, kind) => {
    const id = kind === 'question' || kind === 'fact' ? 'neverRead' : 'never-read';
    const problems = problemsWith(file, (records: Json[]) => [...records, { ...records[0], id }]);
    expect(problems.map(({ code }) => code)).toEqual(['unused']);
    expect(told(problems)).toMatch(/ at \/\d+ \(/);
    expect(told(problems)).toContain(
      `(${kind} ${id}): nothing uses the ${kind} "${id}". Use it, or delete it.`,
    );
  });
});
