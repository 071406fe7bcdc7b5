/**
 * Calendar days as ISO text, with exact whole-number arithmetic.
 *
 * A day is `YYYY-MM-DD`, years 0000 to 9999, Gregorian throughout; so dates sort as text.
 * There is no clock, no time of day and no time zone here: "today" is always an argument.
 * Plain arithmetic instead of a date library, because this is loaded at every start of the
 * program; the tests hold it against a Temporal implementation.
 */
import { once } from './once.js';
import { refuse } from './refuse.js';

/** A calendar day that exists, as `YYYY-MM-DD`. */
export type IsoDate = string & { readonly __brand: 'IsoDate' };

/** A part of every year, both ends included, as `MM-DD`; it may wrap the new year. */
export interface YearlyWindow {
  readonly from: string;
  readonly until: string;
}

interface CivilDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;
const MONTH_DAY_SHAPE = /^\d{2}-\d{2}$/;
const LAST_YEAR = 9999;
const DAYS_IN_400_YEARS = 146_097;
/** Days from 0000-03-01, where the counting years start, to 1970-01-01. */
const DAYS_TO_1970 = 719_468;
/** A leap day comes at most eight years after the last one (1896, 1904). */
const YEARS_TO_NEXT_LEAP_DAY = 8;
const SATURDAY = 6;

const MONTH_NAMES =
  'January February March April May June July August September October November December'.split(' ');
const WEEKDAY_NAMES = 'Monday Tuesday Wednesday Thursday Friday Saturday Sunday'.split(' ');

