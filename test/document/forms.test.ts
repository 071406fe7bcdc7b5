/** The other forms of a plan: read back by parsers that are not ours, with hostile names in it. */
import { readFileSync } from 'node:fs';
import { parse as parseCsv } from 'csv-parse/sync';
import fc from 'fast-check';
import { parse as parseHtml } from 'parse5';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { monthName, monthOf, parseIsoDate } from '../../src/base/dates.js';
import { csvOf } from '../../src/document/csv.js';
import { drawingOf } from '../../src/document/drawing.js';
import { htmlOf } from '../../src/document/html.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { pack } from '../planner/any-lawn.js';

const lawn = (name: string): Answers =>
  JSON.parse(readFileSync(`transcripts-examples/${name}/answers.json`, 'utf8')).answers;
const planOf = (answers: Answers, today = '2027-03-13'): Plan =>
  assemblePlan({ pack, answers, today: parseIsoDate(today), assumeAll: true });
const mossy = planOf(lawn('mossy-family-lawn'));
const large = planOf({ ...lawn('mossy-family-lawn'), areaM2: 3000, startOn: '2027-09-20' }, '2027-09-15');
const plans: [string, Plan][] = [
  ['a middling plan', mossy],
  ['a large lawn, part by part, over a new year', large],
  ['a plan of one step', planOf({ ...lawn('hardly-anything-known') }, '2027-04-01')],
  ['a plan without any step', { ...mossy, steps: [] }],
];
const named = (name: string): Plan => ({ ...mossy, name });
const HOSTILE = [
  '=1+1',
  '+1',
  '-1',
  '@SUM(A1)',
  '\t=1',
  '=HYPERLINK("http://x","y")',
  '"><script>x</script>',
  "';--",
  'a,b\r\nc',
];

/** Text of every element of that name, in order, by a strict XML parser. */
function xmlTexts(xml: string, wanted: string): string[] {
  const texts: string[] = [];
  const open: string[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name }) => {
    open.push(name);
    if (name === wanted) texts.push('');
  });
  parser.on('text', (text) => {
    if (open.at(-1) === wanted) texts.push((texts.pop() ?? '') + text);
  });
  parser.on('closetag', () => open.pop());
  parser.write(xml).close();
  return texts;
}

describe('the table for a spreadsheet', () => {
  it.each(plans)('of %s has every step and amount, read back by another parser', (_, plan) => {
    const rows = parseCsv(csvOf(plan), { columns: true, record_delimiter: '\r\n' }) as Record<
      string,
      string
    >[];
    expect([...new Set(rows.map(({ stepId }) => stepId))]).toEqual(plan.steps.map(({ id }) => id));
    const amounts = plan.steps.flatMap((step) =>
      step.amounts.map(({ amount, unit }) => [step.id, amount, unit]),
    );
    const found = rows
      .filter(({ material }) => material !== '')
      .map(({ stepId, amount, unit }) => [stepId, amount === '' ? null : Number(amount), unit]);
    expect(found).toEqual(amounts);
    for (const row of rows) {
      const step = plan.steps.find(({ id }) => id === row.stepId);
      const cell = (day: string | null | undefined): string =>
        plan.datesKnownTo === 'day' || !day ? (day ?? '') : `${day.slice(0, 7)}?`;
      expect([row.startOn, row.endOn, row.latestOn]).toEqual(
        [step?.startOn, step?.endOn, step?.latestOn].map(cell),
      );
    }
  });

  // RFC 4180, section 2, rules 5 to 7.
  it('ends its lines in CR LF and puts commas and quotes in quotes', () => {
    const csv = csvOf(named('The "old" lawn, back'));
    expect(csv.endsWith('\r\n')).toBe(true);
    expect(csv.split('\r\n')[1]).toMatch(/^"The ""old"" lawn, back",1,/);
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  // OWASP, "CSV Injection": cells that begin with = + - @, a tab or a carriage return.
  it.each(HOSTILE)('runs no formula out of the name %j', (name) => {
    const [row] = parseCsv(csvOf(named(name)), { columns: true }) as Record<string, string>[];
    expect(row?.lawn).not.toMatch(/^[=+\-@\t\r]/);
    expect(row?.stepNumber).toBe('1');
  });

  it('keeps any name in its one cell', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (name) => {
        const rows = parseCsv(csvOf(named(name)), { columns: true }) as Record<string, string>[];
        expect(new Set(rows.map(({ lawn: cell }) => cell)).size).toBe(1);
        expect(rows[0]?.lawn).not.toMatch(/^[=+\-@\t\r]/);
      }),
    );
  });
});

