import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  dayOfYear,
  daysBetween,
  daysInMonth,
  formatDay,
  type IsoDate,
  isInWindow,
  isIsoDate,
  lastDateInWindow,
  lastOpening,
  monthName,
  monthOf,
  nextDateInWindow,
  nextWeekend,
  parseIsoDate,
  weekdayOf,
  yearOf,
} from '../../src/base/dates.js';

// The reference throughout is temporal-polyfill, an independent implementation of the Temporal standard.
const FIRST = Temporal.PlainDate.from('0000-01-01');
const LAST_OFFSET = FIRST.until('9999-12-31').days;

const anyReference = fc.integer({ min: 0, max: LAST_OFFSET }).map((days) => FIRST.add({ days }));
const recentReference = fc
  .integer({ min: -20_000, max: 20_000 })
  .map((days) => Temporal.PlainDate.from('2026-06-15').add({ days }));
const many = { numRuns: 5_000 };

const day = (text: string): IsoDate => parseIsoDate(text);
const iso = (reference: Temporal.PlainDate): IsoDate => day(reference.toString().slice(0, 10));

describe('a date is read', () => {
  it.each(['2026-02-28', '2024-02-29', '2000-02-29', '0000-02-29', '9999-12-31'])('accepts %s', (text) => {
    expect(parseIsoDate(text)).toBe(text);
  });

  it.each(['2026-02-30', '2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '2026-01-00'])(
    'refuses %s, which no calendar has',
    (text) => {
      expect(isIsoDate(text)).toBe(false);
      expect(() => parseIsoDate(text)).toThrow(`date must be a day of the calendar, got "${text}".`);
    },
  );

  it.each([
    '',
    '13 March',
    '2026-3-1',
    '26-03-01',
    '2026-03-01T00:00',
    ' 2026-03-01',
    '2026/03/01',
    '+002026-03-01',
  ])('refuses "%s", which is not written YYYY-MM-DD', (text) => {
    expect(() => parseIsoDate(text)).toThrow('date must be written YYYY-MM-DD');
  });

  it('agrees with Temporal on every combination of month and day in leap and common years', () => {
    for (const year of ['1900', '2000', '2023', '2024']) {
      for (let monthDay = 0; monthDay <= 14 * 33; monthDay++) {
        const month = String(Math.floor(monthDay / 33)).padStart(2, '0');
        const text = `${year}-${month}-${String(monthDay % 33).padStart(2, '0')}`;
        let exists = true;
        try {
          Temporal.PlainDate.from(text);
        } catch {
          exists = false;
        }
        expect(isIsoDate(text), text).toBe(exists);
      }
    }
  });
});

describe('days are counted', () => {
  it('agrees with Temporal on adding days', () => {
    fc.assert(
      fc.property(recentReference, fc.integer({ min: -200_000, max: 200_000 }), (reference, days) => {
        expect(addDays(iso(reference), days)).toBe(reference.add({ days }).toString());
      }),
      many,
    );
  });

  it('agrees with Temporal on the days between two dates of any year', () => {
    fc.assert(
      fc.property(anyReference, anyReference, (from, until) => {
        expect(daysBetween(iso(from), iso(until))).toBe(from.until(until).days);
      }),
      many,
    );
  });

  it('agrees with Temporal on day of the year, month, year and weekday', () => {
    fc.assert(
      fc.property(anyReference, (reference) => {
        const date = iso(reference);
        expect(dayOfYear(date)).toBe(reference.dayOfYear);
        expect(monthOf(date)).toBe(reference.month);
        expect(yearOf(date)).toBe(reference.year);
        expect(weekdayOf(date)).toBe(reference.dayOfWeek);
        expect(daysInMonth(reference.year, reference.month)).toBe(reference.daysInMonth);
      }),
      many,
    );
  });

  it.each([
    ['2023-12-31', 1, '2024-01-01'],
    ['2024-02-28', 1, '2024-02-29'],
    ['2023-02-28', 1, '2023-03-01'],
    ['2000-02-29', 366, '2001-03-01'],
    ['1900-02-28', 1, '1900-03-01'],
    ['2024-03-01', -1, '2024-02-29'],
  ])('turns %s and %i days into %s', (from, days, expected) => {
    expect(addDays(day(from), days)).toBe(expected);
  });

  it('refuses part days and dates beyond four-digit years', () => {
    expect(() => addDays(day('2026-03-01'), 0.5)).toThrow('days must be a whole number');
    expect(() => addDays(day('2026-03-01'), Number.NaN)).toThrow(RangeError);
    expect(() => addDays(day('9999-12-31'), 1)).toThrow('years 0 to 9999');
    expect(() => addDays(day('0000-01-01'), -1)).toThrow('years 0 to 9999');
  });
});

describe('the next weekend', () => {
  it('is the date itself on a Saturday or Sunday and the coming Saturday otherwise', () => {
    fc.assert(
      fc.property(recentReference, (reference) => {
        const expected =
          reference.dayOfWeek >= 6 ? reference : reference.add({ days: 6 - reference.dayOfWeek });
        expect(nextWeekend(iso(reference))).toBe(expected.toString());
      }),
      many,
    );
  });
});

describe('a yearly window', () => {
  const autumn = { from: '08-15', until: '10-10' };
  const winter = { from: '11-01', until: '02-29' };

  it.each([
    ['2026-08-14', false],
    ['2026-08-15', true],
    ['2026-10-10', true],
    ['2026-10-11', false],
  ])('that lies inside one year holds both its ends: %s is %s', (date, inside) => {
    expect(isInWindow(day(date), autumn)).toBe(inside);
  });

  it.each([
    ['2026-10-31', false],
    ['2026-11-01', true],
    ['2026-12-31', true],
    ['2027-01-01', true],
    ['2027-02-28', true],
    ['2028-02-29', true],
    ['2027-03-01', false],
  ])('that wraps the new year holds both sides of it: %s is %s', (date, inside) => {
    expect(isInWindow(day(date), winter)).toBe(inside);
  });

  it.each([
    ['2026-03-01', autumn, '2026-08-15'],
    ['2026-09-01', autumn, '2026-09-01'],
    ['2026-10-11', autumn, '2027-08-15'],
    ['2026-06-01', winter, '2026-11-01'],
    ['2027-01-20', winter, '2027-01-20'],
    ['2025-01-10', { from: '02-29', until: '04-30' }, '2025-03-01'],
    ['2024-01-10', { from: '02-29', until: '04-30' }, '2024-02-29'],
    ['1897-01-01', { from: '02-29', until: '02-29' }, '1904-02-29'],
  ])('after %s opens next in %o on %s', (date, window, expected) => {
    expect(nextDateInWindow(day(date), window)).toBe(expected);
  });

  it.each([
    ['2026-09-01', autumn, '2026-10-10'],
    ['2026-12-25', winter, '2027-02-28'],
    ['2028-01-02', winter, '2028-02-29'],
    ['2026-11-01', { from: '01-01', until: '12-31' }, '2026-12-31'],
  ])('that holds %s ends on its last day: %o gives %s', (date, window, expected) => {
    expect(lastDateInWindow(day(date), window)).toBe(expected);
  });

  it.each([
    ['2026-09-01', autumn, '2026-08-15'],
    ['2026-08-15', autumn, '2026-08-15'],
    ['2027-02-28', winter, '2026-11-01'],
    ['2026-12-31', winter, '2026-11-01'],
    ['2027-04-01', { from: '02-29', until: '04-30' }, '2027-03-01'],
    ['2028-04-01', { from: '02-29', until: '04-30' }, '2028-02-29'],
    ['2028-02-28', { from: '02-29', until: '04-30' }, '2027-03-01'],
  ])('up to %s last opened in %o on %s', (date, window, expected) => {
    expect(lastOpening(day(date), window)).toBe(expected);
  });

  it('finds the same next day as walking the calendar one day at a time', () => {
    const edge = fc
      .integer({ min: 0, max: 365 })
      .map((days) => Temporal.PlainDate.from('2024-01-01').add({ days }).toString().slice(5));
    fc.assert(
      fc.property(recentReference, edge, edge, (reference, from, until) => {
        fc.pre(from !== '02-29' || until !== '02-29');
        let walked = reference;
        while (!isInWindow(iso(walked), { from, until })) walked = walked.add({ days: 1 });
        expect(nextDateInWindow(iso(reference), { from, until })).toBe(walked.toString());
        let last = walked;
        while (last.since(walked).days < 366 && isInWindow(iso(last.add({ days: 1 })), { from, until })) {
          last = last.add({ days: 1 });
        }
        if (last.since(walked).days < 364) {
          expect(lastDateInWindow(iso(walked), { from, until })).toBe(last.toString());
        }
      }),
      { numRuns: 300 },
    );
  });

  it('refuses edges that no year has and a date outside', () => {
    expect(() => isInWindow(day('2026-01-01'), { from: '02-30', until: '03-01' })).toThrow('"02-30"');
    expect(() => isInWindow(day('2026-01-01'), { from: '2-1', until: '03-01' })).toThrow('"2-1"');
    expect(() => lastDateInWindow(day('2026-01-01'), autumn)).toThrow('must lie in 08-15 to 10-10');
  });
});

describe('a date is written for a reader', () => {
  it('has the English weekday and month in full', () => {
    expect(formatDay(day('2027-03-13'))).toBe('Saturday 13 March 2027');
    expect(formatDay(day('2026-02-01'))).toBe('Sunday 1 February 2026');
  });

  it('agrees with the English names of the Unicode locale data', () => {
    const format = new Intl.DateTimeFormat('en-GB', {
      weekday: 'long',
      day: 'numeric',
      month: 'long',
      year: 'numeric',
      timeZone: 'UTC',
    });
    fc.assert(
      fc.property(recentReference, (reference) => {
        const parts = format.formatToParts(new Date(`${reference.toString()}T00:00:00Z`));
        const part = (type: string) => parts.find((one) => one.type === type)?.value;
        expect(formatDay(iso(reference))).toBe(
          `${part('weekday')} ${part('day')} ${part('month')} ${part('year')}`,
        );
      }),
    );
  });

  it('names a month by its number and refuses a thirteenth', () => {
    expect(monthName(9)).toBe('September');
    expect(() => monthName(13)).toThrow(RangeError);
  });
});
