/** The words people use for days, and a typed text brought to one plain spelling before it is read. */
import { cleanLine } from '../base/clean-text.js';
import {
  addDays,
  daysBetween,
  daysInMonth,
  formatDay,
  type IsoDate,
  monthOf,
  parseIsoDate,
  yearOf,
} from '../base/dates.js';
import { numberWords } from '../base/quantity/number-words.js';

/** A day that was understood, a choice between days, or a refusal that says what to type. */
export type DayReading =
  | {
      readonly kind: 'day';
      readonly date: IsoDate;
      /** The text said "about", or named a span of days. */
      readonly approximate: boolean;
      /** What was taken for granted, such as "day read first". */
      readonly note?: string;
    }
  | { readonly kind: 'which'; readonly says: string; readonly dates: readonly IsoDate[] }
  | { readonly kind: 'refused'; readonly says: string };

/** One small reader: undefined when the text is not of its form. */
export type DayReader = (text: string, today: IsoDate) => DayReading | undefined;

export interface DayText {
  readonly text: string;
  readonly approximate: boolean;
}

const MONTHS =
  'jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?';
const MONTH_STARTS = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');
const WEEKDAYS =
  'mon(?:day)?|tue(?:s|sday)?|wed(?:s|nesday)?|thu(?:r|rs|rsday)?|fri(?:day)?|sat(?:urday)?|sun(?:day)?';
const WEEKDAY_STARTS = 'mon tue wed thu fri sat sun'.split(' ');

/** Pattern pieces for the readers; each is one group. */
export const MONTH = `(${MONTHS})`;
export const WEEKDAY = `(${WEEKDAYS})s?`;
export const COUNT = String.raw`(\d+(?:[.,]\d+)?|an?|half an?|(?:a )?couple(?: of)?|(?:a )?few)`;
export const UNIT = '(day|week|fortnight|month|year)s?';

const LOOSE =
  /^(?:about|around|approximately|approx|roughly|circa|ca|some|say|nearly|almost|maybe|perhaps|probably|possibly|i think|i guess|it was|it's|just over|just under|over|under|more than|less than|at least|at most|~|≈)\s+/;
const LOOSE_END = /\s+(?:or so|or thereabouts|or more|i think|i guess|maybe|roughly|now|ish)$/;
const OPENING =
  /^(?:(?:on|the)\s+|(?:(?:not|none|nothing|no rain|dry|it has been)\s+)?(?:for|since)\s+(?:the (?:last|past)\s+)?|(?:not|none|no rain)\s+in\s+|(?:last|past)\s+(?=\d))/;

/** Lower case, figures for number words, no commas, no filler; and whether the text said "about". */
export function tidyDay(typed: string): DayText {
  let text = numberWords(cleanLine(typed).toLowerCase())
    .replace(/[’‘]/g, "'")
    .replace(/[–—]/g, '-')
    .replace(/~/g, '~ ')
    .replace(/,(?=\d{4})|,(?!\d)|(?<!\d),/g, ' ')
    .replace(/[.!?]+$/, '')
    .replace(/\s+/g, ' ')
    .trim();
  let approximate = false;
  for (let before = ''; before !== text; ) {
    before = text;
    text = text.replace(LOOSE, '').replace(LOOSE_END, '');
    approximate ||= text !== before;
    text = text.replace(OPENING, '');
  }
  return { text, approximate };
}

/** The month a word names, 1 to 12. */
export function monthNumber(word: string): number {
  return MONTH_STARTS.indexOf(word.slice(0, 3)) + 1;
}

/** The weekday a word names, 1 for Monday. */
export function weekdayNumber(word: string): number {
  return WEEKDAY_STARTS.indexOf(word.slice(0, 3)) + 1;
}

/** The count a matched COUNT means. */
export function countOf(word: string): number {
  if (word === 'a' || word === 'an') return 1;
  if (word.startsWith('half')) return 0.5;
  if (word.includes('couple')) return 2;
  if (word.endsWith('few')) return 3;
  return Number(word.replace(',', '.'));
}

export function day(date: IsoDate, note?: string, approximate = false): DayReading {
  return note === undefined ? { kind: 'day', date, approximate } : { kind: 'day', date, approximate, note };
}

/** A choice between days, the day itself where only one is left, undefined where none is. */
export function oneOf(says: string, dates: readonly IsoDate[]): DayReading | undefined {
  const [only, another] = dates;
  if (only === undefined) return undefined;
  return another === undefined ? day(only) : { kind: 'which', says, dates };
}

export function refusedDay(says: string): DayReading {
  return { kind: 'refused', says };
}

/** The date, or undefined when the calendar has no such day. */
export function existing(year: number, month: number, dayOfMonth: number): IsoDate | undefined {
  if (month < 1 || month > 12 || dayOfMonth < 1 || year < 1 || year > 9999) return undefined;
  if (dayOfMonth > daysInMonth(year, month)) return undefined;
  return parseIsoDate(`${String(year).padStart(4, '0')}-${two(month)}-${two(dayOfMonth)}`);
}

/** The same day so many months later, or the last day of a shorter month. */
export function addMonths(date: IsoDate, months: number): IsoDate | undefined {
  const counted = yearOf(date) * 12 + monthOf(date) - 1 + months;
  const year = Math.floor(counted / 12);
  const month = (counted % 12) + 1;
  if (year < 1 || year > 9999) return undefined;
  return existing(year, month, Math.min(Number(date.slice(8)), daysInMonth(year, month)));
}

/** The date so many units on from today (or back, with -1), to the nearest day. */
export function shifted(
  today: IsoDate,
  { count, unit, direction }: { readonly count: number; readonly unit: string; readonly direction: 1 | -1 },
): IsoDate | undefined {
  if (!(count <= 40_000)) return undefined;
  const months = unit === 'month' ? count : unit === 'year' ? count * 12 : undefined;
  if (months !== undefined && Number.isInteger(months)) return addMonths(today, direction * months);
  const daysEach = { day: 1, week: 7, fortnight: 14, month: 365.25 / 12, year: 365.25 }[unit] ?? 1;
  const days = Math.round(count * daysEach);
  return days <= 365_000 ? addDays(today, direction * days) : undefined;
}

/** The day in full, and how far it is from today when that is a help. */
export function dayInWords(date: IsoDate, today: IsoDate): string {
  const days = daysBetween(today, date);
  const away = Math.abs(days);
  const near = { '0': 'today', '-1': 'yesterday', '1': 'tomorrow' }[String(days)];
  if (near !== undefined) return `${formatDay(date)}, ${near}`;
  if (away > 62) return formatDay(date);
  return `${formatDay(date)}, ${days < 0 ? `${away} days ago` : `in ${away} days`}`;
}

/** `1st`, `2nd`, `23rd`, `11th`. */
export function ordinal(value: number): string {
  const teen = value % 100 >= 11 && value % 100 <= 13;
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][value % 10] ?? 'th');
  return `${value}${ending}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