/** True when the text is a day of the calendar; `2026-02-30` is not. */
export function isIsoDate(text: string): text is IsoDate {
  const match = SHAPE.exec(text);
  if (match === null) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

/**
 * The text as a date.
 *
 * @throws {RangeError} when it is not written `YYYY-MM-DD` or the calendar has no such day
 */
export function parseIsoDate(text: string): IsoDate {
  if (isIsoDate(text)) return text;
  const allowed = SHAPE.test(text) ? 'must be a day of the calendar' : 'must be written YYYY-MM-DD';
  return refuse('date', allowed, `"${text}"`);
}

/** The date so many days later; a negative number goes back. */
export function addDays(date: IsoDate, days: number): IsoDate {
  if (!Number.isSafeInteger(days)) refuse('days', 'must be a whole number', days);
  return fromDayNumber(dayNumber(date) + days);
}

/** Days from the first date to the second; negative when the second comes first. */
export function daysBetween(from: IsoDate, until: IsoDate): number {
  return dayNumber(until) - dayNumber(from);
}

/** 1 for 1 January, up to 365 or 366. */
export function dayOfYear(date: IsoDate): number {
  return dayNumber(date) - dayNumberOf({ year: yearOf(date), month: 1, day: 1 }) + 1;
}

export function yearOf(date: IsoDate): number {
  return Number(date.slice(0, 4));
}

/** 1 for January, 12 for December. */
export function monthOf(date: IsoDate): number {
  return Number(date.slice(5, 7));
}

/** 1 for Monday, 7 for Sunday, as ISO 8601 counts. */
export function weekdayOf(date: IsoDate): number {
  const sinceThursday = dayNumber(date) + 3;
  return (((sinceThursday % 7) + 7) % 7) + 1;
}

/** The date itself on a Saturday or Sunday, otherwise the Saturday that follows. */
export function nextWeekend(date: IsoDate): IsoDate {
  return addDays(date, Math.max(0, SATURDAY - weekdayOf(date)));
}

/** True when the date lies in the window; both ends count. */
export function isInWindow(date: IsoDate, window: YearlyWindow): boolean {
  const { from, until } = checkedWindow(window);
  const monthDay = date.slice(5);
  return from <= until ? from <= monthDay && monthDay <= until : from <= monthDay || monthDay <= until;
}

/** The date itself when it lies in the window, otherwise the next day on which the window opens. */
export function nextDateInWindow(date: IsoDate, window: YearlyWindow): IsoDate {
  if (isInWindow(date, window)) return date;
  for (let year = yearOf(date); year <= yearOf(date) + YEARS_TO_NEXT_LEAP_DAY; year++) {
    const opening = existingDay(year, window.from, 'after');
    if (opening > date && isInWindow(opening, window)) return opening;
  }
  return refuse('window', 'must open within eight years', `${window.from} to ${window.until}`);
}

/**
 * The last day of the window that the date lies in.
 *
 * @throws {RangeError} when the date is outside the window
 */
export function lastDateInWindow(date: IsoDate, window: YearlyWindow): IsoDate {
  if (!isInWindow(date, window)) refuse('date', `must lie in ${window.from} to ${window.until}`, date);
  const sameYear = existingDay(yearOf(date), window.until, 'before');
  return sameYear >= date ? sameYear : existingDay(yearOf(date) + 1, window.until, 'before');
}

/** The last day, up to the date, on which the window opened. */
export function lastOpening(date: IsoDate, window: YearlyWindow): IsoDate {
  const { from } = checkedWindow(window);
  const sameYear = existingDay(yearOf(date), from, 'after');
  return sameYear <= date ? sameYear : existingDay(yearOf(date) - 1, from, 'after');
}

/** The date for a reader, such as `Saturday 13 March 2027`. */
export function formatDay(date: IsoDate): string {
  const { year, month, day } = civilDay(date);
  return `${WEEKDAY_NAMES[weekdayOf(date) - 1]} ${day} ${MONTH_NAMES[month - 1]} ${year}`;
}

/** How exactly a date is known: months are what is left of it where no climate says when a season begins. */
export type KnownTo = 'day' | 'month';

/** The date for a reader as far as it is known: `Saturday 13 March 2027`, or `March 2027?`. */
export function formatKnown(date: IsoDate, knownTo: KnownTo): string {
  return knownTo === 'day' ? formatDay(date) : `${monthName(monthOf(date))} ${yearOf(date)}?`;
}

/** The first and the last day of the month that the date lies in. */
export function monthAround(date: IsoDate): { readonly first: IsoDate; readonly last: IsoDate } {
  const on = (day: number): IsoDate => toIsoDate(yearOf(date), `${date.slice(5, 7)}-${twoDigits(day)}`);
  return { first: on(1), last: on(daysInMonth(yearOf(date), monthOf(date))) };
}

/** The month as a word; 1 is January. */
export function monthName(month: number): string {
  return MONTH_NAMES[month - 1] ?? refuse('month', 'must be from 1 to 12', month);
}

export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** A window edge on 29 February falls on the neighbouring day, inwards, when the year has none. */
function existingDay(year: number, monthDay: string, side: 'before' | 'after'): IsoDate {
  if (monthDay === '02-29' && !isLeapYear(year))
    return toIsoDate(year, side === 'before' ? '02-28' : '03-01');
  return toIsoDate(year, monthDay);
}

/** The same windows are asked for day after day. */
const checkedWindow = once((window: YearlyWindow): YearlyWindow => {
  for (const edge of [window.from, window.until]) {
    const exists = MONTH_DAY_SHAPE.test(edge) && isIsoDate(`2000-${edge}`);
    if (!exists) refuse('window', 'must have edges written MM-DD that exist', `"${edge}"`);
  }
  return window;
});

function civilDay(date: IsoDate): CivilDay {
  return { year: yearOf(date), month: monthOf(date), day: Number(date.slice(8, 10)) };
}

function dayNumber(date: IsoDate): number {
  return dayNumberOf(civilDay(date));
}

/**
 * Days from 1970-01-01. Years are counted from March, so that the leap day is the last of its year
 * and the months before it follow the fixed pattern (153 m + 2) ÷ 5.
 */
function dayNumberOf({ year, month, day }: CivilDay): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const marchMonth = (month + 9) % 12;
  const dayOfMarchYear = Math.floor((153 * marchMonth + 2) / 5) + day - 1;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return 365 * marchYear + leapDays + dayOfMarchYear - DAYS_TO_1970;
}

function fromDayNumber(days: number): IsoDate {
  const shifted = days + DAYS_TO_1970;
  const era = Math.floor(shifted / DAYS_IN_400_YEARS);
  const dayOfEra = shifted - era * DAYS_IN_400_YEARS;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfMarchYear =
    dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfMarchYear + 2) / 153);
  const day = dayOfMarchYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return toIsoDate(year, `${twoDigits(month)}-${twoDigits(day)}`);
}

function toIsoDate(year: number, monthDay: string): IsoDate {
  if (year < 0 || year > LAST_YEAR)
    refuse('date', `must stay within the years 0 to ${LAST_YEAR}`, `year ${year}`);
  return `${String(year).padStart(4, '0')}-${monthDay}` as IsoDate;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
