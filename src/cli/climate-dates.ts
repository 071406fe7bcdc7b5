/** Days and months as weather files write them. */
import { isIsoDate, monthName, monthOf } from '../base/dates.js';

export interface When {
  /** The day or month itself, to tell one from another. */
  readonly key: string;
  /** 1 to 12. */
  readonly month: number;
}

const DAY = /^(\d{4})[-/.]?(\d{2})[-/.]?(\d{2})$/;

/** `2026-03-01`, `2026/03/01`, `20260301`; 03/04/2026 could be two days and is none. */
export function readDay(typed: string): When | undefined {
  const date = typed.replace(DAY, '$1-$2-$3');
  return isIsoDate(date) ? { key: date, month: monthOf(date) } : undefined;
}

const LEAST_LETTERS = 3;

/** `3`, `03`, `Mar`, `March`. */
export function readMonth(typed: string): When | undefined {
  const word = typed.toLowerCase();
  const month = MONTHS.find(
    (each) =>
      Number(word) === each ||
      (word.length >= LEAST_LETTERS && monthName(each).toLowerCase().startsWith(word)),
  );
  return month === undefined ? undefined : { key: monthName(month), month };
}

const MONTHS = Array.from({ length: 12 }, (_, index) => index + 1);
