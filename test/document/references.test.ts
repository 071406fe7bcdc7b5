import { describe, expect, it } from 'vitest';
import { bullets, heading, line, numbered, strong, table } from '../../src/document/nodes.js';
import { markOf, referencesOf, stepsInWords } from '../../src/document/references.js';
import { sourcesSection } from '../../src/document/sources-section.js';
import { samplePlan } from './sample-plan.js';

const references = referencesOf(samplePlan);

describe('nodes', () => {
  it('join pieces with one space and merge neighbouring words', () => {
    expect(line('one', ' two ', '', strong('three'), strong(''), 'four')).toEqual([
      { type: 'text', value: 'one two ' },
      { type: 'strong', children: [{ type: 'text', value: 'three' }] },
      { type: 'text', value: ' four' },
    ]);
  });

  it('make a heading, tight lists and a table out of words', () => {
    const words = (value: string) => ({ type: 'text', value });
    const item = (value: string) => ({
      type: 'listItem',
      spread: false,
      children: [{ type: 'paragraph', children: [words(value)] }],
    });
    expect(heading(2, 'A')).toEqual({ type: 'heading', depth: 2, children: [words('A')] });
    expect(bullets([['a']])).toEqual({ type: 'list', ordered: false, spread: false, children: [item('a')] });
    expect(numbered([['a'], ['b']])).toEqual({
      type: 'list',
      ordered: true,
      start: 1,
      spread: false,
      children: [item('a'), item('b')],
    });
    expect(table(['h'], [['']])).toEqual({
      type: 'table',
      align: [null],
      children: [
        { type: 'tableRow', children: [{ type: 'tableCell', children: [words('h')] }] },
        { type: 'tableRow', children: [{ type: 'tableCell', children: [] }] },
      ],
    });
  });
});

describe('marks', () => {
  const cite = (...ids: string[]) => ids.map((id) => ({ id, at: 'page 1' }));

  it.each([
    ['published', [], ''],
    ['published', cite('invented-seed'), '(source 2)'],
    ['published', cite('invented-seed', 'invented-moss', 'invented-seed'), '(sources 1 and 2)'],
    ['common-practice', [], '(common practice)'],
    ['assumption', cite('invented-moss'), '(assumption, source 1)'],
    ['label', [], '(from the label)'],
    ['published', cite('not-in-the-list'), ''],
  ] as const)('of %s from %j read %j', (basis, citations, mark) => {
    expect(markOf(basis, citations, references)).toBe(mark);
  });

  it('point to the place in the list at the end, however the plan counts', () => {
    const [moss, seed] = samplePlan.sources;
    if (moss === undefined || seed === undefined) throw new Error('the sample plan has two sources');
    const plan = {
      ...samplePlan,
      sources: [
        { ...moss, number: 9 },
        { ...seed, number: 4 },
      ],
    };
    expect(markOf('published', cite('invented-moss'), referencesOf(plan))).toBe('(source 2)');
    expect(JSON.stringify(sourcesSection(plan))).toMatch(/Seed rates.*Moss in grass/);
  });

  it('name steps by number in their order', () => {
    expect(stepsInWords(['sow', 'treat-moss', 'sow', 'gone'], references)).toBe('steps 1 and 3');
    expect(stepsInWords(['gone'], references)).toBe('');
  });
});
