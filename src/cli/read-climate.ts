/**
 * Reads the user's own climate: twelve monthly means (JSON or CSV) or daily weather (CSV), in the units of its headings.
 *
 * Every message names the line, what was found and what is allowed.
 */
import { basename } from 'node:path';
import { monthlyMeans, type WeatherDay } from '../agronomy/monthly-means.js';
import { cleanLine } from '../base/clean-text.js';
import { monthName } from '../base/dates.js';
import type { OwnClimate, Pack } from '../rules/pack.js';
import { type Column, columnOf, type Holds, type UnitMissing } from './climate-columns.js';
import { readDay, readMonth } from './climate-dates.js';
import { type Table, tableOf } from './climate-table.js';
import { CliStop, EXIT } from './io.js';

const HEADINGS =
  'Known headings: date (YYYY-MM-DD) or month, tmin_c, tmax_c, tmean_c (or _f), rain_mm (or _cm, _in), frost_days.';

/** @throws {CliStop} exit code 3 with the first fault */
export function readClimate(text: string, file: string, pack: Pack): OwnClimate {
  const table = tableOf(text, file);
  const columns = columnsOf(table, file);
  const rows = table.rows.map(({ line, cells }) => rowOf(cells, { line, columns, file, pack }));
  const isDaily = columns.some((column) => column?.holds === 'date');
  return isDaily ? fromDays(rows, file, pack) : fromMonths(rows, file);
}

type Columns = readonly (Column | undefined)[];

function columnsOf({ heading, line }: Table, file: string): Columns {
  const found = heading.map(columnOf);
  const unitless = found.find((column): column is UnitMissing => column !== undefined && 'allowed' in column);
  if (unitless !== undefined) {
    const { name, allowed } = unitless;
    throw fault(
      file,
      line,
      `the heading "${shown(name)}" gives no unit. Write it in, ${allowed}: "${shown(name)}_${allowed.split(/[ ,]/)[0]?.toLowerCase()}".`,
    );
  }
  const columns = found as Columns;
  const count = (holds: Holds): number => columns.filter((column) => column?.holds === holds).length;
  for (const column of columns)
    if (column !== undefined && count(column.holds) > 1)
      throw fault(file, line, `more than one column holds ${WHAT[column.holds]}. Keep one of them.`);
  if (count('date') + count('month') !== 1)
    throw fault(
      file,
      line,
      `found ${heading.map((name) => `"${shown(name)}"`).join(', ')}: one column must be the date or the month. ${HEADINGS}`,
    );
  if (count('mean') === 0 && (count('min') === 0 || count('max') === 0))
    throw fault(
      file,
      line,
      `found ${heading.map((name) => `"${shown(name)}"`).join(', ')}: the minimum and the maximum temperature are needed, or the mean. ${HEADINGS}`,
    );
  return columns;
}

const WHAT: Readonly<Record<Holds, string>> = {
  date: 'the date',
  month: 'the month',
  min: 'the minimum temperature',
  max: 'the maximum temperature',
  mean: 'the mean temperature',
  rain: 'the rain',
  frost: 'the days of frost',
};

interface Row {
  readonly line: number;
  readonly when: string;
  readonly day: WeatherDay;
  readonly frostDays: number | undefined;
}

interface RowContext {
  readonly line: number;
  readonly columns: Columns;
  readonly file: string;
  readonly pack: Pack;
}

function rowOf(cells: readonly string[], { line, columns, file, pack }: RowContext): Row {
  const cellOf = (holds: Holds): string | undefined =>
    cells[columns.findIndex((column) => column?.holds === holds)]?.trim();
  const valueIn = (holds: Holds): number | undefined => {
    const index = columns.findIndex((column) => column?.holds === holds);
    const typed = cells[index]?.trim() ?? '';
    if (typed === '' || MISSING.has(typed.toLowerCase())) return undefined;
    const column = columns[index] as Column;
    const value = Number(typed);
    const says = `${WHAT[holds]} is "${shown(typed)}".`;
    if (!Number.isFinite(value))
      throw fault(file, line, `${says} Allowed: a number, or nothing where it is not known.`);
    const metric = column.toMetric(value);
    const [least, most, unit] = boundsOf(holds, pack);
    if (metric >= least && metric <= most) return metric;
    throw fault(
      file,
      line,
      `${says} Allowed: ${least} to ${most} ${unit}. Is it in tenths or hundredths, or in another unit than the heading "${shown(column.name)}" says?`,
    );
  };
  const date = cellOf('date');
  const typed = date ?? cellOf('month') ?? '';
  const when = date === undefined ? readMonth(typed) : readDay(typed);
  if (when === undefined)
    throw fault(
      file,
      line,
      date === undefined
        ? `the month is "${shown(typed)}". Allowed: 1 to 12, or its name.`
        : `the date is "${shown(typed)}". Allowed: a day that exists, as YYYY-MM-DD or YYYYMMDD.`,
    );
  const day = {
    month: when.month,
    tMinC: valueIn('min'),
    tMaxC: valueIn('max'),
    tMeanC: valueIn('mean'),
    rainMm: valueIn('rain'),
  };
  if (day.tMinC !== undefined && day.tMaxC !== undefined && day.tMinC > day.tMaxC)
    throw fault(
      file,
      line,
      `the minimum ${shown(cellOf('min') ?? '')} is above the maximum ${shown(cellOf('max') ?? '')}. Are the two columns swapped?`,
    );
  return { line, when: when.key, day, frostDays: valueIn('frost') };
}

