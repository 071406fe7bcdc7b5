/** Dates as a reader says them, as far as they are known; the year only where it is not the year already named at the top. */
import { formatKnown, type IsoDate, type KnownTo, monthOf, yearOf } from '../base/dates.js';

export interface DateStyle {
  /** The year that the reader has in mind. */
  readonly year: number;
  readonly datesKnownTo: KnownTo;
}

/** `Saturday 13 March`, with the year when it differs; `March?` where only the month is known. */
export function dayWords(date: IsoDate, { year, datesKnownTo }: DateStyle): string {
  const whole = formatKnown(date, datesKnownTo);
  return yearOf(date) === year ? whole.replace(/ \d+(\??)$/, '$1') : whole;
}

/** `Saturday 13 March to Sunday 14 March`, or the one day; `March? to April?`, or the one month. */
export function spanWords(
  span: { readonly from: IsoDate; readonly until: IsoDate },
  style: DateStyle,
): string {
  const from = dayWords(span.from, style);
  const isOne =
    span.from === span.until ||
    (style.datesKnownTo === 'month' && monthKey(span.from) === monthKey(span.until));
  return isOne ? from : `${from} to ${dayWords(span.until, style)}`;
}

/** The word before a date: on a day, in a month. */
export const onWord = ({ datesKnownTo }: Pick<DateStyle, 'datesKnownTo'>): string =>
  datesKnownTo === 'day' ? 'on' : 'in';

const monthKey = (date: IsoDate): string => `${yearOf(date)}-${monthOf(date)}`;

/** What stands beside dates that are known to the month only. */
export const MONTHS_ONLY =
  'No climate is known for this place, so only months can be said, with a question mark: go by the soil and the signs, and not by the calendar.';
