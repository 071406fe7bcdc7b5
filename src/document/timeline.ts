/** A drawing of the job in plain text: a row for each step, a column for each week, the months above. */
import type { Code } from 'mdast';
import { addDays, daysBetween, type IsoDate, type KnownTo, monthName, monthOf } from '../base/dates.js';
import type { PlanStep } from '../planner/plan.js';
import { isKnownToDay, knownSpan, type Span } from './known-span.js';
import { said } from './words.js';

const DAYS_PER_COLUMN = 7;
/** Wider than this, a column stands for more than a week, so that the drawing fits a narrow page. */
const MOST_COLUMNS = 40;
const TITLE_WIDTH = 24;
const NAME_WIDTH = 3;

/** The drawing as a code block; nothing for a single step. */
export function timelineOf(steps: readonly PlanStep[], knownTo: KnownTo = 'day'): Code[] {
  if (steps.length < 2) return [];
  const spans = steps.map((step) => knownSpan(step, knownTo));
  const first = spans.map(({ from }) => from).sort()[0] as IsoDate;
  const last = spans
    .map(({ until }) => until)
    .sort()
    .at(-1) as IsoDate;
  const weeks = Math.floor(daysBetween(first, last) / DAYS_PER_COLUMN) + 1;
  const perColumn = DAYS_PER_COLUMN * Math.ceil(weeks / MOST_COLUMNS);
  const columns = Math.floor(daysBetween(first, last) / perColumn) + 1;
  const columnOf = (date: IsoDate): number => Math.floor(daysBetween(first, date) / perColumn);
  const rows = steps.map((step, index) => {
    const { title } = step;
    const span = spans[index] as Span;
    const [from, until] = [columnOf(span.from), columnOf(span.until)];
    const mark = isKnownToDay(step, knownTo) ? '#' : '?';
    const bar = Array.from({ length: columns }, (_, column) =>
      column >= from && column <= until ? mark : '.',
    );
    return `${nameOf(index + 1, title)} ${bar.join('')}`;
  });
  const scale =
    perColumn === DAYS_PER_COLUMN
      ? 'one column a week'
      : `one column for ${perColumn / DAYS_PER_COLUMN} weeks`;
  const value = [`${' '.repeat(TITLE_WIDTH)} ${monthsAbove(first, columns, perColumn)}`, ...rows, scale].join(
    '\n',
  );
  return [{ type: 'code', lang: 'text', value }];
}

/**
 * Short month names over the column in which each month is first seen; one without room is left out.
 * The month in which the drawing begins may be nearly over: then it gives way to the next.
 */
function monthsAbove(first: IsoDate, columns: number, perColumn: number): string {
  const monthOfColumn = (column: number): number => monthOf(addDays(first, column * perColumn));
  const begins = Array.from({ length: columns }, (_, column) => column).filter(
    (column) => column === 0 || monthOfColumn(column) !== monthOfColumn(column - 1),
  );
  const fits = (column: number | undefined): column is number =>
    column !== undefined && columns - column >= NAME_WIDTH;
  const [, second] = begins;
  const named = fits(second) && second <= NAME_WIDTH ? begins.slice(1) : begins;
  let line = '';
  for (const column of named) {
    if (line.length <= column && fits(column))
      line = `${line.padEnd(column)}${monthName(monthOfColumn(column)).slice(0, NAME_WIDTH)} `;
  }
  return line.trimEnd();
}

function nameOf(number: number, title: string): string {
  const name = `${number}. ${said(title)}`;
  const letters = [...name];
  const fitting = letters.length > TITLE_WIDTH ? [...letters.slice(0, TITLE_WIDTH - 1), '\u2026'] : letters;
  return `${fitting.join('')}${' '.repeat(TITLE_WIDTH - fitting.length)}`;
}
