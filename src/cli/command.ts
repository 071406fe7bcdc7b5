/** The form of a command, and the options that all of them take. */
import { parseArgs } from 'node:util';
import { cleanLine } from '../base/clean-text.js';
import { nearest } from '../base/nearest.js';
import { UNITS, type Units } from '../base/us-units.js';
import type { CommandLine } from './how-started.js';
import { type CliIo, CliStop, EXIT } from './io.js';

export interface OptionSpec {
  readonly type: 'string' | 'boolean';
  readonly short?: string;
  readonly value?: string;
  /** The only values that it takes. */
  readonly allowed?: readonly string[];
  /** May be given several times. */
  readonly multiple?: boolean;
  readonly says: string;
}

export interface Command {
  readonly name: string;
  readonly summary: string;
  readonly usage: string;
  readonly options: Readonly<Record<string, OptionSpec>>;
  /** The words that it takes beside options; none if absent. */
  readonly takes?: { readonly least: number; readonly most: number; readonly says: string };
  /** What its first word may be, for completion; absent where that is a file or a name from elsewhere. */
  readonly words?: readonly string[];
  run(args: ParsedArgs, io: CliIo): Promise<number>;
}

export interface ParsedArgs {
  readonly positionals: readonly string[];
  text(name: string): string | undefined;
  flag(name: string): boolean;
  /** Every value of an option that may be given several times. */
  list(name: string): readonly string[];
}

export const COMMON_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  pack: { type: 'string', value: 'DIR', says: 'rules from this folder instead of the bundled ones' },
  'no-colour': { type: 'boolean', says: 'no colour; NO_COLOR does the same' },
  width: { type: 'string', value: 'N', says: 'columns to write for, 40 or more' },
  quiet: { type: 'boolean', says: 'only results and errors' },
  debug: { type: 'boolean', says: 'show where an unexpected error came from' },
  help: { type: 'boolean', short: 'h', says: 'this help' },
  version: { type: 'boolean', says: 'the version' },
};

/**
 * The arguments of a command.
 *
 * @throws {CliStop} exit code 2, naming what was not understood and the nearest that is
 */
export function readArgs(argv: readonly string[], command: Command): ParsedArgs {
  const all = { ...COMMON_OPTIONS, ...command.options };
  const known = Object.fromEntries(
    Object.entries(all).map(([name, { type, short, multiple = false }]) => [
      name,
      short === undefined ? { type, multiple } : { type, multiple, short },
    ]),
  );
  try {
    const { values, positionals } = parseArgs({ args: [...argv], options: known, allowPositionals: true });
    const at = values as Record<string, string | boolean | readonly string[] | undefined>;
    if (at.help !== true && at.version !== true) {
      checkWords(positionals, command);
      checkValues(at, all);
    }
    return {
      positionals,
      text: (name) => (typeof at[name] === 'string' ? at[name] : undefined),
      flag: (name) => at[name] === true,
      list: (name) => (Array.isArray(at[name]) ? (at[name] as readonly string[]) : []),
    };
  } catch (error) {
    if (error instanceof CliStop) throw error;
    throw new CliStop(EXIT.usage, optionFault(error as Error, argv, Object.keys(all)), command.usage);
  }
}

const LONGEST_SHOWN = 60;

/** A word too many is a slip that must not be swallowed: it may be an option without its hyphens. */
function checkWords(words: readonly string[], { name, takes, usage }: Command): void {
  const { least, most, says } = takes ?? { least: 0, most: 0, says: 'no words, only options' };
  const isRight = words.length >= least && words.length <= most;
  if (isRight) return;
  const extra = words[most];
  const found = extra === undefined ? '' : `; "${cleanLine(extra).slice(0, LONGEST_SHOWN)}" is one too many`;
  throw new CliStop(EXIT.usage, `"${name}" takes ${says}${found}.`, usage);
}

function optionFault(error: Error, argv: readonly string[], names: readonly string[]): string {
  const typed = argv.find(
    (each) => each.startsWith('--') && !names.includes(each.slice(2).split('=')[0] as string),
  );
  if (typed === undefined) return error.message.split('. ')[0] ?? error.message;
  const near = nearest(typed.slice(2), names);
  return `There is no option ${typed}.${near === undefined ? '' : ` Did you mean --${near}?`}`;
}

/** @throws {CliStop} exit code 2 when an option has a value that it does not take */
function checkValues(
  values: Readonly<Record<string, unknown>>,
  options: Readonly<Record<string, OptionSpec>>,
): void {
  for (const [name, { allowed, says }] of Object.entries(options)) {
    const typed = values[name];
    if (allowed === undefined || typeof typed !== 'string' || allowed.includes(typed)) continue;
    const near = nearest(typed, allowed);
    throw new CliStop(
      EXIT.usage,
      `--${name} is "${cleanLine(typed).slice(0, LONGEST_SHOWN)}". Allowed: ${allowed.join(', ')}.${allowed.length === 1 ? ` ${sentenceOf(says)}` : ''}${near === undefined ? '' : ` Did you mean "${near}"?`}`,
    );
  }
}

const sentenceOf = (says: string): string => `${says.charAt(0).toUpperCase()}${says.slice(1)}.`;

export const PRICES_OPTION: OptionSpec = {
  type: 'string',
  value: 'FILE',
  says: 'your packs, prices and what is in the shed: CSV with the columns material, size, unit, price, stock, have, how; or JSON',
};

export const UNITS_OPTION: OptionSpec = {
  type: 'string',
  value: 'UNITS',
  allowed: UNITS,
  says: `${UNITS.join(' or ')}, for what you read; metric if not given, and JSON is metric always`,
};

/** Of a command that has nothing to say in US units: they are refused, and why is told. */
export const metricUnits = (why: string): OptionSpec => ({
  type: 'string',
  value: 'UNITS',
  allowed: ['metric'],
  says: why,
});

/** The units asked for; a word that is neither was refused when the arguments were read. */
export const unitsOf = (args: ParsedArgs): Units =>
  UNITS.find((each) => each === args.text('units')) ?? 'metric';

/** Help for one command, from its own table. */
export function helpOf(command: Command, commandLine: CommandLine): string {
  const options = Object.entries({ ...command.options, ...COMMON_OPTIONS });
  const rows = options.map(([name, { short, value, allowed, says }]) => {
    const left = `${short === undefined ? '' : `-${short}, `}--${name}${value === undefined ? '' : ` ${value}`}`;
    return `  ${left.padEnd(22)} ${allowed === undefined ? '' : `${allowed.join(', ')}; `}${says}`;
  });
  return `${command.summary}\n\nUsage: ${commandLine(command.usage)}\n\nOptions\n${rows.join('\n')}\n`;
}
