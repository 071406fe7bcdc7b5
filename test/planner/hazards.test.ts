/**
 * Each hazard has a line of its own in the plan of a lawn that has it, at the step where it arises, and none in the plan
 * of a lawn whose answers rule it out. Which hazard wants which words: common practice, no source, unless named; the
 * label, the handbook and the network's own advice go first.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Units } from '../../src/base/us-units.js';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { withoutDormant } from '../data/full-answers.js';
import { anyAnswers, anyToday, pack, planIfAny } from './any-lawn.js';

const SEED = 20261127;
const LAWNS = 150;

const mossy: Answers = (
  JSON.parse(readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8')) as {
    answers: Answers;
  }
).answers;

const planOf = (changes: Answers, units: Units = 'metric'): Plan =>
  assemblePlan({
    pack,
    answers: withoutDormant({ ...mossy, ...changes }),
    today: parseIsoDate('2027-03-13'),
    assumeAll: true,
    units,
  });

/** Lines that stand at the steps whose title fits, each with the word for how bad it is. */
const linesAt = (plan: Plan, title: RegExp): string[] =>
  plan.steps
    .filter((step) => title.test(step.title))
    .flatMap((step) =>
      plan.cautions
        .filter(({ id }) => step.cautions.includes(id))
        .map(({ severity, line }) => `${severity}: ${line}`),
    );
const told = (plan: Plan): string => markdownOf(documentOf(plan));

const clay: Answers = { buriedServices: 'none', soilTexture: 'clay', screwdriver: 'stops', puddles: 'hours' };
const granules: Answers = { labelForm: 'dry', labelRateGPerM2: 35, labelWaterLPerM2: 0 };
const sour: Answers = { soilPh: 5.2 };
const weedy: Answers = { weedFraction: 0.15 };
const wet: Answers = { puddles: 'day' };

interface Hazard {
  readonly hazard: string;
  /** How the line is marked, and its words. */
  readonly line: RegExp;
  /** Title of the step at which it stands. */
  readonly at: RegExp;
  readonly has: Answers;
  /** Answers that rule it out; absent where nothing does while the deed stands. */
  readonly not?: Answers;
}

