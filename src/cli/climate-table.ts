/** A climate file as a table of cells with the line of each row: CSV with any usual separator, or JSON lists. */
import { parse } from 'csv-parse/sync';
import { parseJson } from '../interview/answers-file.js';
import { CliStop, EXIT } from './io.js';

export interface Table {
  readonly heading: readonly string[];
  /** The line of the heading. */
  readonly line: number;
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

const MONTHS = 12;

/** @throws {CliStop} exit code 3 when it is neither, or has no rows */
export function tableOf(text: string, file: string): Table {
  const table = /^\uFEFF?\s*\{/.test(text) ? jsonTable(text, file) : csvTable(text, file);
  if (table.rows.length > 0) return table;
  throw new CliStop(
    EXIT.answers,
    `${file}: no rows were found. Allowed: a line of headings, then a line for each day or month.`,
  );
}

const SEPARATORS = [',', ';', '\t'];

function csvTable(text: string, file: string): Table {
  const first = text.split(/\r\n|\n|\r/).find((line) => line.trim() !== '' && !line.startsWith('#')) ?? '';
  const countIn = (separator: string): number => first.split(separator).length;
  const delimiter = [...SEPARATORS].sort((a, b) => countIn(b) - countIn(a))[0] as string;
  try {
    const records = parse(text, {
      bom: true,
      comment: '#',
      comment_no_infix: true,
      delimiter,
      info: true,
      skip_empty_lines: true,
    }) as unknown as readonly { readonly record: string[]; readonly info: { readonly lines: number } }[];
    const [heading, ...rows] = records;
    // Where commas do not part the cells they may part the decimals.
    const cell = (typed: string): string => (delimiter === ',' ? typed : typed.replace(',', '.'));
    return {
      heading: heading?.record ?? [],
      line: heading?.info.lines ?? 1,
      rows: rows.map(({ record, info }) => ({ line: info.lines, cells: record.map(cell) })),
    };
  } catch (error) {
    throw new CliStop(EXIT.answers, `${file} cannot be read as CSV: ${(error as Error).message}.`);
  }
}

/** `{"tMinC": [twelve], "tMaxC": [twelve], "rainMm": [twelve]}`: the keys are read as headings are. */
function jsonTable(text: string, file: string): Table {
  const json = parseJson(text.replace(/^\uFEFF/, ''));
  if ('fault' in json) throw new CliStop(EXIT.answers, `${file}: ${json.fault}`);
  const lists = Object.entries(json.value as Record<string, unknown>);
  for (const [key, list] of lists) {
    if (Array.isArray(list) && list.length === MONTHS && list.every((each) => typeof each === 'number'))
      continue;
    const found = Array.isArray(list) ? `a list of ${list.length}` : typeof list;
    throw new CliStop(
      EXIT.answers,
      `${file}: "${key.slice(0, MONTHS)}" is ${found}. Allowed: a list of ${MONTHS} numbers, January to December, under tMinC, tMaxC, tMeanC (or F), rainMm (or In), frostDays.`,
    );
  }
  return {
    heading: ['month', ...lists.map(([key]) => key)],
    line: 1,
    rows: Array.from({ length: MONTHS }, (_, month) => ({
      line: 1,
      cells: [String(month + 1), ...lists.map(([, list]) => String((list as number[])[month]))],
    })),
  };
}
