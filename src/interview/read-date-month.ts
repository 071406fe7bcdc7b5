/** Months and parts of them: `early March`, `mid-April`, `the end of May 2025`, `last month`. One stated day stands for each. */
import { daysInMonth, type IsoDate, monthName, monthOf, yearOf } from '../base/dates.js';
import { fullYear, isOn, type Side, YEAR } from './read-date-calendar.js';
import {
  addMonths,
  type DayReader,
  type DayReading,
  day,
  existing,
  MONTH,
  monthNumber,
  refusedDay,
} from './read-date-words.js';

/** The first and last day of a part of a month, and the day that stands for it. */
export interface MonthPart {
  readonly from: number;
  readonly until: number;
  readonly stands: number;
}

/** What `early`, `mid`, `late`, `end of` or a whole month (an empty word) means in a month of so many days. */
export type PartOf = (word: string, lastDay: number) => MonthPart;

/** A span that was named, and the side of today it must lie on. */
interface NamedSpan {
  readonly word: string;
  readonly month: number;
  readonly partOf: PartOf;
  readonly today: IsoDate;
  readonly side: Side;
}

const PART = '(?:(early|mid|late|(?:the )?(?:beginning|start|middle|end) of)[ -]?)?(?:in )?';
const PART_OF_MONTH = new RegExp(`^(?:in )?${PART}(?:(last|next) )?${MONTH}${YEAR}$`);
const PART_OF_NEAR_MONTH = new RegExp(`^${PART}(?:the )?(last|this|next) month$`);
const END_OF_THE_MONTH = /^(?:the )?(beginning|start|middle|end) of the month$/;

/** Every form of a month or a part of one, for one side. */
export function monthReader(side: Side, partOf: PartOf): DayReader {
  return (text, today) => {
    const [, part, which, month, year] = PART_OF_MONTH.exec(text) ?? [];
    if (month !== undefined) {
      if (which === (side === 'past' ? 'next' : 'last')) return undefined;
      const span = { word: partWord(part), month: monthNumber(month), partOf, today, side };
      return stated(span, fullYear(year) ?? nearestYear(span, which !== undefined));
    }
    const [, nearPart, near] = PART_OF_NEAR_MONTH.exec(text) ?? [];
    const [, bare] = END_OF_THE_MONTH.exec(text) ?? [];
    if (near === undefined && bare === undefined) return undefined;
    const away = near === 'last' ? -1 : near === 'next' ? 1 : 0;
    const first = addMonths(`${today.slice(0, 8)}01` as IsoDate, away);
    if (first === undefined) return undefined;
    return stated(
      { word: partWord(nearPart ?? bare), month: monthOf(first), partOf, today, side },
      yearOf(first),
    );
  };
}

/**
 * The last year in which the span has begun, or the next in which it has not ended.
 * With "last" or "next" the year in which it lies wholly on that side.
 */
function nearestYear({ word, month, partOf, today, side }: NamedSpan, isWhole: boolean): number {
  const year = yearOf(today);
  const { from, until } = partOf(word, daysInMonth(year, month));
  const edge = existing(year, month, side === 'past' ? (isWhole ? until : from) : isWhole ? from : until);
  const fits =
    edge !== undefined && (isWhole ? edge !== today && isOn(side, edge, today) : isOn(side, edge, today));
  return fits ? year : year + (side === 'past' ? -1 : 1);
}

/** The day that stands for the span; today, when the span holds today and its day is on the wrong side. */
function stated({ word, month, partOf, today, side }: NamedSpan, year: number): DayReading {
  const span = partOf(word, daysInMonth(year, month));
  const [standing, from, until] = [span.stands, span.from, span.until].map((each) =>
    existing(year, month, each),
  );
  if (standing === undefined || from === undefined || until === undefined)
    return refusedDay('That year is out of reach. Type the day with its year.');
  const date = !isOn(side, standing, today) && from <= today && today <= until ? today : standing;
  const spanName = `${word === '' ? '' : `${word} `}${monthName(month)} ${year}`;
  return day(date, `one day stands for ${spanName}`, true);
}

/** "the beginning of" is early, "the middle of" is mid. */
function partWord(part: string | undefined): string {
  if (part === undefined) return '';
  if (/beginning|start|early/.test(part)) return 'early';
  return /mid/.test(part) ? 'mid' : /end/.test(part) ? 'end of' : 'late';
}
