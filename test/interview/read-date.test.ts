import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { readAnswer } from '../../src/interview/read-answer.js';
import { question, readingOf, SAMPLES, TODAY, valueRead } from './read-samples.js';

const today = Temporal.PlainDate.from(TODAY);
const back = (duration: Temporal.DurationLike) => today.subtract(duration).toString();
const on = (duration: Temporal.DurationLike) => today.add(duration).toString();
/** The last or next such weekday, 1 for Monday, counted day by day by Temporal. */
function weekday(dayOfWeek: number, step: 1 | -1, count = 1): string {
  let date = today;
  for (let found = 0; found < count; ) {
    date = date.add({ days: step });
    if (date.dayOfWeek === dayOfWeek) found += 1;
  }
  return date.toString();
}

describe('a day that has passed', () => {
  it.each([
    ['today', TODAY],
    ['this morning', TODAY],
    ['3 hours ago', TODAY],
    ['yesterday', back({ days: 1 })],
    ['last night', back({ days: 1 })],
    ['the day before yesterday', back({ days: 2 })],
    ['Tuesday', weekday(2, -1)],
    ['last Tuesday', weekday(2, -1)],
    ['on Sunday', weekday(7, -1)],
    ['since Sunday', weekday(7, -1)],
    ['last Wednesday', weekday(3, -1)],
    ['Saturday before last', weekday(6, -1, 2)],
    ['two Saturdays ago', weekday(6, -1, 2)],
    ['a fortnight ago', back({ weeks: 2 })],
    ['two weeks ago', back({ weeks: 2 })],
    ['about 10 days ago', back({ days: 10 })],
    ['10 days', back({ days: 10 })],
    ['not for 10 days', back({ days: 10 })],
    ['ten days or so', back({ days: 10 })],
    ['a couple of days ago', back({ days: 2 })],
    ['a month ago', back({ months: 1 })],
    ['six months ago', back({ months: 6 })],
    ['half a year ago', back({ months: 6 })],
    ['2 years ago', back({ years: 2 })],
    ['last week', back({ weeks: 1 })],
    ['the 10th', '2026-11-10'],
    ['the 30th', '2026-10-30'],
    ['2026-11-20', '2026-11-20'],
    ['2026/3/4', '2026-03-04'],
    ['3 April', '2026-04-03'],
    ['3rd of April', '2026-04-03'],
    ['April 3', '2026-04-03'],
    ['3 April, 2025', '2025-04-03'],
    ['3 Apr 25', '2025-04-03'],
    ['25 December', '2025-12-25'],
    ['29 Feb', '2024-02-29'],
    ['Tuesday 3 March', '2026-03-03'],
    ['early March', '2026-03-05'],
    ['the beginning of March', '2026-03-05'],
    ['mid-April', '2026-04-15'],
    ['late May', '2026-05-25'],
    ['the end of May', '2026-05-31'],
    ['early December', '2025-12-05'],
    ['March 2025', '2025-03-15'],
    ['last month', '2026-10-15'],
    ['early last month', '2026-10-05'],
    ['early November', '2026-11-05'],
    ['last November', '2025-11-15'],
  ])('reads %j as %s', (typed, date) => {
    expect(valueRead('past', typed)).toBe(date);
  });

  it('asks which day is meant where day and month could each stand first', () => {
    for (const typed of ['3/4/2026', '3.4.26', '3-4-2026'])
      expect(readingOf('past', typed), typed).toEqual({
        kind: 'which',
        says: expect.stringContaining('two ways'),
        choices: [
          { value: '2026-04-03', label: 'Friday 3 April 2026' },
          { value: '2026-03-04', label: 'Wednesday 4 March 2026' },
        ],
      });
    expect(readingOf('past', '4/4/2026')).toMatchObject({ understood: 'Saturday 4 April 2026' });
  });

  it('offers the month first to those who measure in feet, and asks all the same', () => {
    for (const sample of ['past', 'ahead'] as const) {
      const year = sample === 'past' ? 2026 : 2027;
      const reading = readAnswer(SAMPLES[sample], `9/4/${year}`, TODAY, 'us');
      expect(reading.kind === 'which' && reading.choices.map(({ value }) => value)).toEqual([
        `${year}-09-04`,
        `${year}-04-09`,
      ]);
    }
  });

  it('takes the one reading that is possible: the calendar, a bound or the day of the week rules the other out', () => {
    // 8 December 2026 lies ahead; 12 August is past.
    expect(readingOf('past', '12/8/2026')).toMatchObject({ value: '2026-08-12' });
    expect(readingOf('ahead', '12/8/2026')).toMatchObject({ value: '2026-12-08' });
    // 3 April 2026 was a Friday, 4 March a Wednesday.
    expect(readingOf('past', 'Friday 3/4/2026')).toMatchObject({ value: '2026-04-03' });
    expect(readingOf('past', 'Wed 3/4/2026')).toMatchObject({ value: '2026-03-04' });
    expect(readingOf('past', 'Monday 3/4/2026')).toMatchObject({ kind: 'refused' });
    const lately = question({
      kind: 'date',
      bounds: { min: -200, max: 0, says: 'Half a year at the most.' },
    });
    expect(readAnswer(lately, '9/10/2026', TODAY)).toMatchObject({ kind: 'which' });
    expect(readAnswer(lately, '9/3/2026', TODAY)).toMatchObject({ value: '2026-09-03' });
    expect(readAnswer(lately, '1/2/2026', TODAY)).toMatchObject({ kind: 'refused' });
  });

  it('asks back wherever a day may be typed: days ago, and lengths of time', () => {
    expect(readAnswer(SAMPLES.daysAgo, '10/11/2026', TODAY)).toMatchObject({
      kind: 'which',
      choices: [{ value: 15 }, { value: 45 }],
    });
    const weeks = question({ id: 'fedWeeksAgo', kind: 'number', unit: 'weeks' });
    expect(readAnswer(weeks, '10/11/2026', TODAY, 'us')).toMatchObject({
      kind: 'which',
      choices: [{ value: 6.4 }, { value: 2.1 }],
    });
  });

  it('reads month first only where day first is impossible, and says so', () => {
    expect(readingOf('past', '3/14/2026')).toMatchObject({
      value: '2026-03-14',
      understood: expect.stringContaining('month read first'),
    });
  });

  it('says which day stands for a span', () => {
    expect(readingOf('past', 'early March')).toMatchObject({
      understood: 'about Thursday 5 March 2026 (one day stands for early March 2026)',
    });
  });

  it('lets today stand for a span that is not over', () => {
    expect(valueRead('past', 'late November')).toBe(TODAY);
  });

  it.each([
    ['Wednesday', [TODAY, back({ weeks: 1 })]],
    ['2 or 3 weeks ago', [back({ weeks: 2 }), back({ weeks: 3 })]],
    ['last weekend', [weekday(6, -1), weekday(7, -1)]],
    ['10', [back({ days: 10 }), '2026-11-10']],
  ])('asks which, at %j', (typed, dates) => {
    const reading = readingOf('past', typed);
    expect(reading.kind === 'which' && reading.choices.map(({ value }) => value)).toEqual(dates);
  });

  it.each([
    ['tomorrow', /lies ahead/],
    ['in two weeks', /lies ahead/],
    ['next week', /lies ahead/],
    ['3 April 2027', /lies ahead/],
    ['2026-11-26', /lies ahead/],
    ['never', /never/],
    ['not for months', /guess/],
    ['ages ago', /guess/],
    ['the other day', /guess/],
    ['Easter', /Give the date/],
    ['Bank Holiday Monday', /Give the date/],
    ['half term', /Give the date/],
    ['last spring', /month/],
    ['last year', /month/],
    ['2026-02-30', /no day 30/],
    ['31/4', /no day 31/],
    ['13/13/2026', /no month 13/],
    ['Monday 3 March', /does not fit/],
    ['900000 years ago', /too long ago/],
    ['1899-01-01', /hundred years/],
    ['whenever', /not a day/],
    ['', /Nothing/],
  ])('refuses %j with a hint', (typed, says) => {
    expect(readingOf('past', typed)).toMatchObject({ kind: 'refused', says: expect.stringMatching(says) });
  });
});

