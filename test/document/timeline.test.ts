import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { timelineOf } from '../../src/document/timeline.js';
import type { PlanStep } from '../../src/planner/plan.js';
import { sow } from './sample-steps.js';

const NAME_COLUMNS = 24;
const [ONE_WEEK, MOST_COLUMNS] = [7, 40];

/** A step from a day to a day, or of one day. */
function step(title: string, from: string, until = from): PlanStep {
  return { ...sow, title, startOn: parseIsoDate(from), endOn: parseIsoDate(until) };
}

function linesOf(steps: readonly PlanStep[]): string[] {
  return timelineOf(steps)[0]?.value.split('\n') ?? [];
}

/** Without the names: the months, then a bar a step. */
function drawn(steps: readonly PlanStep[]): string[] {
  return linesOf(steps)
    .slice(0, -1)
    .map((line) => line.slice(NAME_COLUMNS + 1));
}

const NEW_YEAR = '2027-01-01';
const after = (days: number) => Temporal.PlainDate.from(NEW_YEAR).add({ days }).toString();
/** Two steps, the second on the day that many days after the first. */
const apart = (days: number) => [step('A', NEW_YEAR), step('B', after(days))];

describe('the drawing', () => {
  it('is one block of plain text: months, a row a step, the scale', () => {
    expect(timelineOf([step('Mow', '2027-01-01'), step('Wait', '2027-01-05', '2027-01-19')])).toEqual([
      {
        type: 'code',
        lang: 'text',
        value: [
          '                         Jan',
          '1. Mow                   #..',
          '2. Wait                  ###',
          'one column a week',
        ].join('\n'),
      },
    ]);
  });

  it('is nothing for a single step or none', () => {
    expect(timelineOf([])).toEqual([]);
    expect(timelineOf([step('A', '2027-01-01', '2027-06-01')])).toEqual([]);
  });

  it('starts a column every seventh day from the first step', () => {
    const steps = [
      step('first day', '2027-01-01'),
      step('seventh day', '2027-01-07'),
      step('eighth day', '2027-01-08'),
      step('seventh to eighth', '2027-01-07', '2027-01-08'),
      step('all', '2027-01-01', '2027-01-22'),
    ];
    expect(drawn(steps).slice(1)).toEqual(['#...', '#...', '.#..', '##..', '####']);
  });

  it('is as long as the step that ends last, wherever it stands', () => {
    const steps = [step('long', '2027-01-01', '2027-02-04'), step('short', '2027-01-08')];
    expect(drawn(steps).slice(1)).toEqual(['#####', '.#...']);
  });

  it('is one column when all is done in a week', () => {
    expect(drawn(apart(6)).slice(1)).toEqual(['#', '#']);
  });
});

describe('more than 40 weeks', () => {
  // 40 weeks are 280 days, the days 0 to 279; 80 weeks end with day 559.
  it.each([
    [279, 40, 'one column a week'],
    [280, 21, 'one column for 2 weeks'],
    [559, 40, 'one column for 2 weeks'],
    [560, 27, 'one column for 3 weeks'],
  ])('with a last day %i days after the first are %i columns: %s', (days, columns, scale) => {
    const steps = apart(days);
    const bars = drawn(steps).slice(1);
    expect(bars).toEqual([`#${'.'.repeat(columns - 1)}`, `${'.'.repeat(columns - 1)}#`]);
    expect(linesOf(steps).at(-1)).toBe(scale);
  });
});

describe('the months above', () => {
  it('stand over the column in which each is first seen', () => {
    // Weeks from 1 January: 5 February is the sixth, 5 March the tenth, 2 April the fourteenth.
    expect(drawn([step('A', '2027-01-01'), step('B', '2027-04-23')])[0]).toBe('Jan  Feb Mar Apr');
  });

  it('run over the new year', () => {
    // Weeks from 3 December: 7 January is the sixth, 4 February the tenth.
    expect(drawn([step('A', '2027-12-03'), step('B', '2028-02-18')])[0]).toBe('Dec  Jan Feb');
  });

  it('leave out the month of the beginning where it is nearly over and would hide the next', () => {
    // Weeks from 13 March: 3 April is the fourth, 1 May the eighth.
    expect(drawn([step('A', '2027-03-13'), step('B', '2027-05-20')])[0]).toBe('   Apr May');
  });

  it('are left out where the drawing ends before their name does', () => {
    expect(drawn([step('A', '2027-01-01'), step('B', '2027-04-09')])[0]).toBe('Jan  Feb Mar');
    expect(drawn([step('A', '2027-01-01'), step('B', '2027-04-16')])[0]).toBe('Jan  Feb Mar Apr');
  });
});

