/** Reads days that lie ahead, for the first free day: `tomorrow`, `Saturday`, `in two weeks`, `3 April`. */
import { addDays, type IsoDate, monthOf, nextWeekend, weekdayOf, yearOf } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import { calendarReader } from './read-date-calendar.js';
import { type MonthPart, monthReader } from './read-date-month.js';
import {
  addMonths,
  COUNT,
  countOf,
  type DayReader,
  type DayReading,
  day,
  existing,
  oneOf,
  ordinal,
  refusedDay,
  shifted,
  tidyDay,
  UNIT,
  WEEKDAY,
  weekdayNumber,
} from './read-date-words.js';

/** A first free day further off than this is a slip of the finger. */
const LONGEST_AHEAD_DAYS = 3653;

const TODAY =
  /^(?:today|now|right now|right away|straight away|at once|immediately|asap|as soon as possible|this (?:morning|afternoon|evening)|tonight|any ?time|any day)$/;
const TOMORROW = /^tomorrow(?: (?:morning|afternoon|evening))?$/;
const SPAN = new RegExp(`^(?:in )?${COUNT} ?${UNIT}(?: from (?:now|today)|'?s?'? time| hence)?$`);
const ON_WEEKDAY = new RegExp(`^(this |this coming |coming )?${WEEKDAY}(?: (?:morning|afternoon|evening))?$`);
const NEXT_WEEKDAY = new RegExp(`^next ${WEEKDAY}$`);
const WEEKDAY_WEEK = new RegExp(
  `^(?:${WEEKDAY} week|a week on ${WEEKDAY}|${WEEKDAY} in a week|week on ${WEEKDAY})$`,
);
const WEEKEND = /^(?:at )?(?:the |this |this coming |coming )?weekend$/;
const NEXT_WEEKEND = /^(?:the )?next weekend$/;
const BARE_NUMBER = /^\d+$/;
const MONDAY = 1;

/** The next day of such a kind, today or later. Every reading names the full date to the reader. */
export function readComingDay(typed: string, today: IsoDate, units?: Units): DayReading {
  const { text, approximate } = tidyDay(typed);
  if (text === '') return refusedDay('Nothing was typed. Type a day such as 3 April, tomorrow or Saturday.');
  for (const read of [...READERS, calendarReader('ahead', units), MONTHS]) {
    const reading = read(text, today);
    if (reading !== undefined) return checked(reading, { today, approximate });
  }
  return notUnderstood(text);
}

function checked(
  reading: DayReading,
  { today, approximate }: { readonly today: IsoDate; readonly approximate: boolean },
): DayReading {
  if (reading.kind === 'which') {
    const possible = reading.dates.filter(
      (date) => checked(day(date), { today, approximate }).kind === 'day',
    );
    return oneOf(reading.says, possible) ?? checked(day(reading.dates[0] as IsoDate), { today, approximate });
  }
  if (reading.kind !== 'day') return reading;
  if (reading.date < today)
    return refusedDay('That day has passed. Give today or a day that is still to come.');
  if (reading.date > addDays(today, LONGEST_AHEAD_DAYS))
    return refusedDay('That is more than ten years ahead. Look at the year again.');
  return approximate ? { ...reading, approximate } : reading;
}

const nearDays: DayReader = (text, today) => {
  if (TODAY.test(text)) return day(today);
  if (TOMORROW.test(text)) return day(addDays(today, 1));
  return text === 'day after tomorrow' ? day(addDays(today, 2)) : undefined;
};

const weekdays: DayReader = (text, today) => {
  const [, exact, plain] = ON_WEEKDAY.exec(text) ?? [];
  if (plain !== undefined) return onWeekday(weekdayNumber(plain), exact !== undefined, today);
  const [, next] = NEXT_WEEKDAY.exec(text) ?? [];
  if (next !== undefined) return nextWeekday(weekdayNumber(next), today);
  const name = WEEKDAY_WEEK.exec(text)
    ?.slice(1)
    .find((each) => each !== undefined);
  return name === undefined ? undefined : day(addDays(coming(weekdayNumber(name), today), 7));
};

