/** Dates as a reader says them; the year only where it is not the year already named at the top. */
import { formatDay, type IsoDate, yearOf } from '../base/dates.js';

/** `Saturday 13 March`, with the year when it differs from the one the reader has in mind. */
export function dayWords(date: IsoDate, year: number): string {
  const whole = formatDay(date);
  return yearOf(date) === year ? whole.replace(/ \d+$/, '') : whole;
}

/** `Saturday 13 March to Sunday 14 March`, or the one day. */
export function spanWords(span: { readonly from: IsoDate; readonly until: IsoDate }, year: number): string {
  const from = dayWords(span.from, year);
  return span.from === span.until ? from : `${from} to ${dayWords(span.until, year)}`;
}