describe('the names', () => {
  const nameOf = (title: string) => linesOf([step(title, NEW_YEAR), step('B', NEW_YEAR)])[1];

  it.each([
    // The number, its stop and the space take three of the 24.
    ['x'.repeat(20), `1. ${'x'.repeat(20)}  #`],
    ['x'.repeat(21), `1. ${'x'.repeat(21)} #`],
    ['x'.repeat(22), `1. ${'x'.repeat(20)}… #`],
    ['x'.repeat(500), `1. ${'x'.repeat(20)}… #`],
    ['', `1.${' '.repeat(23)}#`],
  ])('are filled up or cut to 24: %s', (title, row) => {
    expect(nameOf(title)).toBe(row);
  });

  it('count the steps, with two digits from the tenth', () => {
    const rows = linesOf(Array.from({ length: 10 }, () => step('x'.repeat(30), NEW_YEAR))).slice(1, -1);
    expect(rows[8]).toBe(`9. ${'x'.repeat(20)}… #`);
    expect(rows[9]).toBe(`10. ${'x'.repeat(19)}… #`);
  });

  it('stay on their line, without control characters', () => {
    const row = nameOf('a\nb\u001b[31m');
    expect(row).toMatch(/^1\. a b.* #$/);
    expect(row).not.toContain('\u001b');
    expect(linesOf([step('a\n\n```\n# b', NEW_YEAR), step('B', NEW_YEAR)])).toHaveLength(4);
  });
});

describe('any job', () => {
  // The days come from temporal-polyfill, an independent implementation of the Temporal standard.
  const first = Temporal.PlainDate.from('2027-01-01');
  const spans = fc
    .tuple(
      fc.integer({ min: 0, max: 400 }),
      fc.array(fc.tuple(fc.nat(500), fc.nat(120)), { minLength: 1, maxLength: 12 }),
      fc.nat(60),
    )
    .map(([shift, later, lasts]) =>
      [[0, lasts] as const, ...later.sort((a, b) => a[0] - b[0])].map(([from, days]) => ({
        from: first.add({ days: shift + from }),
        until: first.add({ days: shift + from + days }),
      })),
    );
  const stepsOf = (job: readonly { from: Temporal.PlainDate; until: Temporal.PlainDate }[]) =>
    job.map(({ from, until }) => step('A', from.toString(), until.toString()));

  function weeksAColumn(steps: readonly PlanStep[]): number {
    const scale = linesOf(steps).at(-1) ?? '';
    return scale === 'one column a week' ? 1 : Number(/^one column for (\d+) weeks$/.exec(scale)?.[1]);
  }

  it('has a mark in just the columns whose days the step touches, at most 40 of them', () => {
    const property = fc.property(spans, (job) => {
      const steps = stepsOf(job);
      const days = ONE_WEEK * weeksAColumn(steps);
      const bars = drawn(steps).slice(1);
      expect(bars).toHaveLength(job.length);
      for (const [index, { from, until }] of job.entries()) {
        const bar = bars[index] ?? '';
        expect(bar.length).toBe(bars[0]?.length);
        expect(bar.length).toBeLessThanOrEqual(MOST_COLUMNS);
        for (const [column, mark] of [...bar].entries()) {
          const opens = job[0]?.from.add({ days: column * days }) ?? first;
          const closes = opens.add({ days: days - 1 });
          const touches =
            Temporal.PlainDate.compare(from, closes) <= 0 && Temporal.PlainDate.compare(until, opens) >= 0;
          expect(mark).toBe(touches ? '#' : '.');
        }
        // No day of the step lies behind the last column.
        const end = job[0]?.from.add({ days: bar.length * days }) ?? first;
        expect(Temporal.PlainDate.compare(until, end)).toBeLessThan(0);
      }
    });
    fc.assert(property, { numRuns: 200 });
  });

  it('uses no more weeks a column than 40 columns need', () => {
    const property = fc.property(spans, (job) => {
      const steps = stepsOf(job);
      const weeks = weeksAColumn(steps);
      if (weeks === 1) return;
      const last = job
        .map(({ until }) => until)
        .reduce((a, b) => (Temporal.PlainDate.compare(a, b) > 0 ? a : b));
      const daysInAll = (job[0]?.from ?? first).until(last).days + 1;
      expect(daysInAll).toBeGreaterThan(MOST_COLUMNS * ONE_WEEK * (weeks - 1));
    });
    fc.assert(property, { numRuns: 200 });
  });

  /** Each name with the column it stands over and the month in which that column, and the one before, begin. */
  function monthNames(job: readonly { from: Temporal.PlainDate; until: Temporal.PlainDate }[]) {
    const steps = stepsOf(job);
    const days = ONE_WEEK * weeksAColumn(steps);
    const monthOfColumn = (column: number) =>
      (job[0]?.from ?? first)
        .add({ days: column * days })
        .toLocaleString('en-US', { month: 'short', calendar: 'iso8601' });
    const line = drawn(steps)[0] ?? '';
    return [...line.matchAll(/\S+/g)].map(({ 0: name, index }) => ({
      name,
      month: monthOfColumn(index),
      before: index === 0 ? '' : monthOfColumn(index - 1),
    }));
  }

  it('has each name over a column that begins in its month, and a space between two names', () => {
    const property = fc.property(spans, (job) => {
      for (const { name, month } of monthNames(job)) expect(name).toBe(month);
    });
    fc.assert(property, { numRuns: 200 });
  });

  // Fails today: a name that found no room is set some columns later in its month, and pushes the next ones on.
  it('has each name over the first column of its month, never over a later one', () => {
    const property = fc.property(spans, (job) => {
      for (const { name, before } of monthNames(job)) expect(before).not.toBe(name);
    });
    fc.assert(property, { numRuns: 200 });
  });
});

describe('a cut name', () => {
  // Fails today: the title is cut by code units.
  it('holds no half of a character', () => {
    // The sign for a seedling is two code units, the 23rd and 24th here.
    const title = `${'x'.repeat(19)}\u{1f331} and more`;
    expect(linesOf([step(title, NEW_YEAR), step('B', NEW_YEAR)])[1]).not.toMatch(/\p{Surrogate}/u);
  });
});
