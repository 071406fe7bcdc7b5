/** Reads a price list, CSV or JSON by its name, into rows; what the rows mean is the planner's. */
import type { PriceList, PriceRow } from '../planner/price-list.js';
import type { Pack } from '../rules/pack.js';
import type { ParsedArgs } from './command.js';
import { type CliIo, CliStop, EXIT } from './io.js';

type Rows = { readonly rows: readonly PriceRow[] } | { readonly fault: string };

/**
 * The price list that was asked for, or undefined where none was.
 *
 * @throws {CliStop} exit code 3 with every fault of the file, by line; 5 when it cannot be read
 */
export async function pricesFrom(args: ParsedArgs, io: CliIo, pack: Pack): Promise<PriceList | undefined> {
  const file = args.text('prices');
  if (file === undefined) return undefined;
  const text = (await io.readText(file)).replace(/^\uFEFF/, '');
  const [{ readPriceRows }, read] = await Promise.all([
    import('../planner/price-list.js'),
    /\.json$/i.test(file) || /^\s*[[{]/.test(text) ? jsonRows(text) : csvRows(text),
  ]);
  const result =
    'fault' in read ? { ok: false as const, faults: [read.fault] } : readPriceRows(read.rows, pack);
  if (result.ok) return result.prices;
  const count = result.faults.length === 1 ? 'one fault' : `${result.faults.length} faults`;
  const lines = result.faults.map((fault) => `  ${fault}`).join('\n');
  throw new CliStop(EXIT.answers, `${file}: ${count}, nothing was planned.\n${lines}`);
}

/** The first line names the columns; commas or semicolons part them. */
async function csvRows(text: string): Promise<Rows> {
  const { CsvError, parse } = await import('csv-parse/sync');
  const [head = ''] = text.split(/\r?\n/, 1);
  const delimiter = head.includes(';') && !head.includes(',') ? ';' : ',';
  try {
    const records = parse(text, { delimiter, trim: true, skip_empty_lines: true, info: true }) as unknown as {
      record: string[];
      info: { lines: number };
    }[];
    const [names, ...rows] = records;
    if (names === undefined || !names.record.includes('material'))
      return { fault: `line 1: no column "material". The first line names the columns: ${COLUMNS}.` };
    const twice = names.record.find((name, index) => names.record.indexOf(name) !== index);
    if (twice !== undefined) return { fault: `line 1: the column "${twice}" stands twice. Name each once.` };
    return {
      rows: rows.map(({ record, info }) => ({
        at: `line ${info.lines}`,
        cells: Object.fromEntries(names.record.map((name, index) => [name, record[index] ?? ''])),
      })),
    };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { lines, record } = error as { lines?: number; record?: readonly string[] };
    const where = lines === undefined ? '' : `line ${lines}: `;
    if (record === undefined) return { fault: `${where}this is no CSV (${error.message}).` };
    return {
      fault: `${where}${record.length} values do not fit the columns that the first line names. Quote a value that holds a comma, and leave an empty place for what is not known.`,
    };
  }
}

/** `{"format": 1, "prices": [{"material": "topsoil", "size": 25, "unit": "L", "price": 4.5}]}`. */
function jsonRows(text: string): Rows {
  const shape =
    'Wanted: {"format": 1, "prices": [{"material": "topsoil", "size": 25, "unit": "L", "price": 4.5}]}.';
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return { fault: `this is no JSON (${(error as Error).message}). ${shape}` };
  }
  const { format, prices } = (typeof value === 'object' && value !== null ? value : {}) as {
    format?: unknown;
    prices?: unknown;
  };
  if (format !== 1 || !Array.isArray(prices))
    return { fault: `format 1 and a list "prices" are not both there. ${shape}` };
  const strange = prices.findIndex(
    (entry) => typeof entry !== 'object' || entry === null || Array.isArray(entry),
  );
  if (strange >= 0) return { fault: `entry ${strange + 1} is no object. ${shape}` };
  return {
    rows: prices.map((entry: object, index) => ({
      at: `entry ${index + 1}`,
      cells: Object.fromEntries(
        Object.entries(entry).map(([name, cell]) => [name, cell === null ? '' : String(cell)]),
      ),
    })),
  };
}

const COLUMNS = 'material, size, unit, price, stock, have, how';