const HAZARDS: readonly Hazard[] = [
  {
    hazard: 'a cut cable',
    line: /^warning: If the cable is cut .*touch neither.*unplug at the wall/,
    at: /^Scarify/,
    has: { scarifier: 'electric' },
    not: { scarifier: 'petrol' },
  },
  {
    hazard: 'a hand in an electric scarifier',
    line: /^danger: Switch it off and unplug it before you clear/,
    at: /^Scarify/,
    has: { scarifier: 'electric' },
    not: { scarifier: 'rake' },
  },
  {
    hazard: 'a hand in a petrol scarifier',
    line: /^danger: Stop the engine and take the spark-plug lead off before you clear/,
    at: /^Scarify/,
    has: { scarifier: 'petrol' },
    not: { scarifier: 'electric' },
  },
  {
    hazard: 'a hired machine without its guards',
    line: /^warning: Before you take or start a hired machine: guards on, stop lever/,
    at: /^Scarify/,
    has: { scarifier: 'petrol' },
    not: { scarifier: 'electric' },
  },
  {
    hazard: 'a corer without its guards',
    line: /^warning: Before you take or start a hired machine: guards on/,
    at: /^Core/,
    has: clay,
    not: { ...clay, buriedServices: 'marked' },
  },
  {
    hazard: 'exhaust fumes',
    line: /^danger: Never run an engine in a shed, garage/,
    at: /^Scarify/,
    has: { scarifier: 'petrol' },
    not: { scarifier: 'electric' },
  },
  {
    hazard: 'a struck pipe',
    line: /^danger: If you hit a cable or pipe: let go, get well away, keep everyone off, and call/,
    at: /^Loosen|^Dig|^Fork/,
    has: { buriedServices: 'marked' },
    not: { buriedServices: 'none' },
  },
  {
    hazard: 'a pipe nobody knows of',
    line: /^danger: Dig and spike as if live cables and gas pipes lie there/,
    at: /^Loosen|^Dig|^Fork/,
    has: { buriedServices: 'unknown' },
    not: { buriedServices: 'none' },
  },
  {
    hazard: 'the wrong kind of lime',
    line: /^warning: Ground limestone only\. Never quicklime, hydrated lime or builder's lime/,
    at: /^Lime$/,
    has: sour,
    not: { soilPh: 6.8 },
  },
  {
    hazard: 'a product that is swallowed',
    line: /^warning: If any product is swallowed, call .*Do not wait for signs/,
    at: /^Treat the moss/,
    has: {},
  },
  {
    hazard: 'somebody else on treated grass',
    line: /^caution: Adults, visitors and cats keep off too until the lawn is dry/,
    at: /^Treat the moss/,
    has: { dog: false, children: false },
    not: { mossTreatment: 'rake-only' },
  },
  {
    hazard: 'somebody else on fed grass',
    line: /^caution: Adults, visitors and cats keep off fed grass too/,
    at: /^First feed/,
    has: { dog: false, children: false },
  },
  {
    hazard: 'granules on the ground',
    // Michigan State University Extension: a day or two; Nebraska Extension: a couple of days. Two days are 48 hours.
    line: /^warning: After granules nobody plays .*dry, 48 h at the least/,
    at: /^Treat the moss/,
    has: granules,
    not: { labelForm: 'liquid' },
  },
  {
    hazard: 'drift',
    line: /^caution: Spray only in a light, steady breeze/,
    at: /^Treat the moss/,
    has: { labelForm: 'liquid' },
    not: granules,
  },
  {
    hazard: 'a powder that is stirred into water and drifts too',
    line: /^caution: Spray only in a light, steady breeze/,
    at: /^Treat the moss/,
    has: { ...granules, labelWaterLPerM2: 0.5 },
    not: granules,
  },
  {
    hazard: 'a weedkiller',
    line: /^warning: Keep children off weedkiller/,
    at: /^Weeds: look again/,
    has: { ...weedy, weedkiller: 'later' },
    not: { ...weedy, weedkiller: 'no' },
  },
  {
    hazard: 'a weedkiller that keeps seed out',
    line: /^notice: Weedkiller can stop seed for weeks/,
    at: /^Sow/,
    has: { ...weedy, weedkiller: 'later' },
    not: { ...weedy, weedkiller: 'no' },
  },
  {
    hazard: 'a cane at eye height',
    line: /^warning: Cap every cane/,
    at: /^Keep off/,
    has: {},
  },
  {
    hazard: 'a trench that falls in',
    line: /^warning: Dig no deeper than a spade and climb into no trench/,
    at: /^Find out where the water stands/,
    has: wet,
    not: { puddles: 'none' },
  },
  {
    hazard: 'a mower on a bank',
    line: /^warning: On a slope push the mower across, only on dry grass, and never pull it toward you/,
    at: /^Mow$/,
    has: { slopeDeg: 10 },
    not: { slopeDeg: 1 },
  },
  {
    hazard: 'a machine on a bank too steep for it',
    line: /^warning: No machine on ground steeper than 15°/,
    at: /^Scarify/,
    has: { slopeDeg: 20 },
    not: { slopeDeg: 1 },
  },
];

describe('a plan', () => {
  it.each(HAZARDS)('warns of $hazard where it arises', ({ line, at, has }) => {
    expect(linesAt(planOf(has), at)).toContainEqual(expect.stringMatching(line));
  });

  it.each(HAZARDS.filter(({ not }) => not !== undefined))(
    'says nothing of $hazard once an answer has settled it',
    ({ line, at, not = {} }) => {
      const plan = planOf(not);
      const words = new RegExp(line.source.replace(/^\^\w+: /, ''));
      expect(linesAt(plan, at)).not.toContainEqual(expect.stringMatching(line));
      const elsewhere = plan.cautions.filter((caution) => words.test(caution.line));
      expect(elsewhere.flatMap(({ forSteps }) => forSteps).filter((id) => titleOf(plan, id, at))).toEqual([]);
    },
  );

  it('prints every line of a step beside the work, with its word', () => {
    const plan = planOf({ scarifier: 'electric' });
    const text = told(plan);
    const words = { danger: 'Danger', warning: 'Warning', caution: 'Caution', notice: 'Notice', note: '' };
    for (const { severity, line } of plan.cautions)
      if (severity !== 'note') expect(text).toContain(`**${words[severity]}.** ${line}`);
  });

  it('tells no spraying of granules and no granules of a liquid', () => {
    const treats = (text: string): string => /### \d+\. Treat the moss[\s\S]*?\n### /.exec(text)?.[0] ?? '';
    const dry = treats(told(planOf(granules)));
    const liquid = treats(told(planOf({ labelForm: 'liquid' })));
    expect(dry).toContain('Treat the moss');
    expect(liquid).toContain('Treat the moss');
    expect(dry).not.toMatch(/breeze|nozzle|rinsings|dead calm/i);
    expect(liquid).not.toMatch(/granule|grains|dry run/i);
  });

  it('gives no product a word where no weedkiller is meant to be used', () => {
    const plan = planOf({ ...weedy, weedkiller: 'no' });
    expect(plan.steps.some(({ title }) => title.startsWith('Weeds: look again'))).toBe(true);
    expect(linesAt(plan, /^Weeds: look again/)).toEqual([]);
  });
});

