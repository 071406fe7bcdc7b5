/**
 * Days named by the calendar: `2026-04-03`, `3/4/2026`, `3 April`, `the 10th`, `Tuesday 3 March`.
 * Which year is meant when none is said is left to a side: the last one past, or the next to come.
 */

import { formatDay, type IsoDate, monthName, monthOf, weekdayOf, yearOf } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import {
  addMonths,
  type DayReader,
  type DayReading,
  day,
  existing,
  MONTH,
  monthNumber,
  oneOf,
  refusedDay,
  WEEKDAY,
  weekdayNumber,
} from './read-date-words.js';

/** Past questions look back for the year, coming ones look ahead. */
export type Side = 'past' | 'ahead';

const ORDINAL = String.raw`(\d{1,2})(?:st|nd|rd|th)?`;
/** A year after a month or a day, of four or two digits. */
export const YEAR = String.raw`(?:[ /.-]+'?(\d{4}|\d{2}))?`;
const ISO = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const FIGURES = /^(\d{1,2})[/.-](\d{1,2})(?:[/.-](\d{4}|\d{2}))?$/;
const DAY_MONTH = new RegExp(`^${ORDINAL}[ -]?(?:of )?${MONTH}${YEAR}$`);
const MONTH_DAY = new RegExp(`^${MONTH}[ -]?(?:the )?${ORDINAL}(?:[ /.-]+'?(\\d{4}))?$`);
const DAY_ONLY = /^(?:the )?(\d{1,2})(?:st|nd|rd|th)(?: of (?:this|the) month)?$/;
const WITH_WEEKDAY = new RegExp(`^${WEEKDAY} (?:the )?(.+)$`);
/** How many years to try for a day such as 29 February. */
const YEARS_TRIED = 9;

/**
 * Every form of a calendar day, for one side.
 *
 * @param units of the person: who measures in feet writes the month first
 */
export function calendarReader(side: Side, units: Units = 'metric'): DayReader {
  return (text, today) => {
    const facing = { today, side, units };
    const plain = plainDay(text, facing);
    if (plain !== undefined) return plain;
    const [, weekday, rest] = WITH_WEEKDAY.exec(text) ?? [];
    if (weekday === undefined || rest === undefined) return undefined;
    const reading = plainDay(rest, facing);
    return reading === undefined ? undefined : agreeing(reading, weekdayNumber(weekday));
  };
}

function plainDay(text: string, facing: Facing): DayReading | undefined {
  const { today, side } = facing;
  const iso = ISO.exec(text)?.slice(1).map(Number);
  if (iso !== undefined) return dated(iso[0], iso[1] as number, iso[2] as number, facing);
  const [, first, second, figureYear] = FIGURES.exec(text) ?? [];
  if (first !== undefined && second !== undefined) {
    return inFigures(Number(first), Number(second), fullYear(figureYear), facing);
  }
  const [, dayBefore, month, year] = DAY_MONTH.exec(text) ?? [];
  if (dayBefore !== undefined && month !== undefined)
    return dated(fullYear(year), monthNumber(month), Number(dayBefore), facing);
  const [, monthFirst, dayAfter, yearAfter] = MONTH_DAY.exec(text) ?? [];
  if (monthFirst !== undefined && dayAfter !== undefined)
    return dated(fullYear(yearAfter), monthNumber(monthFirst), Number(dayAfter), facing);
  const [, dayOnly] = DAY_ONLY.exec(text) ?? [];
  return dayOnly === undefined ? undefined : dayOfSomeMonth(Number(dayOnly), today, side);
}

interface Facing {
  readonly today: IsoDate;
  readonly side: Side;
  readonly units: Units;
}

const TWO_WAYS = 'That can be read two ways. Which day do you mean?';

/** Where day and month could each stand first, both days are offered: no habit of one country is taken for granted. */
function inFigures(first: number, second: number, year: number | undefined, facing: Facing): DayReading {
  if (second <= 12) {
    const dayFirst = dated(year, second, first, facing);
    if (first > 12 || first === second) return dayFirst;
    const monthFirst = dated(year, first, second, facing);
    const both = facing.units === 'us' ? [monthFirst, dayFirst] : [dayFirst, monthFirst];
    return (
      oneOf(
        TWO_WAYS,
        both.flatMap((reading) => (reading.kind === 'day' ? [reading.date] : [])),
      ) ?? dayFirst
    );
  }
  if (first <= 12)
    return dated(year, first, second, facing, `month read first, as there is no month ${second}`);
  return refusedDay(`There is no month ${second}. Type the day in words, such as 3 April.`);
}

function dated(
  year: number | undefined,
  month: number,
  dayOfMonth: number,
  { today, side }: Pick<Facing, 'today' | 'side'>,
  note?: string,
): DayReading {
  if (month < 1 || month > 12)
    return refusedDay(`There is no month ${month}. Type the day in words, such as 3 April.`);
  if (year !== undefined) {
    const date = existing(year, month, dayOfMonth);
    return date === undefined ? noSuchDay(dayOfMonth, month, year) : day(date, note);
  }
  const step = side === 'past' ? -1 : 1;
  for (let tried = 0; tried < YEARS_TRIED; tried++) {
    const date = existing(yearOf(today) + step * tried, month, dayOfMonth);
    if (date !== undefined && isOn(side, date, today)) return day(date, note);
  }
  return noSuchDay(dayOfMonth, month, undefined);
}

function noSuchDay(dayOfMonth: number, month: number, year: number | undefined): DayReading {
  const where = year === undefined ? '' : ` ${year}`;
  return refusedDay(
    `${monthName(month)}${where} has no day ${dayOfMonth}. Look at a calendar and type it again.`,
  );
}

/** The last or the next month that has such a day. */
function dayOfSomeMonth(dayOfMonth: number, today: IsoDate, side: Side): DayReading {
  const step = side === 'past' ? -1 : 1;
  const first = `${today.slice(0, 8)}01` as IsoDate;
  for (let tried = 0; tried < YEARS_TRIED; tried++) {
    const month = addMonths(first, step * tried);
    const date = month && existing(yearOf(month), monthOf(month), dayOfMonth);
    if (date !== undefined && isOn(side, date, today)) return day(date);
  }
  return refusedDay(`No month has a day ${dayOfMonth}. Type the day and the month, such as 3 April.`);
}

function agreeing(reading: DayReading, weekday: number): DayReading {
  if (reading.kind === 'refused') return reading;
  const dates = reading.kind === 'day' ? [reading.date] : reading.dates;
  const fitting = dates.filter((date) => weekdayOf(date) === weekday);
  if (fitting.length === dates.length) return reading;
  return (
    oneOf(TWO_WAYS, fitting) ??
    refusedDay(
      `That does not fit: it would be ${dates.map(formatDay).join(' or ')}. Type the date alone, with the year.`,
    )
  );
}

/** Whether a date lies on the asked side of today; today itself lies on both. */
export function isOn(side: Side, date: IsoDate, today: IsoDate): boolean {
  return side === 'past' ? date <= today : date >= today;
}

export function fullYear(typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined;
  return typed.length === 2 ? 2000 + Number(typed) : Number(typed);
}
