/**
 * The calendar file, read back by ical.js (a general-purpose reader), and against RFC 5545 (Desruisseaux 2009):
 * sections 3.1 (75 octets, folding), 3.3.11 (escaping) and 3.6.1 (all-day events with an end that is not included).
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { addDays, parseIsoDate } from '../../src/base/dates.js';
import { calendarOf } from '../../src/document/calendar.js';
import { asText, folded } from '../../src/document/calendar-lines.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan, type PlanInput } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { reworked } from '../../src/planner/rework.js';
import { times } from '../depth.js';
import { anyLawn, anyToday, pack, planIfAny } from '../planner/any-lawn.js';

const examples = new URL('../../transcripts-examples/', import.meta.url);
const journeys = readdirSync(examples).filter((name) =>
  readdirSync(new URL(name, examples)).includes('journey.json'),
);
const read = (name: string, file: string) =>
  JSON.parse(readFileSync(new URL(`${name}/${file}`, examples), 'utf8'));
const planOf = (name: string): Plan =>
  assemblePlan({
    pack,
    answers: read(name, 'answers.json').answers,
    today: parseIsoDate(read(name, 'journey.json').today),
    assumeAll: true,
  });

const eventsOf = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => ({
    event,
    uid: String(event.getFirstPropertyValue('uid')),
    summary: String(event.getFirstPropertyValue('summary')),
    description: String(event.getFirstPropertyValue('description')),
    start: event.getFirstPropertyValue('dtstart') as ICAL.Time,
    end: event.getFirstPropertyValue('dtend') as ICAL.Time,
  }));

function everyLineFits(text: string): void {
  expect(text.endsWith('\r\n')).toBe(true);
  for (const line of text.split('\r\n')) {
    expect(Buffer.byteLength(line), line).toBeLessThanOrEqual(75);
    expect(line).not.toMatch(/[\r\n\ufffd]/);
  }
}

describe('a plan as a calendar file', () => {
  it.each(journeys)('of %s has every part of every step on its days', (name) => {
    const plan = planOf(name);
    const text = calendarOf(plan);
    everyLineFits(text);
    const events = eventsOf(text);
    // Watering stands week by week, as the table has it, and not once more as a step.
    const steps = plan.steps.filter(({ id }) => id !== 'water-in' || plan.watering.length === 0);
    const parts = steps.flatMap(({ parts }) => parts);
    expect(events).toHaveLength(parts.length + plan.watering.length + plan.outlook.length);
    for (const step of steps) {
      const [first, last] = [step.parts[0], step.parts.at(-1)];
      const own = events.filter(({ uid }) => uid.split('.')[0]?.replace(/-\d+$/, '') === step.id);
      expect(own.map(({ summary }) => summary).join(), step.id).toContain(step.title);
      const lastDay = (last?.endOn ?? '') > step.endOn ? last?.endOn : step.endOn;
      if (plan.datesKnownTo === 'month') {
        // Whole months, and a title that doubts them.
        expect(own[0]?.start.toString()).toBe(`${first?.startOn.slice(0, 7)}-01`);
        expect(own.at(-1)?.end.toString()).toMatch(/-01$/);
        expect(String(own.at(-1)?.end) > String(lastDay)).toBe(true);
        for (const { summary } of own) expect(summary).toMatch(/\?$/);
      } else {
        expect(own[0]?.start.toString()).toBe(first?.startOn);
        // The end is the day after.
        expect(own.at(-1)?.end.toString()).toBe(addDays(lastDay as Plan['madeOn'], 1));
      }
      expect(own[0]?.description).toContain('Done when: ');
      // Whoever reads only the entry is warned as in the plan.
      for (const { id, severity, line } of plan.cautions)
        if (step.cautions.includes(id) && severity !== 'note') expect(own[0]?.description).toContain(line);
    }
  });

  it('has all-day events that end after they begin, one alarm each where the day is known, and no two of one name', () => {
    fc.assert(
      fc.property(anyLawn, anyToday, (answers, today) => {
        const plan = planIfAny({ pack, answers, today, assumeAll: true });
        if (plan === undefined) return;
        const text = calendarOf(plan);
        everyLineFits(text);
        const events = eventsOf(text);
        expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
        for (const { event, start, end } of events) {
          expect([start.isDate, end.isDate]).toEqual([true, true]);
          expect(end.compare(start)).toBe(1);
          expect(event.getAllSubcomponents('valarm')).toHaveLength(plan.datesKnownTo === 'day' ? 1 : 0);
        }
      }),
      { numRuns: times(20, 60), seed: 5545 },
    );
  });

  it('of a lawn in parts keeps every part as long as the work on it lasts, and says how often to water', () => {
    const plan = planOf(journeys[0] as string);
    const [step] = plan.steps as [Plan['steps'][number]];
    const [one, two, until] = ['2027-09-05', '2027-09-12', '2027-11-14'].map((day) => parseIsoDate(day)) as [
      Plan['madeOn'],
      Plan['madeOn'],
      Plan['madeOn'],
    ];
    const parts = [one, two].map((day) => ({ startOn: day, endOn: day }));
    const period = { fromOn: one, untilOn: two, weeks: 'weeks 4 to 6', turnsPerDay: 2 / 7, mmPerDay: 2 };
    const amounts = {
      litresPerDay: 100,
      mmPerTurn: 7,
      litresPerTurn: 350,
      workMinPerDay: 10,
      rainMmPerDay: null,
      means: null,
    };
    const from = { formula: 'seedbed-water', figures: [], answers: [], basis: 'published' } as const;
    const events = eventsOf(
      calendarOf({
        ...plan,
        steps: [{ ...step, id: 'keep-off', startOn: one, endOn: until, parts }],
        watering: [{ ...period, ...amounts, from, aim: 'Seldom and deep.' }],
        outlook: [],
      }),
    );
    // By hand: the second part is kept off for 63 days, from 12 September to 14 November; so is the first.
    expect(events.map(({ end }) => end.toString())).toEqual(['2027-11-08', '2027-11-15', '2027-09-13']);
    expect(events[2]?.summary).toBe('Water the seed twice a week');
  });

  it('has watering once, by weeks, with how to do it and what to beware of', () => {
    const plan = planOf('mossy-family-lawn');
    const step = plan.steps.find(({ id }) => id === 'water-in') as Plan['steps'][number];
    const events = eventsOf(calendarOf(plan)).filter(({ summary }) => summary.startsWith('Water'));
    expect(events.map(({ summary }) => summary)).toEqual([
      'Water the seed 3 times a day',
      'Water the seed twice a day',
      'Water the seed once a day',
      'Water the seed twice a week',
    ]);
    expect(events[0]?.start.toString()).toBe(step.startOn);
    for (const { description } of events) {
      for (const task of step.how) expect(description).toContain(task);
      expect(description).toMatch(/Each time: .*L/);
    }
  });

  describe('imported twice', () => {
    const input = (today: string, more: Answers = {}): PlanInput => {
      const { startOn: _, ...answers } = read('mossy-family-lawn', 'answers.json').answers;
      return { pack, answers: { ...answers, ...more }, today: parseIsoDate(today), assumeAll: true };
    };
    const namesOf = (plan: Plan) => eventsOf(calendarOf(plan)).map(({ uid }) => uid);
    const sequenceOf = (plan: Plan) =>
      Number(eventsOf(calendarOf(plan))[0]?.event.getFirstPropertyValue('sequence'));
    const first = assemblePlan(input('2027-03-13'));

    it('after it was made again, it replaces itself, and says that it is the later one', () => {
      const again = assemblePlan(input('2027-03-20', { budget: 50, dog: false }));
      const kept = namesOf(again).filter((name) => namesOf(first).includes(name));
      expect(kept.length).toBeGreaterThan(10);
      // Only what one of the two plans does not have at all is new.
      for (const name of namesOf(again))
        if (!kept.includes(name)) expect(first.steps.map(({ id }) => id)).not.toContain(name.split('.')[0]);
      expect(sequenceOf(again)).toBe(sequenceOf(first) + 7);
    });

    it("next year's plan leaves this year's entries alone", () => {
      const names = namesOf(assemblePlan(input('2028-03-13')));
      expect(names.filter((name) => namesOf(first).includes(name))).toEqual([]);
    });

    it('keeps its names when following it moves the sowing into another year', () => {
      const told = { kind: 'done', step: 'treat-moss', note: '', asItShould: null } as const;
      const [startOn, toldOn] = [parseIsoDate('2027-03-23'), parseIsoDate('2027-11-01')];
      const { plan } = reworked(input('2027-03-13'), [{ ...told, startOn, endOn: startOn, toldOn }], toldOn);
      expect(plan.steps.find(({ id }) => id === 'sow')?.startOn.slice(0, 4)).toBe('2028');
      const kept = namesOf(plan).filter((name) => namesOf(first).includes(name));
      expect(kept).toHaveLength(namesOf(plan).length);
    });

    it('of two lawns with names of their own are two', () => {
      const back = assemblePlan(input('2027-03-13', { lawnName: 'Back' }));
      const front = assemblePlan(input('2027-03-13', { lawnName: 'Front' }));
      expect(namesOf(back).filter((name) => namesOf(front).includes(name))).toEqual([]);
    });

    it('after the sowing has no weeks of watering that are over', () => {
      const plan = { ...first, madeOn: addDays(first.watering[1]?.untilOn as Plan['madeOn'], 1) };
      const events = eventsOf(calendarOf(plan));
      expect(events.filter(({ summary }) => summary.startsWith('Water the seed'))).toHaveLength(2);
      for (const { end } of events) expect(end.toString() > plan.madeOn).toBe(true);
    });
  });
});

describe('RFC 5545', () => {
  it('3.6.1: 28 June to 8 July 2007 inclusive ends on the 9th', () => {
    const plan = planOf(journeys[0] as string);
    const [step] = plan.steps as [Plan['steps'][number]];
    const [startOn, endOn] = [parseIsoDate('2007-06-28'), parseIsoDate('2007-07-08')];
    const text = calendarOf({
      ...plan,
      madeOn: startOn,
      steps: [{ ...step, startOn, endOn, parts: [{ startOn, endOn }] }],
      watering: [],
      outlook: [],
    });
    expect(text).toContain('DTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n');
  });

  it('3.3.11: a line break becomes \\n, and a comma, a semicolon and a backslash stand behind a backslash', () => {
    expect(asText('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
    );
    expect(asText('a, b; c\\d: e')).toBe('a\\, b\\; c\\\\d: e');
  });

  it('3.1: what is folded unfolds to the same line, and no character is cut', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 400 }).filter((text) => !/[\r\n]/.test(text)),
        (line) => {
          const text = folded(line);
          for (const each of text.split('\r\n')) expect(Buffer.byteLength(each)).toBeLessThanOrEqual(75);
          expect(text.replaceAll('\r\n ', '')).toBe(line);
        },
      ),
    );
  });
});