/** How a gap is written, beside an empty cell. */
const MISSING = new Set(['na', 'n/a', 'nan', '-', '--', '---', 'null', 'm']);

function boundsOf(holds: Holds, { figureById }: Pack): readonly [number, number, string] {
  const figure =
    holds === 'rain'
      ? figureById.get('rain-possible-mm')
      : holds === 'frost'
        ? figureById.get('frost-days-possible')
        : figureById.get('air-possible-c');
  const { range = EVERY_NUMBER, unit = '' } = figure ?? {};
  return [range.min, range.max, unit];
}

const EVERY_NUMBER = { min: Number.NEGATIVE_INFINITY, max: Number.POSITIVE_INFINITY };

function fromDays(rows: readonly Row[], file: string, pack: Pack): OwnClimate {
  const first = firstTwice(rows);
  if (first !== undefined)
    throw fault(file, first.line, `${first.when} stands on an earlier line too. Allowed: one line a day.`);
  const leastDays = pack.figureById.get('climate-month-days')?.typical ?? 1;
  const reduced = monthlyMeans(
    rows.map(({ day }) => day),
    { leastDays, frostC: pack.figureById.get('frost-c')?.typical ?? 0 },
  );
  if ('thin' in reduced) {
    const months = reduced.thin.map(({ month, days }) => `${monthName(month)} ${days}`).join(', ');
    throw new CliStop(
      EXIT.answers,
      `${file}: too few days with a temperature: ${months}. Allowed: ${leastDays} or more in every month of the year; the days may be of several years.`,
    );
  }
  const days = rows.map(({ when }) => when).sort();
  return { from: `${nameOf(file)}, ${rows.length} days from ${days[0]} to ${days.at(-1)}`, ...reduced.means };
}

function fromMonths(rows: readonly Row[], file: string): OwnClimate {
  const sorted = [...rows].sort((a, b) => a.day.month - b.day.month);
  const twice = firstTwice(rows);
  if (twice !== undefined)
    throw fault(
      file,
      twice.line,
      `${monthName(twice.day.month)} stands on an earlier line too. Allowed: one line a month.`,
    );
  const missing = MONTHS.filter((month) => !sorted.some(({ day }) => day.month === month));
  if (missing.length > 0)
    throw new CliStop(
      EXIT.answers,
      `${file}: found ${rows.length} months, missing ${missing.map(monthName).join(', ')}. Allowed: all twelve.`,
    );
  const whole = (valueIn: (row: Row) => number | undefined): number[] | undefined => {
    const values = sorted.map(valueIn).filter((value) => value !== undefined);
    return values.length === sorted.length ? values : undefined;
  };
  const [tMinC, tMaxC, tMeanC] = [
    whole(({ day }) => day.tMinC),
    whole(({ day }) => day.tMaxC),
    whole(({ day }) => day.tMeanC),
  ];
  const hasRange = tMinC !== undefined && tMaxC !== undefined;
  if (!hasRange && tMeanC === undefined)
    throw new CliStop(
      EXIT.answers,
      `${file}: a temperature is missing in some month. Allowed: a minimum and a maximum, or a mean, in all twelve.`,
    );
  return {
    from: `${nameOf(file)}, twelve monthly means`,
    hasRange,
    tMinC: hasRange ? tMinC : (tMeanC as number[]),
    tMaxC: hasRange ? tMaxC : (tMeanC as number[]),
    rainMm: whole(({ day }) => day.rainMm),
    airFrostDays: whole(({ frostDays }) => frostDays),
  };
}

const MONTHS = Array.from({ length: 12 }, (_, index) => index + 1);
const LONGEST_SHOWN = 40;
const shown = (text: string): string => cleanLine(text).slice(0, LONGEST_SHOWN);
const nameOf = (file: string): string => (file === '-' ? 'standard input' : cleanLine(basename(file)));

function firstTwice(rows: readonly Row[]): Row | undefined {
  const seen = new Set<string>();
  return rows.find(({ when }) => seen.size === seen.add(when).size);
}

function fault(file: string, line: number, says: string): CliStop {
  return new CliStop(EXIT.answers, `${file}, line ${line}: ${says}`);
}
