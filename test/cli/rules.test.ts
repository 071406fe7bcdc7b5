import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

type Json = Record<string, unknown>;

/** A copy of the bundled rules with one file changed. */
function packWith(file: string, change: (content: never) => unknown): string {
  const folder = newFolder();
  cpSync('rules', folder, { recursive: true });
  const path = join(folder, file);
  writeFileSync(path, JSON.stringify(change(JSON.parse(readFileSync(path, 'utf8')) as never)));
  return folder;
}

describe('rules check', () => {
  it('counts what is sound, and says which figures nothing reads', () => {
    const { code, out, err } = run(['rules', 'check']);
    expect(code).toBe(0);
    expect(out).toMatch(/^The rules are sound: \d+ questions, \d+ findings with \d+ examples/);
    expect(err).toMatch(/figures are read by no rule and no sentence/);
    expect(err).not.toContain('moss-treat-from');
    expect(run(['rules', 'check', '--quiet']).err).toBe('');
  });

  it.each([
    [['found'], [{ mossFraction: 0.01 }], 6, 'should be found for {"mossFraction":0.01}, but is notFound'],
    [['notFound'], [{ mossFraction: 'lots' }], 6, 'no possible answer: "mossFraction" is "lots". Allowed: '],
  ])('runs the examples of another pack: %j', ([verdict], list, code, says) => {
    const folder = packWith('findings/mossy.json', (finding: { examples: Json }) => ({
      ...finding,
      examples: { ...finding.examples, [verdict as string]: list },
    }));
    for (const args of [
      ['rules', 'check', folder],
      ['rules', 'check', '--pack', folder],
    ]) {
      const ran = run(args);
      expect(ran.code).toBe(code);
      expect(ran.out).toContain(`findings/mossy.json at /examples/${verdict}/0: `);
      expect(ran.out).toContain(says);
    }
    expect(run(['rules', 'graph', folder]).code).toBe(4);
  });
});

