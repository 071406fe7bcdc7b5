#!/usr/bin/env node
/** The executable: finds the command, runs it, turns what went wrong into a message and an exit code. */
import { readFileSync } from 'node:fs';
import { cleanLine, cleanShown } from '../base/clean-text.js';
import { nearest } from '../base/nearest.js';
import { COMMANDS, generalHelp, START } from './commands.js';
import { commandLineFor } from './how-started.js';
import { CliStop, EXIT, isScheduleClash } from './io.js';
import { PACKAGE_FILE } from './paths.js';

const LONGEST_SHOWN = 60;
const LONGEST_MESSAGE = 20_000;
const commandLine = commandLineFor(process.env);

async function main(argv: readonly string[]): Promise<number> {
  const [first = '', ...rest] = argv;
  if (first === '--version' && rest.length === 0) return print(`${version()}\n`);
  if (first === '-h' || first === '--help' || (first === 'help' && rest.length === 0))
    return print(generalHelp(version(), commandLine));
  const isOption = first === '' || first.startsWith('-');
  const name = isOption ? 'start' : first === 'help' ? (rest[0] as string) : first;
  const entry = isOption ? START : COMMANDS.find((each) => each.name === name);
  if (entry === undefined) {
    const near = nearest(
      name,
      COMMANDS.map((each) => each.name),
    );
    throw new CliStop(
      EXIT.usage,
      `There is no command "${cleanLine(name).slice(0, LONGEST_SHOWN)}".${near === undefined ? '' : ` Did you mean "${near}"?`} "${commandLine('--help')}" lists them all.`,
    );
  }
  const [{ readArgs, helpOf }, command, { nodeIo }] = await Promise.all([
    import('./command.js'),
    entry.load(),
    import('./node-io.js'),
  ]);
  if (first === 'help' && rest.length === 1) return print(helpOf(command, commandLine));
  if (first === 'help')
    throw new CliStop(EXIT.usage, `"help" takes the name of one command; found ${rest.length} words.`);
  const args = readArgs(isOption ? argv : rest, command);
  if (args.flag('help')) return print(helpOf(command, commandLine));
  if (args.flag('version')) return print(`${version()}\n`);
  const io = nodeIo({ width: widthOf(args.text('width')), noColour: args.flag('no-colour') });
  return command.run(args, io);
}

function print(text: string): number {
  process.stdout.write(text);
  return EXIT.done;
}

function widthOf(typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined;
  const width = Number(typed);
  if (Number.isInteger(width) && width >= 40 && width <= 400) return width;
  throw new CliStop(EXIT.usage, `--width is "${typed}". Give a whole number from 40 to 400.`);
}

function version(): string {
  const text = readFileSync(PACKAGE_FILE, 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

/** A message to the person, harmless and never longer than anyone reads. */
function tell(message: string): void {
  const isLong = message.length > LONGEST_MESSAGE;
  const rest = isLong ? `\n… and ${message.length - LONGEST_MESSAGE} characters more.` : '';
  process.stderr.write(`${cleanShown(message.slice(0, LONGEST_MESSAGE))}${rest}\n`);
}

/** A reader that went away, as in `seedbed plan x.json | head`, is no error. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
});

const argv = process.argv.slice(2);
try {
  process.exitCode = await main(argv);
} catch (error) {
  if (error instanceof CliStop) {
    const usage = error.usage === undefined ? '' : `\nUsage: ${commandLine(error.usage)}`;
    tell(`${error.message}${usage}`);
    process.exitCode = error.exitCode;
  } else if (isScheduleClash(error)) {
    tell(error.message);
    process.exitCode = EXIT.answers;
  } else {
    const { message, stack } = error as Error;
    tell(
      argv.includes('--debug')
        ? `${stack}`
        : `Something went wrong that should not have: ${message}. Nothing that was saved is lost. Run it again with --debug to see where.`,
    );
    process.exitCode = EXIT.unexpected;
  }
}
