import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import { oneLine } from '../../src/document/one-line.js';
import type { Plan } from '../../src/planner/plan.js';
import { times } from '../depth.js';
import { naughtyStrings } from './naughty.js';
import { bare, gfmOutline, parseBack } from './parse-back.js';
import { samplePlan } from './sample-plan.js';

/** The sample plan with the first entry of every list: as many kinds of place, quicker to parse. */
const slimPlan: Plan = Object.fromEntries(
  Object.entries(samplePlan).map(([name, value]) => [name, Array.isArray(value) ? value.slice(0, 1) : value]),
) as unknown as Plan;

/** One plan for each place where foreign text can stand, in a heading, a paragraph, a list or a table cell. */
const places: Readonly<Record<string, (text: string) => Plan>> = {
  name: (text) => ({ ...slimPlan, name: text }),
  place: (text) => ({ ...slimPlan, place: text }),
  'finding title': (text) => withFirst('findings', { title: text, verdict: 'found' }),
  'finding found': (text) => withFirst('findings', { title: text, because: text, verdict: 'found' }),
  'finding open': (text) => withFirst('findings', { title: text, because: text, tellsApart: `a ${text}` }),
  'assumed value': (text) => withFirst('assumptions', { assumed: text, label: text }),
  'shopping title': (text) => withFirst('shopping', { title: `a ${text}` }),
  'step title': (text) => withFirst('steps', { title: text }),
  'step title in the drawing': (text) => ({
    ...slimPlan,
    steps: samplePlan.steps.slice(0, 2).map((step, index) => (index === 0 ? { ...step, title: text } : step)),
  }),
  'task of a step': (text) => withFirst('steps', { how: [`a ${text}`] }),
  'caution line': (text) => withFirst('cautions', { line: `a ${text}` }),
  'caution detail': (text) => withFirst('cautions', { severity: 'danger', detail: `a ${text}` }),
  'watering aim': (text) => withFirst('watering', { aim: text }),
  'verdict reasons': (text) => ({ ...slimPlan, verdict: { ...slimPlan.verdict, reasons: text } }),
  'source title': (text) => withFirst('sources', { title: `a ${text}`, at: [`a ${text}`] }),
};

type Listed = 'findings' | 'assumptions' | 'shopping' | 'steps' | 'cautions' | 'watering' | 'sources';

/** The sample plan with some fields of the first entry of a list replaced. */
function withFirst<Name extends Listed>(name: Name, fields: Partial<Plan[Name][number]>): Plan {
  const [first, ...rest] = slimPlan[name];
  return { ...slimPlan, [name]: [{ ...first, ...fields }, ...rest] };
}

/** What remains comparable: sentences get a capital and a stop, and the plan's own words m². */
function key(text: string): string {
  return oneLine(text)
    .replace(/\.$/, '')
    .replace(/\bm2\b/g, 'm²')
    .toLowerCase();
}

function allWords(node: unknown): string {
  if (typeof node !== 'object' || node === null) return '';
  if ('value' in node && typeof node.value === 'string') return node.value;
  return 'children' in node && Array.isArray(node.children) ? node.children.map(allWords).join('') : '';
}

const outlines = new Map<unknown, Map<string, string[]>>();

/** What the plan looks like with plain words, or none, in the same place. */
function plainOutline(make: (text: string) => Plan, words: string): string[] {
  const known = outlines.get(make) ?? new Map<string, string[]>();
  outlines.set(make, known);
  const outline = known.get(words) ?? gfmOutline(markdownOf(documentOf(make(words))));
  known.set(words, outline);
  return outline;
}

function expectHarmless(make: (text: string) => Plan, text: string): void {
  const tree = documentOf(make(text));
  const markdown = markdownOf(tree);
  const readBack = parseBack(markdown);
  expect(readBack).toEqual(bare(tree));
  expect(allWords(readBack).toLowerCase()).toContain(key(text));
  expect(gfmOutline(markdown)).toEqual(plainOutline(make, oneLine(text) === '' ? '' : 'plain'));
}

describe.each(Object.entries(places))('foreign text as %s', (_, make) => {
  it.each(naughtyStrings.map((text) => [text.slice(0, 40), text]))('stays the text %j', (_start, text) => {
    expectHarmless(make, text);
  });

  it('stays text whatever it is', () => {
    const anyText = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.string({ unit: markup, maxLength: 30 }),
    );
    fc.assert(
      fc.property(anyText, (text) => expectHarmless(make, text)),
      { numRuns: times(10, 40) },
    );
  });
});

/** The signs that mean something in Markdown, and a few letters to put between them. */
const markup = fc.constantFrom(...'#*_`~|<>[]()!&;:.-+=\\/"\'1a w@\n\t '.split(''));

describe('what no text can carry into a document', () => {
  it.each(naughtyStrings.map((text) => [text.slice(0, 40), text]))('controls of %j', (_start, text) => {
    const markdown = markdownOf(documentOf({ ...slimPlan, name: text, place: text }));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
    expect(markdown).not.toMatch(/[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]/);
  });

  it('leaves no typed line break', () => {
    expect(oneLine('a\nb\r\nc\td  e ')).toBe('a b c d e');
  });
});

describe('words of the pack in a table cell', () => {
  it('keep their bars and lose their line breaks', () => {
    const markdown = markdownOf(documentOf(withFirst('shopping', { title: 'a | b\nc \\| d' })));
    expect(markdown).toContain('| a \\| b c \\\\\\| d ');
  });
});