const titleOf = (plan: Plan, id: string, at: RegExp): boolean =>
  plan.steps.some((step) => step.id === id && at.test(step.title));

/** What belongs to a mower, whoever owns it and whatever drives it. */
const MOWER: readonly (readonly [string, RegExp])[] = [
  // US safety standard for walk-behind mowers, 16 CFR 1205: a label against contact with the blade.
  ['the blade', /^danger: Unplug the mower, take out its battery or pull the spark-plug lead before/],
  [
    'stones, children and animals',
    /^warning: Walk the lawn first for stones.*Children and animals stay indoors/,
  ],
  ['the cable', /^warning: A mower with a cable: .*RCD/],
  ['the fumes', /^danger: A mower with an engine: .*the fumes kill/],
];

const made = fc
  .sample(fc.tuple(anyAnswers, anyToday), { numRuns: LAWNS, seed: SEED })
  .flatMap(([answers, today]) => planIfAny({ pack, answers, today, assumeAll: true }) ?? []);

describe('every step with a mower', () => {
  const steps = made.flatMap((plan) =>
    plan.steps
      .filter(({ tools }) => tools.some(({ title }) => /mower/i.test(title)))
      .map((step) => ({ plan, step })),
  );

  it('is met often enough to say so', () => {
    expect(steps.length).toBeGreaterThan(100);
    expect(new Set(steps.map(({ step }) => step.title)).size).toBeGreaterThanOrEqual(4);
  });

  it.each(MOWER)('warns of %s', (_, line) => {
    for (const { plan, step } of steps) {
      const exact = new RegExp(`^${step.title.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
      expect(linesAt(plan, exact), step.title).toContainEqual(expect.stringMatching(line));
    }
  });

  it('and no step without one speaks of a mower with a cable', () => {
    for (const plan of made)
      for (const { title, tools } of plan.steps)
        if (!tools.some((tool) => /mower/i.test(tool.title)))
          expect(
            linesAt(plan, new RegExp(`^${title.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`)).join(),
          ).not.toMatch(/A mower with a cable/);
  });
});

describe('a page for America', () => {
  // GFCI trips at 4 to 6 mA, an RCD at 30 mA; the emergency number is 911, poison goes to the national Poison Help line.
  const BRITISH =
    /.{0,40}(\bRCD\b|30 mA\b|\bsocket|\bmains\b|call 111\b|\bjabs?\b|[Ss]park-plug lead|\bthe lead\b)/g;

  it.each([
    ['electric scarifier', { scarifier: 'electric' }],
    ['petrol scarifier', { scarifier: 'petrol' }],
    ['corer and granules', { ...clay, ...granules }],
    ['lime and weeds', { ...sour, ...weedy, weedkiller: 'later' }],
    ['wet ground with something buried', { ...wet, buriedServices: 'marked' }],
  ] as const)('has no British plug and no British number on it: %s', (_, changes) => {
    const text = told(planOf(changes as Answers, 'us'));
    expect(text.match(BRITISH) ?? []).toEqual([]);
    expect(text).toMatch(/GFCI/);
  });

  it('names 911, Poison Help and 811 where a British one names its own', () => {
    const text = told(planOf({ buriedServices: 'marked' }, 'us'));
    expect(text).toContain('call Poison Help or 911');
    expect(text).toContain('Call 811');
    const { cautions, shopping } = planOf({ buriedServices: 'marked' });
    const british = JSON.stringify([cautions.map(({ line, detail }) => line + detail), shopping]);
    expect(british).not.toMatch(/\b(911|811|GFCI)\b/);
    expect(british).toMatch(/30 mA RCD/);
  });
});
