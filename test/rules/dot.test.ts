/** The graph of a pack in DOT, by hand for a small one and by its records for the bundled one. */
import { describe, expect, it } from 'vitest';
import { dotOf, recordOf } from '../../src/rules/dot.js';
import type { PackData } from '../../src/rules/pack.js';
import { readPack } from '../../src/rules/read.js';
import { figure, finding, question, tinyPack } from './tiny-pack.js';

describe('the graph of a pack', () => {
  it('draws records and what reads what, and leaves figures out', () => {
    const pack = tinyPack({
      questions: [
        question('moss', { label: 'the "moss" \\ share' }),
        question('why', { askWhen: { '===': [{ var: 'moss' }, true] } }),
      ],
      figures: [figure('limit', 2)],
      findings: [finding('mossy', { '<': [{ var: 'figures.limit' }, { var: 'moss' }] })],
    });
    expect(dotOf(pack)).toBe(
      [
        'digraph "tiny" {',
        '  rankdir=LR;',
        '  "question moss" [label="the \\"moss\\" \\\\ share", shape=box];',
        '  "question why" [label="why", shape=box];',
        '  "finding mossy" [label="mossy", shape=diamond];',
        '  "question moss" -> "question why";',
        '  "question moss" -> "finding mossy";',
        '}',
        '',
      ].join('\n'),
    );
  });

  it('has every record of the bundled rules in the shape of its kind, and every wait dashed', () => {
    const data = readPack('rules').data as PackData;
    const lines = dotOf(data).split('\n');
    const countOf = (shape: string): number =>
      lines.filter((line) => line.endsWith(`shape=${shape}];`)).length;
    expect(countOf('box')).toBe(data.questions.length);
    expect(countOf('ellipse')).toBe(data.facts.length);
    expect(countOf('diamond')).toBe(data.findings.length);
    expect(countOf('box3d')).toBe(data.steps.length);
    expect(countOf('octagon')).toBe(data.cautions.length);
    expect(countOf('doubleoctagon')).toBe(new Set(data.verdicts.map(({ id }) => id)).size);
    const waits = data.steps.flatMap(({ id, after }) =>
      after.map(({ step }) => `  "step ${step}" -> "step ${id}" [style=dashed];`),
    );
    expect(lines.filter((line) => line.endsWith('[style=dashed];'))).toEqual(waits);
    for (const line of lines) {
      const [, from, to] = /^ {2}"([^"]+)" -> "([^"]+)";$/.exec(line) ?? [];
      expect(from === undefined || from !== to, line).toBe(true);
    }
  });

  it.each([
    ['mossFraction', 'question mossFraction'],
    ['findings.mossy', 'finding mossy'],
    ['facts.need', 'fact need'],
    ['steps.sow', 'step sow'],
  ])('finds the record of %s', (name, record) => {
    expect(recordOf(name)).toBe(record);
  });
});
