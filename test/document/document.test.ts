import type { Nodes } from 'mdast';
import { describe, expect, it } from 'vitest';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import type { Plan } from '../../src/planner/plan.js';
import { asRoot, bare, gfmOutline, parseBack } from './parse-back.js';
import { emptyPlan, samplePlan } from './sample-plan.js';

/** Nothing known that may be left open. */
const openPlan: Plan = {
  ...samplePlan,
  place: null,
  steps: samplePlan.steps.map((step) => ({
    ...step,
    latestOn: null,
    window: null,
    workHours: 0,
    workHoursRange: { min: 0, max: 0 },
    after: step.after.map((wait) => ({ ...wait, maxDays: null, sign: null })),
    amounts: step.amounts.map((amount) => ({ ...amount, amount: null, range: null, note: null, loads: [] })),
  })),
  shopping: samplePlan.shopping.map((entry) => ({
    ...entry,
    need: null,
    packs: [],
    leftOver: null,
    cost: null,
  })),
  watering: samplePlan.watering.map((period) => ({ ...period, means: null })),
  sources: samplePlan.sources.map((source) => ({ ...source, year: null, address: null, at: [] })),
};

const plans: readonly (readonly [string, Plan])[] = [
  ['the sample plan', samplePlan],
  ['a plan in which nothing is to be done', emptyPlan],
  ['a plan in which everything is left open', openPlan],
];

function headings(plan: Plan): { depth: number; words: string }[] {
  return documentOf(plan).children.flatMap((node) =>
    node.type === 'heading' ? [{ depth: node.depth, words: wordsOf(node) }] : [],
  );
}

/** A drawing in a code block is lined up with spaces, so it is no prose. */
function withoutCode(markdown: string): string {
  return markdown.replace(/^(`{3,})text\n[\s\S]*?\n\1$/gm, '');
}

function wordsOf(node: Nodes): string {
  if ('value' in node) return node.value;
  return 'children' in node ? node.children.map(wordsOf).join('') : '';
}

describe.each(plans)('%s as Markdown', (_, plan) => {
  const tree = documentOf(plan);
  const markdown = markdownOf(tree);

  it('reads back as the very tree it was written from', () => {
    expect(parseBack(markdown)).toEqual(bare(tree));
  });

  it('is written the same again after it was read', () => {
    expect(markdownOf(asRoot(parseBack(markdown)))).toBe(markdown);
  });

  it('holds no HTML and never skips a heading level', () => {
    expect(gfmOutline(markdown).filter((kind) => kind === 'html')).toEqual([]);
    const depths = headings(plan).map(({ depth }) => depth);
    expect(depths[0]).toBe(1);
    for (const [index, depth] of depths.entries())
      expect(depth - (depths[index - 1] ?? 0)).toBeLessThanOrEqual(1);
    expect(depths.filter((depth) => depth === 1)).toHaveLength(1);
  });

  it('prints nothing that only a program understands', () => {
    expect(markdown).not.toMatch(
      /\b(?:NaN|undefined|null|Infinity|true|false)\b|\[object|\{|\d{4}-\d{2}-\d{2}/,
    );
  });

  it('has no line that only ends a table cell, no double space in prose and one newline at the end', () => {
    expect(markdown).toMatch(/[^\n]\n$/);
    const prose = withoutCode(markdown)
      .split('\n')
      .filter((line) => !line.startsWith('|'));
    expect(prose.filter((line) => /\S {2,}/.test(line) || / [.,;]/.test(line) || /\.\./.test(line))).toEqual(
      [],
    );
  });

  it('has words between a heading and the next of the same level', () => {
    for (const [index, node] of tree.children.entries()) {
      const next = tree.children[index + 1];
      if (node.type !== 'heading') continue;
      expect(next).toBeDefined();
      if (next?.type === 'heading') expect(next.depth).toBeGreaterThan(node.depth);
    }
  });
});

describe('the drawing in the document', () => {
  it('is the only code block, and stands before the table of the whole job', () => {
    const { children } = documentOf(samplePlan);
    const drawings = children.filter(({ type }) => type === 'code');
    expect(drawings).toHaveLength(1);
    expect(children[children.findIndex(({ type }) => type === 'code') + 1]?.type).toBe('table');
    // The drawing has runs of spaces that the prose may not have, so leaving it out has to make a difference.
    const markdown = markdownOf(documentOf(samplePlan));
    expect(markdown).toMatch(/moss {2,}#/);
    expect(withoutCode(markdown)).not.toMatch(/moss {2,}#/);
    expect(withoutCode(markdown)).toContain('## Before you start');
  });
});

describe('the order of the document', () => {
  it('is the one a person reads in', () => {
    const sections = headings(samplePlan).filter(({ depth }) => depth === 2);
    expect(sections.map(({ words }) => words)).toEqual([
      'What is wrong',
      'The verdict',
      'The whole job at a glance',
      'Before you start',
      'Shopping list',
      'The work, step by step',
      'Watering',
      'What you should see',
      'What was assumed',
      'Not in this plan',
      'Sources',
    ]);
  });

  it('numbers the steps and dates their headings', () => {
    const work = headings(samplePlan).filter(({ words }) => /^\d/.test(words));
    expect(work.map(({ words }) => words)).toEqual([
      '1. Treat the moss, Saturday 13 March',
      '2. Scarify, Saturday 27 March to Sunday 28 March',
      '3. Sow the seed, Saturday 3 April',
    ]);
  });

  it('leaves out every section that has nothing to say', () => {
    expect(headings(emptyPlan).map(({ words }) => words)).toEqual([
      'Lawn plan, 2027',
      'The verdict',
      'Sources',
    ]);
  });
});
