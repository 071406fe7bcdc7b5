/** When no dates hold: what is said of it, and that it is so. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan, type PlanInput, ScheduleClash } from '../../src/planner/assemble-plan.js';
import { clashIn, undatable } from '../../src/planner/clash.js';
import { NO_TIMING } from '../../src/planner/computed-facts.js';
import { startsKeeping } from '../../src/planner/demands.js';
import { planLawn } from '../../src/planner/plan-lawn.js';
import { reworked } from '../../src/planner/rework.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { indexPack, type Pack } from '../../src/rules/pack.js';
import type { Step } from '../../src/rules/schema.js';
import { pack } from './any-lawn.js';

const on = parseIsoDate;
const file = readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8');
const { answers: family } = JSON.parse(file) as { answers: Answers };

/** The pack with some steps changed. */
const packWith = (changes: Readonly<Record<string, (step: Step) => Step>>): Pack =>
  indexPack({ ...pack, steps: pack.steps.map((step) => changes[step.id]?.(step) ?? step) });
const inSeason =
  (from: string, until: string) =>
  (step: Step): Step => ({
    ...step,
    window: {
      between: [{ from, until }],
      why: 'By these rules.',
      sources: [],
    },
  });

function clashOf(input: Omit<PlanInput, 'assumeAll'>): string {
  try {
    assemblePlan({ ...input, assumeAll: true });
  } catch (error) {
    if (error instanceof ScheduleClash) return error.message;
    throw error;
  }
  throw new Error('dates hold');
}

