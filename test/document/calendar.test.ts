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
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
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
    const parts = plan.steps.flatMap(({ parts }) => parts);
    expect(events).toHaveLength(parts.length + plan.watering.length + plan.outlook.length);
    for (const step of plan.steps) {
      const [first, last] = [step.parts[0], step.parts.at(-1)];
      const own = events.filter(({ uid }) => uid.split('.')[0]?.replace(/-\d+$/, '') === step.id);
      expect(own.map(({ summary }) => summary).join(), step.id).toContain(step.title);
      expect(own[0]?.start.toString()).toBe(first?.startOn);
      const lastDay = (last?.endOn ?? '') > step.endOn ? last?.endOn : step.endOn;
      // The end is the day after.
      expect(own.at(-1)?.end.toString()).toBe(addDays(lastDay as Plan['madeOn'], 1));
      expect(own[0]?.description).toContain('Done when: ');
      // Whoever reads only the entry is warned as in the plan.
      for (const { id, severity, line } of plan.cautions)
        if (step.cautions.includes(id) && severity !== 'note') expect(own[0]?.description).toContain(line);
    }
  });

  it('has all-day events that end after they begin, one alarm each, and no two of one name', () => {
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
          expect(event.getAllSubcomponents('valarm')).toHaveLength(1);
        }
      }),
      { numRuns: 60, seed: 5545 },
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
    const amounts = { litresPerDay: 100, mmPerTurn: 7, litresPerTurn: 350, rainMmPerDay: null, means: null };
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

  it('keeps its names when the plan is made again on another day', () => {
    const [name] = journeys as [string];
    const plan = planOf(name);
    const later = { ...plan, madeOn: addDays(plan.madeOn, 7) };
    const names = (each: Plan) => eventsOf(calendarOf(each)).map(({ uid }) => uid);
    expect(names(later)).toEqual(names(plan));
  });
});

describe('RFC 5545', () => {
  it('3.6.1: 28 June to 8 July 2007 inclusive ends on the 9th', () => {
    const plan = planOf(journeys[0] as string);
    const [step] = plan.steps as [Plan['steps'][number]];
    const [startOn, endOn] = [parseIsoDate('2007-06-28'), parseIsoDate('2007-07-08')];
    const text = calendarOf({
      ...plan,
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
