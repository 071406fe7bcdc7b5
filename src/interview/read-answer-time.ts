/** Reads a length of time in the question's unit: `two weeks` for days, `18 months` for years, `half a minute` for seconds. */
import { daysBetween, type IsoDate } from '../base/dates.js';
import { clean } from '../base/quantity/show.js';
import type { Units } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import { aboutAnswer, limits, whichWithin, withinBounds } from './read-answer-bounds.js';
import { readPastDay } from './read-date-past.js';
import { COUNT, countOf, dayInWords, tidyDay } from './read-date-words.js';
import type { Reading } from './reading.js';

type Lengths = Readonly<Record<string, number>>;

/** A year is 365.25 days and a month a twelfth of it: the mean of the Julian calendar, near enough for "months ago". */
const DAYS_EACH: Lengths = { day: 1, week: 7, fortnight: 14, month: 365.25 / 12, year: 365.25 };
const SECONDS_EACH: Lengths = { second: 1, sec: 1, s: 1, minute: 60, min: 60, hour: 3600, h: 3600, hr: 3600 };
const SPAN = new RegExp(
  `^${COUNT}(?:( and (?:a|1) half))? ?([a-z]+?)s?( and (?:a|1) half)?(?: (?:ago|back))?$`,
);
const BARE = /^\d+(?:[.,]\d+)?$/;

/** A time, or, for a question of how long ago, a day that has passed; undefined when neither was typed. */
export function readTimeAnswer(
  question: Question,
  typed: string,
  today: IsoDate,
  units?: Units,
): Reading | undefined {
  const unit = (question.unit ?? '').replace(/s$/, '');
  const table = [DAYS_EACH, SECONDS_EACH].find((lengths) => Object.hasOwn(lengths, unit));
  if (table === undefined) return undefined;
  const { text, approximate } = tidyDay(typed);
  const value = spanIn(unit, text, table);
  if (value !== undefined) return withinBounds(question, value, aboutAnswer(question, value, approximate));
  return table === DAYS_EACH && question.id.endsWith('Ago')
    ? pastDay(question, typed, { today, units })
    : undefined;
}

/** Days typed in larger units are rounded up: a wait must not come out short. */
function spanIn(unit: string, text: string, table: Lengths): number | undefined {
  const [, count, halfBefore, word, halfAfter] = SPAN.exec(BARE.test(text) ? `${text} ${unit}` : text) ?? [];
  const size = word === undefined || !Object.hasOwn(table, word) ? undefined : table[word];
  if (count === undefined || size === undefined) return undefined;
  const half = halfBefore === undefined && halfAfter === undefined ? 0 : 0.5;
  const value = ((countOf(count) + half) * size) / (table[unit] as number);
  if (word === unit) return clean(value);
  return unit === 'day' ? Math.ceil(clean(value)) : Math.round(value * 10) / 10;
}

function pastDay(
  question: Question,
  typed: string,
  { today, units }: { readonly today: IsoDate; readonly units: Units | undefined },
): Reading {
  if (/\bnever\b/i.test(typed)) return { kind: 'refused', says: `${question.help} Or say don't know.` };
  const reading = readPastDay(typed, today, units);
  if (reading.kind === 'refused') return { kind: 'refused', says: `${reading.says} ${limits(question)}` };
  const daysEach = DAYS_EACH[(question.unit ?? '').replace(/s$/, '')] as number;
  const since = (date: IsoDate) => Math.round((daysBetween(date, today) / daysEach) * 10) / 10;
  if (reading.kind === 'which') {
    const choices = reading.dates.map((date) => ({ label: dayInWords(date, today), value: since(date) }));
    return whichWithin(question, reading.says, choices);
  }
  const words = aboutAnswer(question, since(reading.date), reading.approximate);
  return withinBounds(question, since(reading.date), `${words} (${dayInWords(reading.date, today)})`);
}