describe('rules show', () => {
  it('tells a finding in words, with its sources and who reads it', () => {
    const { code, out } = run(['rules', 'show', 'mossy', '--width', '200']);
    expect(code).toBe(0);
    expect(out).toContain('finding mossy');
    expect(out).toMatch(/when: "moss cover" \[mossFraction\] is at least 0\.1 fraction \[moss-treat-from\]/);
    expect(out).toMatch(/source: .+\(oregon-state-moss\), at: /);
    expect(out).toMatch(/read by: .*step rake-moss/);
  });

  it('tells every record of the pack without a raw condition or an open slot', () => {
    const ids = run(['rules', 'graph'])
      .out.match(/"(?:question|fact|finding|step|caution|verdict) [^"]+"(?= \[label)/g)
      ?.map((each) => each.slice(1, -1));
    expect(ids?.length).toBeGreaterThan(200);
    for (const id of (ids ?? []).filter((_, index) => index % 20 === 0)) {
      const { code, out } = run(['rules', 'show', id]);
      expect([id, code]).toEqual([id, 0]);
      expect(out).not.toMatch(/[{}]|\[object|undefined/);
      expect(out).toContain('read by: ');
    }
  });

  it('suggests the nearest name', () => {
    const { code, err } = run(['rules', 'show', 'mosy']);
    expect(code).toBe(3);
    expect(err).toContain('Did you mean "mossy"?');
  });
});

describe('rules graph', () => {
  // DOT language, graphviz.org/doc/info/lang.html: digraph ID { stmt; … }, with quoted ids and attribute lists.
  it('is DOT: every line a node or an arrow between nodes that are there', () => {
    const { code, out } = run(['rules', 'graph']);
    const lines = out.trimEnd().split('\n');
    expect(code).toBe(0);
    expect([lines[0], lines[1], lines.at(-1)]).toEqual(['digraph "seedbed-core" {', '  rankdir=LR;', '}']);
    const quoted = String.raw`"(?:[^"\\]|\\.)*"`;
    const node = new RegExp(`^  (${quoted}) \\[label=${quoted}, shape=[a-z0-9]+\\];$`);
    const arrow = new RegExp(`^  (${quoted}) -> (${quoted})(?: \\[style=dashed\\])?;$`);
    const nodes = new Set(lines.flatMap((line) => node.exec(line)?.[1] ?? []));
    const arrows = lines.slice(2, -1).filter((line) => !node.test(line));
    for (const line of arrows) {
      const [, from, to] = arrow.exec(line) ?? [];
      expect([line, nodes.has(from ?? ''), nodes.has(to ?? '')]).toEqual([line, true, true]);
    }
    expect(arrows).toContain('  "question mossFraction" -> "finding mossy";');
    expect(arrows).toContain('  "step sow" -> "step cover-seed" [style=dashed];');
  });
});

describe('rules coverage', () => {
  it('says what the examples bring to life and names what they never do', () => {
    const { code, out } = run(['rules', 'coverage']);
    expect(code).toBe(0);
    expect(out).toMatch(/^\d+ examples, each planned/);
    expect(out).toMatch(/findings: 33 of 33 fire\.\n/);
    expect(out).toMatch(/steps: \d+ of \d+ fire\./);
  });

  it('tells a step that no example can reach', () => {
    const folder = packWith('steps/lime.json', (step: Json) => ({ ...step, when: false }));
    expect(run(['rules', 'coverage', folder]).out).toMatch(/steps: [^:]*Never: [^.]*\blime\b/);
  });
});

describe('rules schema', () => {
  const schemas: Record<string, object> = {};
  beforeAll(() => Object.assign(schemas, JSON.parse(run(['rules', 'schema']).out)));
  const files: [string, string][] = [
    ['figure', 'figures/soil.json'],
    ['question', 'questions/look.json'],
    ['fact', 'facts.json'],
    ['finding', 'findings/mossy.json'],
    ['step', 'steps/scarify.json'],
    ['caution', 'cautions/machines.json'],
    ['material', 'materials/seed.json'],
    ['source', 'sources.json'],
    ['verdict', 'verdicts.json'],
    ['outlook', 'outlook.json'],
    ['watering', 'watering.json'],
    ['notDone', 'not-done.json'],
    ['together', 'together.json'],
    ['daySign', 'day-signs.json'],
    ['trouble', 'troubles.json'],
    ['manifest', 'pack.json'],
    ['climate', 'climate/uk-stations.json'],
    ['case', 'cases/01-spongy-green.json'],
    ['marking', 'cases/marking.json'],
  ];

  // Ajv is the reference validator here: the schemas are checked by the draft's own meta-schema and then used.
  it.each(files)('of a %s accepts %s, and refuses it with a stray or a missing key', (kind, file) => {
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schemas[kind] as object);
    const content = JSON.parse(readFileSync(join('rules', file), 'utf8')) as Json | Json[];
    expect(validate(content), JSON.stringify(validate.errors)).toBe(true);
    const record = (Array.isArray(content) ? content[0] : content) as Json;
    const [first] = Object.keys(record);
    const { [first as string]: _, ...less } = record;
    for (const wrong of [{ ...record, stray: 1 }, less]) {
      expect(validate(Array.isArray(content) ? [wrong] : wrong)).toBe(false);
    }
  });

  it('covers every kind, and one alone on request', () => {
    expect(Object.keys(schemas).sort()).toEqual(files.map(([kind]) => kind).sort());
    expect(JSON.parse(run(['rules', 'schema', 'step']).out)).toEqual(schemas.step);
    expect(run(['rules', 'schema', 'stp']).code).toBe(2);
  });
});

describe('rules with a task that is not there', () => {
  it.each([
    [['rules', 'chek'], 'Did you mean "check"?'],
    [['rules'], 'takes a task'],
    [['rules', 'show'], 'takes the id'],
    [['rules', 'check', 'rules', 'x'], '"x" is one word too many'],
  ])('%j exits with 2', (args, says) => {
    const { code, err } = run(args);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });
});

describe('rules whose waits cannot hold', () => {
  it('are told as such by "plan" and "batch", and neither breaks', () => {
    const folder = packWith('steps/cover-seed.json', (step: { after: Json[] }) => ({
      ...step,
      after: step.after.map((wait) =>
        wait.step === 'sow' ? { ...wait, minDays: { var: 'figures.settle-days' }, maxDays: 1 } : wait,
      ),
    }));
    const file = 'transcripts-examples/mossy-family-lawn/answers.json';
    const day = ['--today', '2027-03-13', '--pack', folder];
    const planned = run(['plan', file, ...day]);
    expect([planned.code, planned.out]).toEqual([3, '']);
    expect(planned.err).toMatch(/^No dates in the next three years keep every wait and season/);
    const { code, out } = run(['batch', '-', ...day], JSON.stringify(JSON.parse(readFileSync(file, 'utf8'))));
    expect([code, JSON.parse(out).error.code]).toEqual([3, 3]);
  });
});
