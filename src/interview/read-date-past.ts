/** Reads days that have passed, as people say them: `yesterday`, `last Tuesday`, `about 10 days ago`, `early March`. */
import { addDays, type IsoDate, weekdayOf } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import { calendarReader } from './read-date-calendar.js';
import { type MonthPart, monthReader } from './read-date-month.js';
import {
  COUNT,
  countOf,
  type DayReader,
  type DayReading,
  day,
  oneOf,
  ordinal,
  refusedDay,
  shifted,
  tidyDay,
  UNIT,
  WEEKDAY,
  weekdayNumber,
} from './read-date-words.js';

/** Days longer ago than this are a slip of the finger. */
const LONGEST_AGO_DAYS = 36_525;

const TODAY =
  /^(?:today|just now|now|this (?:morning|afternoon|evening)|tonight|earlier(?: today)?|earlier this (?:morning|afternoon|evening)|(?:\d+|an?|a few) (?:hours?|minutes?)(?: ago)?)$/;
const YESTERDAY = /^(?:yesterday(?: (?:morning|afternoon|evening|night))?|last night)$/;
const DAY_BEFORE_YESTERDAY = /^day before yesterday$/;
const AGO = '(?: (?:ago|back|before today|earlier))?';
const SPAN = new RegExp(`^${COUNT} ?${UNIT}${AGO}$`);
const SPAN_AND_HALF = new RegExp(`^(?:${COUNT} ${UNIT}|${COUNT}) and (?:a|1) half ?(?:${UNIT})?${AGO}$`);
const SPAN_RANGE = new RegExp(`^(?:between )?(\\d+) ?(?:-|to|or|and) ?(\\d+) ?${UNIT}${AGO}$`);
const LAST_WEEK = /^(?:(?:some ?time |some day |at some point )?last week|past week)$/;
const WEEKEND = /^(?:at |over )?(?:last |this |past )?weekend$/;
const BARE_NUMBER = /^\d+$/;