describe('a day to come', () => {
  it.each([
    ['today', TODAY],
    ['now', TODAY],
    ['tomorrow', on({ days: 1 })],
    ['day after tomorrow', on({ days: 2 })],
    ['Saturday', weekday(6, 1)],
    ['this Saturday', weekday(6, 1)],
    ['this Wednesday', TODAY],
    ['next Wednesday', on({ weeks: 1 })],
    ['Saturday week', weekday(6, 1, 2)],
    ['in two weeks', on({ weeks: 2 })],
    ['a fortnight', on({ weeks: 2 })],
    ['in 10 days time', on({ days: 10 })],
    ["in a week's time", on({ weeks: 1 })],
    ['in a month', on({ months: 1 })],
    ['the weekend', weekday(6, 1)],
    ['next week', weekday(1, 1)],
    ['next month', '2026-12-01'],
    ['3 April', '2027-04-03'],
    ['29 February', '2028-02-29'],
    ['2026-11-25', TODAY],
    ['early April', '2027-04-01'],
    ['mid-March', '2027-03-11'],
    ['April', '2027-04-01'],
    ['next April', '2027-04-01'],
    ['late November', TODAY],
    ['the 10th', '2026-12-10'],
  ])('reads %j as %s', (typed, date) => {
    expect(valueRead('ahead', typed)).toBe(date);
  });

  it.each([
    ['next Saturday', [weekday(6, 1), weekday(6, 1, 2)]],
    ['next weekend', [weekday(6, 1), weekday(6, 1, 2)]],
    ['Wednesday', [TODAY, on({ weeks: 1 })]],
    ['10', [on({ days: 10 }), '2026-12-10']],
    ['3/4', ['2027-04-03', '2027-03-04']],
  ])('asks which, at %j', (typed, dates) => {
    const reading = readingOf('ahead', typed);
    expect(reading.kind === 'which' && reading.choices.map(({ value }) => value)).toEqual(dates);
  });

  it.each([
    ['yesterday', /passed/],
    ['10 days ago', /passed/],
    ['3/4/2026', /passed/],
    ['last Saturday', /passed/],
    ['next spring', /month/],
    ['Easter', /Give the date/],
    ['2050-01-01', /ten years/],
    ['whenever', /not a day/],
  ])('refuses %j with a hint', (typed, says) => {
    expect(readingOf('ahead', typed)).toMatchObject({ kind: 'refused', says: expect.stringMatching(says) });
  });
});
