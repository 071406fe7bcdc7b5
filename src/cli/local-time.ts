/** Day and time where the person stands, not in Greenwich. */
import { type IsoDate, parseIsoDate } from '../base/dates.js';

export function localDay(now: Date): IsoDate {
  return parseIsoDate(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
}

/** `14:05`. */
export function localTime(now: Date): string {
  return `${two(now.getHours())}:${two(now.getMinutes())}`;
}

const two = (value: number): string => String(value).padStart(2, '0');
