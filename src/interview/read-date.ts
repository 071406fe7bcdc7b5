/** Reads the answer to a question for a date, past or coming, and repeats the day in full. */
import { cleanLine } from '../base/clean-text.js';
import { daysBetween, type IsoDate } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import { readComingDay } from './read-date-coming.js';
import { readPastDay } from './read-date-past.js';
import { type DayReading, dayInWords } from './read-date-words.js';
import type { Reading } from './reading.js';

/**
 * Whether a date question asks for a day to come. Bounds of a date question are whole days from today;
 * without bounds, one that suggests today looks ahead and any other looks back.
 */
export function looksAhead(question: Question): boolean {
  return question.bounds === undefined ? question.suggest === 'today' : question.bounds.max > 0;
}

/** A date typed in figures or in words; never one on the wrong side of today. */
export function readDate(question: Question, typed: string, today: IsoDate, units?: Units): Reading {
  const none = readNoDate(question, typed);
  if (none !== undefined) return none;
  const reading = looksAhead(question)
    ? readComingDay(typed, today, units)
    : readPastDay(typed, today, units);
  if (reading.kind === 'refused') return reading;
  const { bounds } = question;
  const isPossible = (date: IsoDate): boolean => {
    const days = daysBetween(today, date);
    return bounds === undefined || (days >= bounds.min && days <= bounds.max);
  };
  const dates = reading.kind === 'day' ? [reading.date] : reading.dates;
  const possible = dates.filter(isPossible);
  const [only, another] = possible;
  if (only === undefined) {
    const words = dates.map((date) => dayInWords(date, today)).join(', or ');
    return { kind: 'refused', says: `${words}: that cannot be. ${bounds?.says ?? ''}` };
  }
  if (reading.kind === 'day')
    return { kind: 'value', value: only, understood: understoodDay(reading, today) };
  if (another === undefined) return { kind: 'value', value: only, understood: dayInWords(only, today) };
  return {
    kind: 'which',
    says: reading.says,
    choices: possible.map((date) => ({ label: dayInWords(date, today), value: date })),
  };
}

/** "No", "over a year ago": there is no date to tell. */
function readNoDate({ noDate }: Question, typed: string): Reading | undefined {
  if (noDate === undefined) return undefined;
  const plain = (words: string): string =>
    cleanLine(words)
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, ' ')
      .trim();
  const isSaid = [noDate.value, noDate.label, ...noDate.typed].some((words) => plain(words) === plain(typed));
  return isSaid ? { kind: 'value', value: noDate.value, understood: noDate.label } : undefined;
}

/** "about" before a loose day, and after it what was taken for granted. */
function understoodDay(reading: DayReading & { kind: 'day' }, today: IsoDate): string {
  const about = reading.approximate ? 'about ' : '';
  const note = reading.note === undefined ? '' : ` (${reading.note})`;
  return `${about}${dayInWords(reading.date, today)}${note}`;
}
