/** What a command may touch: streams, files, the day, the width. Passed in, so that a test can stand in for all of it. */
import type { Readable, Writable } from 'node:stream';
import type { IsoDate } from '../base/dates.js';
import type { Pack } from '../rules/pack.js';
import type { CommandLine } from './how-started.js';

export const EXIT = {
  done: 0,
  unexpected: 1,
  usage: 2,
  answers: 3,
  pack: 4,
  files: 5,
  rulesFound: 6,
  interrupted: 130,
} as const;

export interface CliIo {
  /** Results. */
  out(text: string): void;
  /** Everything else. */
  err(text: string): void;
  readonly input: Readable & { readonly isTTY?: boolean };
  readonly output: Writable & { readonly isTTY?: boolean };
  /** Where questions are shown: the terminal, or standard error when the output goes elsewhere. */
  readonly dialogue: Writable;
  readonly today: IsoDate;
  /** The line that runs the program with these words, as it was started: `npm start -- ask`. */
  readonly commandLine: CommandLine;
  readonly width: number;
  readonly colour: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The whole text of a file, or of standard input for `-`. */
  readText(path: string): Promise<string>;
  /** The same line by line, without holding the whole. */
  readLines(path: string): AsyncIterable<string>;
  exists(path: string): boolean;
  /** Writes a result, whole or not at all; never over a file that was read. */
  writeText(path: string, text: string): Promise<void>;
  /** The same for a file that the program itself keeps up to date. */
  rewriteText(path: string, text: string): Promise<void>;
  /** The bundled pack, or the one in a folder. */
  loadPack(folder: string | undefined): Promise<Pack>;
}

/** Stops a command with a message and an exit code; nothing was written. */
export class CliStop extends Error {
  override readonly name = 'CliStop';
  constructor(
    readonly exitCode: number,
    message: string,
    /** How the command is used, to be told after the message. */
    readonly usage?: string,
  ) {
    super(message);
  }
}

/** By its name, so that nobody need load the planner for it. */
export const isScheduleClash = (error: unknown): error is Error =>
  error instanceof Error && error.name === 'ScheduleClash';
