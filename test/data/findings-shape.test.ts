import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { callOf, namesIn } from '../../src/rules/call.js';
import { type Expression, findingSchema, sourceSchema } from '../../src/rules/schema.js';
import { questionSchema } from '../../src/rules/schema-question.js';

const rules = new URL('../../rules/', import.meta.url);
const readJson = (path: string): unknown => JSON.parse(readFileSync(new URL(path, rules), 'utf8'));
const filesOf = (folder: string): string[] => readdirSync(new URL(folder, rules));

const files = filesOf('findings/');
const byFile = files.map((name) => ({ name, finding: findingSchema.parse(readJson(`findings/${name}`)) }));
const findings = byFile.map(({ finding }) => finding);
const sourceIds = z
  .array(sourceSchema)
  .parse(readJson('sources.json'))
  .map(({ id }) => id);
const questions = filesOf('questions/').flatMap((name) =>
  z.array(questionSchema).parse(readJson(`questions/${name}`)),
);
const questionIds = questions.map(({ id }) => id);

/** The steps a plan can hold; a finding may lead only to these. */
const STEPS =
  `wait-for-season soil-test thin-shade fix-drainage sharpen-mower raise-cut weed-by-hand soak treat-moss
  cut low-cut rake-moss scarify clear core fork brush-cores clear-old-turf dig-over firm-and-rake wetting-agent lime
  soil-bed catch-test sow patch-sow cover-seed pin-net water-in keep-off first-mow first-feed feed flush-patches rest-worn
  weedkiller-later plant-instead look-again wait-for-green leave-young tend-seedlings root-turf look-at-young
  name-the-grubs net-turf treat-chafers treat-leatherjackets count-again scratch cores-off second-half`.split(
    /\s+/,
  );

/** Every finding that the rest of the pack reads by name. */
const WANTED =
  `mossy thick-thatch excess-thatch rooted-thatch compacted probe-too-dry slow-drainage poor-drainage
  too-dark shaded half-shaded drought-dormant drought-stressed dead-turf worn weedy weeds-take-over coarse-grass
  mown-too-short blunt-mower hungry acid water-repellent dog-patches root-grubs uneven wrong-levels steep
  recent-weedkiller near-water winter-dormant young-grass chafers leatherjackets`.split(/\s+/);

/** Numbers that stand bare in a condition, at every depth. */
function numbersIn(expression: Expression): number[] {
  if (typeof expression === 'number') return [expression];
  if (Array.isArray(expression)) return expression.flatMap(numbersIn);
  return callOf(expression)?.operands.flatMap(numbersIn) ?? [];
}

const asText = (answers: object): string => JSON.stringify(Object.entries(answers).sort());

describe('the folder of findings', () => {
  it('keeps one finding a file, named after its id', () => {
    expect(byFile.map(({ finding }) => `${finding.id}.json`)).toEqual(files);
  });

  it('holds every finding that the rest of the pack reads', () => {
    expect(findings.map(({ id }) => id)).toEqual(expect.arrayContaining(WANTED));
  });

  it('gives no two findings the same title', () => {
    expect(new Set(findings.map(({ title }) => title)).size).toBe(findings.length);
  });
});

describe.each(findings)('$id', (finding) => {
  const conditions = [finding.when, ...(finding.evidence ?? []).map(({ when }) => when)];
  const { found, notFound, cannotTell } = finding.examples;

  it('leads to steps that exist, each once', () => {
    expect(finding.leadsTo).not.toEqual([]);
    expect(STEPS).toEqual(expect.arrayContaining([...finding.leadsTo]));
    expect(new Set(finding.leadsTo).size).toBe(finding.leadsTo.length);
  });

  it('takes its numbers from figures', () => {
    for (const number of conditions.flatMap(numbersIn)) expect([0, 1, -1]).toContain(number);
  });

  it('rests on published sources that the pack lists', () => {
    expect(finding.sources).not.toEqual([]);
    expect(sourceIds).toEqual(expect.arrayContaining(finding.sources.map(({ id }) => id)));
  });

  it('shows two ways to be found and two not to be, and what is too little to tell', () => {
    expect(found.length).toBeGreaterThanOrEqual(2);
    expect(notFound.length).toBeGreaterThanOrEqual(2);
    expect(cannotTell).toContainEqual({});
    expect(cannotTell.length).toBeGreaterThanOrEqual(2);
  });

  it('has no example that stands on two sides', () => {
    const all = [...found, ...notFound, ...cannotTell].map(asText);
    expect(new Set(all).size).toBe(all.length);
  });

  it('writes its examples in answers that a question can take', () => {
    for (const [name, value] of [...found, ...notFound, ...cannotTell].flatMap(Object.entries)) {
      expect(questionIds).toContain(name);
      const question = questions.find(({ id }) => id === name);
      if (question?.options) expect(question.options.map((option) => option.value)).toContain(value);
      if (question?.kind === 'yes-no') expect(typeof value).toBe('boolean');
      if (question?.kind === 'date' && value !== question.noDate?.value)
        expect(value).toMatch(/^\d{4}-\d{2}-\d{2}$/);
      if (question?.bounds) {
        expect(value).toBeGreaterThanOrEqual(question.bounds.min);
        expect(value).toBeLessThanOrEqual(question.bounds.max);
      }
    }
  });

  it('reads something in every condition, and each sign weighs for or against', () => {
    for (const condition of conditions) expect(namesIn(condition)).not.toEqual([]);
    const signs = finding.evidence ?? [];
    expect(new Set(signs.map(({ says }) => says)).size).toBe(signs.length);
    if (signs.length > 0) expect(signs.some(({ weight }) => weight > 0)).toBe(true);
  });

  it('speaks in calm whole sentences', () => {
    for (const text of [
      finding.why,
      finding.tellsApart,
      ...(finding.evidence ?? []).map(({ says }) => says),
    ]) {
      expect(text).toMatch(/^[A-Z].*\.$/);
      expect(text).not.toContain('!');
    }
    expect(finding.title).toMatch(/^[A-Z].*[^.!]$/);
  });
});

describe('signs that mislead', () => {
  const finding = (id: string) => findings.find((each) => each.id === id);
  const readBy = (id: string): string[] => {
    const { when, evidence = [] } = finding(id) ?? { when: false };
    return [when, ...evidence.map((sign) => sign.when)].flatMap(namesIn);
  };

  // Universities disagree whether acid soil brings moss (Clemson HGIC 2363 says so; Purdue PPDL 2018 and
  // Michigan State 1998 say not), so moss may never stand for a pH.
  it('never read acid soil out of moss', () => {
    expect(readBy('acid')).toEqual(['soilPh', 'figures.lime-ph-below']);
  });

  // Penn State UC178 as quoted: probe one to two days after a soak; sod may resist a probe and be healthy.
  it('count a hard probe only in moist soil', () => {
    for (const { when, says } of finding('compacted')?.evidence ?? []) {
      const isAgainst = says.includes('easily');
      if (namesIn(when).includes('screwdriver') && !isAgainst) {
        expect(namesIn(when)).toContain('facts.soilIsMoistEnoughToProbe');
      }
    }
    expect(readBy('compacted')).toContain('facts.soilIsMoistEnoughToProbe');
  });
});