describe('the drawing', () => {
  it.each(plans)('of %s is sound XML with every step and day in words', (_, plan) => {
    const svg = drawingOf(plan);
    const [facts = ''] = xmlTexts(svg, 'desc');
    expect(xmlTexts(svg, 'title')).toHaveLength(plan.steps.length + 1);
    for (const [index, step] of plan.steps.entries()) {
      expect(facts).toContain(`${index + 1}. ${step.title.replace(/\bm2\b/g, 'm²')}: `);
      if (plan.datesKnownTo === 'day') expect(facts).toContain(`${Number(step.startOn.slice(-2))} `);
      else expect(facts).toMatch(new RegExp(`: ${monthName(monthOf(step.startOn))}( \\d{4})?\\?`));
    }
  });

  it.each(plans)('of %s has every bar on the page, as long as its days ask for', (_, plan) => {
    const svg = drawingOf(plan);
    const bars = [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="12"/g)].map(
      (bar) => ({
        left: Number(bar[1]),
        width: Number(bar[2]),
      }),
    );
    expect(bars.length).toBeGreaterThanOrEqual(plan.steps.length);
    for (const { left, width } of bars) {
      expect(left).toBeGreaterThanOrEqual(440);
      expect(left + width).toBeLessThanOrEqual(942);
    }
    const starts = plan.steps.filter(({ parts }) => parts.length <= 1).map(({ startOn }) => startOn);
    if (bars.length === plan.steps.length) {
      const lefts = bars.map(({ left }) => left);
      expect(lefts).toEqual([...lefts].sort((a, b) => a - b));
      expect(starts).toEqual([...starts].sort());
    }
  });

  it.each(HOSTILE)('shows the name %j as text and nothing else', (name) => {
    const [title = ''] = xmlTexts(drawingOf(named(name)), 'title');
    expect(title).toContain(`Lawn plan for ${name.replace(/\s+/g, ' ').trim()}`);
    expect(xmlTexts(drawingOf(named(name)), 'script')).toEqual([]);
  });
});

interface Tree {
  readonly nodeName: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly childNodes?: readonly Tree[];
  readonly value?: string;
}
const nodesIn = (node: Tree): Tree[] => [node, ...(node.childNodes ?? []).flatMap(nodesIn)];
const attribute = (node: Tree, name: string): string | undefined =>
  node.attrs?.find((each) => each.name === name)?.value;
const textIn = (node: Tree): string =>
  nodesIn(node)
    .map(({ value = '' }) => value)
    .join('');

describe('the page of HTML', () => {
  it.each(plans)('of %s parses without a fault, and needs nothing from outside', (_, plan) => {
    const faults: string[] = [];
    const tree = parseHtml(htmlOf(plan), {
      onParseError: ({ code }) => faults.push(code),
    }) as unknown as Tree;
    expect(faults).toEqual([]);
    const nodes = nodesIn(tree);
    const names = new Set(nodes.map(({ nodeName }) => nodeName));
    for (const name of ['script', 'link', 'img', 'iframe', 'object', 'embed'])
      expect(names).not.toContain(name);
    for (const node of nodes) {
      for (const { name, value } of node.attrs ?? []) {
        expect(name).not.toMatch(/^on|^src$/);
        if (name === 'href') expect(value).toMatch(/^#/);
      }
    }
  });

  // WCAG 2.2: 1.3.1 (headings, table heads), 2.4.2 (title), 3.1.1 (language).
  it('names its language and title, steps down its headings one by one, and has heads over its columns', () => {
    const nodes = nodesIn(parseHtml(htmlOf(mossy)) as unknown as Tree);
    const named = (name: string) => nodes.filter(({ nodeName }) => nodeName === name);
    expect(attribute(named('html')[0] as Tree, 'lang')).toBe('en-GB');
    expect(textIn(named('title')[0] as Tree)).toContain('Lawn plan for');
    const levels = nodes.flatMap(({ nodeName }) => (/^h[1-6]$/.test(nodeName) ? [Number(nodeName[1])] : []));
    expect(levels[0]).toBe(1);
    for (const [index, level] of levels.entries())
      if (index > 0) expect(level - (levels[index - 1] as number)).toBeLessThanOrEqual(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(named('th').length).toBeGreaterThan(3);
    for (const head of named('th')) expect(attribute(head, 'scope')).toBe('col');
    expect(named('svg')).toHaveLength(1);
  });

  it.each(HOSTILE)('shows the name %j as text and nothing else', (name) => {
    const tree = parseHtml(htmlOf(named(name))) as unknown as Tree;
    const [head] = nodesIn(tree).filter(({ nodeName }) => nodeName === 'h1');
    expect(textIn(head as Tree)).toContain(name.replace(/\s+/g, ' ').trim());
    expect(nodesIn(tree).filter(({ nodeName }) => nodeName === 'script')).toEqual([]);
  });
});