describe('a clash of waits and seasons', () => {
  it('is told as the last day for the one, the first for the other and the days between', () => {
    // 20 September 2027 + 14 days = 4 October, four days after the season; a year later the moss would have regrown.
    const own = packWith({
      'treat-moss': inSeason('09-20', '10-15'),
      sow: inSeason('08-15', '09-30'),
    });
    const message = clashOf({
      pack: own,
      answers: { ...family, labelWaitDays: 14, workDays: 'any' },
      today: on('2027-03-13'),
    });
    expect(message).toContain(
      '"Sow" must be begun by Thursday 30 September 2027, but for that "Treat the moss" cannot be begun before ' +
        'Monday 20 September 2027, and from the one to the other it takes 14 days: that would be Monday 4 October 2027.',
    );
    expect(message).toContain(
      '"Treat the moss" has its season from 20 September to 15 October. By these rules.',
    );
    expect(message).toContain('"Sow" has its season from 15 August to 30 September. By these rules.');
    expect(message).toMatch(/"[^"]+" comes at least 14 days after "Treat the moss". The label's wait/);
    expect(message).toMatch(/comes at most \d+ days after/);
    expect(message).not.toContain('weekends');
    // 20 September + 10 days is the last day of the season.
    expect(message).toContain('Label wait (labelWaitDays): 10 days, and not 14 days');
    expect(message).toContain('Moss treatment (mossTreatment): by raking alone');
  });

  // 1 August 2027 is a Sunday, 60 days later it is Thursday 30 September, and the weekend after that comes too late.
  const lerwick: Answers = { ...family, place: 'Lerwick', labelWaitDays: 60, workDays: 'weekends' };
  // Rules by which no spring is late: the season of Lerwick is then too short for such a wait.
  const strict = packWith(
    Object.fromEntries(
      pack.steps.map(({ id }) => [
        id,
        ({ window, ...step }) =>
          window === undefined
            ? step
            : {
                ...step,
                window: { ...window, between: window.between.map(({ lateUntil: _, ...rule }) => rule) },
              },
      ]),
    ),
  );
  const [today, spring] = [on('2027-03-13'), { pack: strict, today: on('2027-03-13') }];

  it('names the weekends where they are part of it, and the answers that would each undo it', () => {
    const message = clashOf({ ...spring, answers: lerwick });
    expect(message).toContain('Work is done at weekends only, as you said.');
    expect(message).toContain('by the warmth of the soil here');
    expect(message).toContain('that would be Saturday 2 October 2027.');
    for (const changed of [
      { workDays: 'any' },
      { mossTreatment: 'rake-only' },
      { labelWaitDays: 56 },
    ] as const) {
      const [[id, value]] = Object.entries(changed) as [[string, string | number]];
      expect(message).toContain(`(${id}): `);
      if (typeof value === 'number') expect(message).toContain(`${value} days, and not 60 days`);
      expect(
        assemblePlan({ ...spring, answers: { ...lerwick, ...changed }, assumeAll: true }).steps.length,
      ).toBeGreaterThan(5);
    }
    // A day more, and it is no way out.
    expect(clashOf({ ...spring, answers: { ...lerwick, labelWaitDays: 57 } })).toContain('57 days');
  });

  it('names the area for which no dates hold, and only that', () => {
    const perArea = (id: string): boolean => pack.questionById.get(id)?.perArea === true;
    const pick = (isPicked: (id: string) => boolean): Answers =>
      Object.fromEntries(Object.entries(lerwick).filter(([id]) => isPicked(id)));
    const own = pick(perArea);
    const sound = { ...own, mossFraction: 0, weedFraction: 0, bareFraction: 0, thatchDepthMm: 6 };
    const make = (back: Answers) => () =>
      planLawn({
        ...spring,
        answers: pick((id) => !perArea(id)),
        areas: [
          { name: 'front', answers: sound },
          { name: 'back', answers: back },
        ],
        assumeAll: true,
      });
    expect(make(own)).toThrow(/^Back: /);
    expect(make(sound)().areas).toHaveLength(2);
  });

  it('says that a wait nobody answered is assumed', () => {
    const { labelWaitDays: _, ...unsaid } = lerwick;
    const tight = packWith({
      'treat-moss': inSeason('09-20', '10-15'),
      sow: inSeason('08-15', '09-30'),
    });
    const message = clashOf({ pack: tight, answers: unsaid, today });
    expect(message).toMatch(/Label wait \(labelWaitDays\): \d+ days?, and not \d+ days, which is assumed/);
  });

  it('is as long as it must be: all of it cannot be kept, and without any one of it dates hold', () => {
    const scopeOf = (timing: typeof NO_TIMING) =>
      scopeFor({ pack: strict, answers: lerwick, today, assume: 'all', timing });
    const failed = undatable({ pack: strict, scopeOf, today, progress: undefined }, NO_TIMING);
    const demands = clashIn(failed) ?? [];
    expect(demands.length).toBeGreaterThan(3);
    expect(startsKeeping(failed.net, demands)).toBeUndefined();
    for (const demand of demands)
      expect(
        startsKeeping(
          failed.net,
          demands.filter((each) => each !== demand),
        ),
      ).toBeDefined();
  });

  it('names two steps that each wait for the other, and that no answer helps', () => {
    const circle = packWith({
      cut: (step) => ({ ...step, after: [...step.after, { step: 'sow', minDays: 1, why: 'By mistake.' }] }),
    });
    const message = clashOf({ pack: circle, answers: { ...family, mossTreatment: 'rake-only' }, today });
    expect(message).toContain('"Mow" comes at least 1 day after "Sow". By mistake.');
    expect(message).toMatch(/"Sow" comes no sooner than "[^"]+"\./);
    expect(message).toContain('No single answer that you decide would bring dates.');
  });

  it('tells of a season without a weekend', () => {
    // 3 May is a Monday in 2027, a Wednesday in 2028 and a Thursday in 2029.
    const short = packWith({ sow: inSeason('05-03', '05-03') });
    const message = clashOf({
      pack: short,
      answers: { ...family, startOn: '2027-03-13', mossTreatment: 'rake-only', workDays: 'weekends' },
      today,
    });
    expect(message).toContain('"Sow" has its season from 3 May to 3 May.');
    expect(message).toContain('Work is done at weekends only');
    expect(message).toContain('Working days (workDays): any day');
    expect(message.split('\n').filter((line) => line.startsWith('  - ')).length).toBeLessThan(5);
  });

  it('does not come of a first day, or a return to the plan, many years later', () => {
    const input: PlanInput = { pack, answers: family, today, assumeAll: false };
    const treated = {
      kind: 'done',
      step: 'treat-moss',
      startOn: today,
      endOn: today,
      asItShould: true,
      note: '',
      toldOn: today,
    } as const;
    const later = reworked(input, [treated], on('2033-02-28'));
    expect(later.plan.steps.find(({ id }) => id === 'sow')?.startOn.slice(0, 4)).toBe('2033');
    const startOn = on('2040-02-29');
    const far = assemblePlan({ ...input, answers: { ...family, startOn } });
    expect(far.steps.every((step) => step.startOn >= startOn)).toBe(true);
  });

  it('or else dates, and nothing third, is what comes of any rules about seasons and waits', () => {
    const monthDay = fc
      .record({ month: fc.integer({ min: 1, max: 12 }), day: fc.integer({ min: 1, max: 28 }) })
      .map(({ month, day }) => `${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`);
    const season = fc.tuple(monthDay, monthDay);
    let clashes = 0;
    fc.assert(
      fc.property(
        fc.record({ treat: season, scarify: season, sow: season }),
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom('any', 'weekends'),
        fc.constantFrom('2027-02-28', '2027-12-31', '2028-02-29'),
        (seasons, labelWaitDays, workDays, day) => {
          const own = packWith({
            'treat-moss': inSeason(...seasons.treat),
            scarify: inSeason(...seasons.scarify),
            sow: inSeason(...seasons.sow),
          });
          const answers = { ...family, startOn: day, labelWaitDays, workDays };
          try {
            assemblePlan({ pack: own, answers, today: on(day), assumeAll: true });
          } catch (error) {
            if (!(error instanceof ScheduleClash)) throw error;
            clashes++;
            const said = error.message.split('\n').filter((line) => line.startsWith('  - '));
            expect(said.length).toBeGreaterThan(1);
            expect(error.message).not.toMatch(/\{|undefined|NaN/);
          }
        },
      ),
      { numRuns: 40, seed: 20261125 },
    );
    expect(clashes).toBeGreaterThan(5);
  });
});