/** "Saturday" said on a Saturday may be today or in a week. */
function onWeekday(weekday: number, isThis: boolean, today: IsoDate): DayReading {
  if (!isThis && weekdayOf(today) === weekday)
    return { kind: 'which', says: 'Today, or in a week?', dates: [today, addDays(today, 7)] };
  return day(coming(weekday, today));
}

/** "Next Saturday" is the coming one to some and the one after it to others, so it is asked. */
function nextWeekday(weekday: number, today: IsoDate): DayReading {
  const first = coming(weekday, today);
  if (first === today) return day(addDays(today, 7));
  return { kind: 'which', says: 'This coming one, or the one after?', dates: [first, addDays(first, 7)] };
}

function coming(weekday: number, today: IsoDate): IsoDate {
  return addDays(today, (weekday - weekdayOf(today) + 7) % 7);
}

const spans: DayReader = (text, today) => {
  const [, count, unit] = SPAN.exec(text) ?? [];
  if (count === undefined || unit === undefined) return undefined;
  const date = shifted(today, { count: countOf(count), unit, direction: 1 });
  if (date === undefined) return refusedDay('That is too far off to count. Give the date.');
  return day(date, undefined, /few|couple/.test(count));
};

const weeks: DayReader = (text, today) => {
  if (WEEKEND.test(text)) return day(nextWeekend(today));
  if (NEXT_WEEKEND.test(text)) {
    const first = nextWeekend(today);
    const second = addDays(nextWeekend(addDays(today, 8 - weekdayOf(today))), 0);
    if (first === today) return day(second);
    return { kind: 'which', says: 'This coming one, or the one after?', dates: [first, second] };
  }
  if (text !== 'next week') return undefined;
  return day(addDays(today, 7 + MONDAY - weekdayOf(today)), 'next week taken as its Monday', true);
};

const bareNumber: DayReader = (text, today) => {
  if (!BARE_NUMBER.test(text)) return undefined;
  const counted = shifted(today, { count: Number(text), unit: 'day', direction: 1 });
  const dayOfMonth = calendarReader('ahead')(`${text}th`, today);
  const dates = [counted, dayOfMonth?.kind === 'day' ? dayOfMonth.date : undefined].filter(
    (date) => date !== undefined,
  );
  if (dates.length < 2) return refusedDay(`${text} of what? Type in ${text} days, or a day such as 3 April.`);
  return { kind: 'which', says: `In ${text} days, or the ${ordinal(Number(text))} of the month?`, dates };
};

/** A part of a month begins on its first day: that is when one is free. */
function comingPart(part: string, lastDay: number): MonthPart {
  if (part === 'early') return { from: 1, until: 10, stands: 1 };
  if (part === 'mid') return { from: 11, until: 20, stands: 11 };
  if (part === 'late') return { from: 21, until: lastDay, stands: 21 };
  if (part === 'end of') return { from: lastDay - 4, until: lastDay, stands: lastDay };
  return { from: 1, until: lastDay, stands: 1 };
}

/** "Next month" is its first day. */
const nextMonth: DayReader = (text, today) => {
  if (text !== 'next month') return undefined;
  const month = addMonths(today, 1);
  const first = month && existing(yearOf(month), monthOf(month), 1);
  return first === undefined ? undefined : day(first, 'next month taken as its first day', true);
};

const PASSED = /\b(?:ago|yesterday|last)\b/;
const FEAST =
  /\b(?:easter|whitsun|pentecost|bank holiday|half[ -]?term|term|christmas|xmas|new year'?s?|holidays?|birthday)\b/;
const SEASON = /\b(?:spring|summer|autumn|fall|winter)\b/;

function notUnderstood(text: string): DayReading {
  if (PASSED.test(text)) return refusedDay('That day has passed. Give today or a day that is still to come.');
  if (FEAST.test(text))
    return refusedDay('That falls on another day each year or place. Give the date, such as 3 April.');
  if (SEASON.test(text))
    return refusedDay('A season is too wide. Name the month or the day, such as early April.');
  return refusedDay(
    "That is not a day I can read. Type today, Saturday, in two weeks or 3 April; or don't know.",
  );
}

const READERS: readonly DayReader[] = [nearDays, weekdays, spans, weeks, nextMonth, bareNumber];
const MONTHS = monthReader('ahead', comingPart);