/** The last day of such a kind, at or before today. Every reading names the full date to the reader. */
export function readPastDay(typed: string, today: IsoDate, units?: Units): DayReading {
  const { text, approximate } = tidyDay(typed);
  if (text === '')
    return refusedDay('Nothing was typed. Type a day such as 3 April, yesterday or 10 days ago.');
  for (const read of [...READERS, calendarReader('past', units), MONTHS]) {
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
  if (reading.date > today) return refusedDay('That day lies ahead. Give a day that has passed, or today.');
  if (reading.date < addDays(today, -LONGEST_AGO_DAYS))
    return refusedDay('That is more than a hundred years ago. Look at the year again.');
  return approximate ? { ...reading, approximate } : reading;
}

const nearDays: DayReader = (text, today) => {
  if (TODAY.test(text)) return day(today);
  if (YESTERDAY.test(text)) return day(addDays(today, -1));
  return DAY_BEFORE_YESTERDAY.test(text) ? day(addDays(today, -2)) : undefined;
};

const ON_WEEKDAY = new RegExp(
  `^(last |this |this past |past )?${WEEKDAY}(?: (?:morning|afternoon|evening|night))?$`,
);
const WEEKDAY_BEFORE_LAST = new RegExp(`^${WEEKDAY} before last$`);
const WEEKDAYS_AGO = new RegExp(`^(\\d+) ${WEEKDAY} ago$`);
const OF_LAST_WEEK = new RegExp(`^(?:${WEEKDAY} (?:of )?last week|last week(?: on)? ${WEEKDAY})$`);

const weekdays: DayReader = (text, today) => {
  const [, which, plain] = ON_WEEKDAY.exec(text) ?? [];
  if (plain !== undefined) return onWeekday(weekdayNumber(plain), which !== undefined, today);
  const [, earlier] = WEEKDAY_BEFORE_LAST.exec(text) ?? [];
  if (earlier !== undefined) return day(lastWeekday(weekdayNumber(earlier), today, 2));
  const [, count, ago] = WEEKDAYS_AGO.exec(text) ?? [];
  if (count !== undefined && ago !== undefined && Number(count) <= 520)
    return day(lastWeekday(weekdayNumber(ago), today, Math.max(1, Number(count))));
  const lastWeek = OF_LAST_WEEK.exec(text);
  const name = lastWeek?.[1] ?? lastWeek?.[2];
  if (name === undefined) return undefined;
  return day(addDays(today, weekdayNumber(name) - weekdayOf(today) - 7));
};

/** "Tuesday" said on a Tuesday may be today or a week ago; "last Tuesday" is never today. */
function onWeekday(weekday: number, isLast: boolean, today: IsoDate): DayReading {
  if (!isLast && weekdayOf(today) === weekday) {
    return { kind: 'which', says: 'Today, or a week ago?', dates: [today, addDays(today, -7)] };
  }
  return day(lastWeekday(weekday, today, 1));
}

/** The weekday's last day before today, or with 2 the one before that. */
function lastWeekday(weekday: number, today: IsoDate, count: number): IsoDate {
  const back = (weekdayOf(today) - weekday + 7) % 7;
  return addDays(today, -(back === 0 ? 7 : back) - 7 * (count - 1));
}

const spans: DayReader = (text, today) => {
  const [, count, unit] = SPAN.exec(text) ?? [];
  if (count !== undefined && unit !== undefined)
    return ago(countOf(count), unit, today, /few|couple/.test(count));
  const half = SPAN_AND_HALF.exec(text);
  if (half) {
    const halfUnit = half[2] ?? half[4];
    if (halfUnit !== undefined)
      return ago(countOf((half[1] ?? half[3]) as string) + 0.5, halfUnit, today, true);
  }
  const [, from, until, rangeUnit] = SPAN_RANGE.exec(text) ?? [];
  if (from === undefined || until === undefined || rangeUnit === undefined) return undefined;
  const dates = [Number(from), Number(until)].map((each) =>
    shifted(today, { count: each, unit: rangeUnit, direction: -1 }),
  );
  const [first, second] = dates;
  if (first === undefined || second === undefined) return tooLongAgo();
  return { kind: 'which', says: 'Which end is nearer to it?', dates: [first, second] };
};

function ago(count: number, unit: string, today: IsoDate, approximate: boolean): DayReading {
  const date = shifted(today, { count, unit, direction: -1 });
  return date === undefined ? tooLongAgo() : day(date, undefined, approximate);
}

function tooLongAgo(): DayReading {
  return refusedDay("That is too long ago to count. Give the date, or say don't know.");
}

const looseWeeks: DayReader = (text, today) => {
  if (LAST_WEEK.test(text)) return day(addDays(today, -7), 'last week taken as seven days ago', true);
  if (!WEEKEND.test(text)) return undefined;
  const sunday = lastWeekday(7, today, 1);
  return { kind: 'which', says: 'Saturday or Sunday?', dates: [addDays(sunday, -1), sunday] };
};

/** A lone number may be a count of days or a day of the month. */
const bareNumber: DayReader = (text, today) => {
  if (!BARE_NUMBER.test(text)) return undefined;
  const counted = shifted(today, { count: Number(text), unit: 'day', direction: -1 });
  const dayOfMonth = calendarReader('past')(`${text}th`, today);
  const dates = [counted, dayOfMonth?.kind === 'day' ? dayOfMonth.date : undefined].filter(
    (date) => date !== undefined,
  );
  if (dates.length < 2)
    return refusedDay(`${text} of what? Type ${text} days ago, or a day such as 3 April.`);
  return { kind: 'which', says: `${text} days ago, or the ${ordinal(Number(text))} of the month?`, dates };
};

/** Early is the 5th, mid the 15th, late the 25th, the end the last day; a whole month its middle. */
function pastPart(part: string, lastDay: number): MonthPart {
  if (part === 'early') return { from: 1, until: 10, stands: 5 };
  if (part === 'mid') return { from: 11, until: 20, stands: 15 };
  if (part === 'late') return { from: 21, until: lastDay, stands: 25 };
  if (part === 'end of') return { from: lastDay - 4, until: lastDay, stands: lastDay };
  return { from: 1, until: lastDay, stands: 15 };
}

const AHEAD =
  /^(?:tomorrow|day after tomorrow|next |in \d|in an? |in two|later|soon|.* from now$|.* hence$|.*'s? time$)/;
const NEVER = /\b(?:never|not ever|not yet|not at all)\b/;
const VAGUE_COUNT =
  /\b(?:ages|months|weeks|days|years|long|a while|some time|other day|recently|lately|many|several)\b/;
const FEAST =
  /\b(?:easter|whitsun|pentecost|bank holiday|half[ -]?term|term|christmas|xmas|new year'?s?|boxing day|halloween|holidays?|ramadan|eid|diwali|birthday)\b/;
const SEASON = /\b(?:spring|summer|autumn|fall|winter)\b/;

/** Says what is missing in the kinds of answer that people give most, and in general. */
export function notUnderstood(text: string): DayReading {
  if (AHEAD.test(text)) return refusedDay('That day lies ahead. Give a day that has passed, or today.');
  if (NEVER.test(text)) {
    return refusedDay(
      "If it was never done, go back and say so there, or say don't know. Otherwise give a rough day, such as early March.",
    );
  }
  if (FEAST.test(text))
    return refusedDay('That falls on another day each year or place. Give the date, such as 3 April.');
  if (SEASON.test(text))
    return refusedDay('A season is too wide. Name the month, such as early April, or mid-October 2025.');
  if (/^(?:last|this) year$/.test(text))
    return refusedDay('A year is too wide. Name the month, such as mid-May 2025.');
  if (VAGUE_COUNT.test(text))
    return refusedDay("Roughly how long? A guess such as 10 days ago or early March will do; or don't know.");
  return refusedDay(
    "That is not a day I can read. Type 3 April, yesterday, last Tuesday or 10 days ago; or don't know.",
  );
}

const READERS: readonly DayReader[] = [nearDays, weekdays, spans, looseWeeks, bareNumber];
const MONTHS = monthReader('past', pastPart);
