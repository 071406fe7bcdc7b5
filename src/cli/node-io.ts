/** The real streams, files, clock and environment. */
import { createReadStream, existsSync } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { cleanShown } from '../base/clean-text.js';
import { fileKey, writeWhole } from '../session/write-file.js';
import { commandLineFor } from './how-started.js';
import { type CliIo, CliStop, EXIT } from './io.js';
import { loadPack } from './load-pack.js';
import { localDay } from './local-time.js';
import { textLines } from './text-lines.js';

const NARROWEST = 40;
const USUAL_WIDTH = 80;

export interface Overrides {
  readonly width?: number | undefined;
  readonly noColour?: boolean;
}

export function nodeIo({ width, noColour = false }: Overrides = {}): CliIo {
  const { env, stdin, stdout, stderr } = process;
  const columns = width ?? stdout.columns ?? Number(env.COLUMNS);
  /** The files that were read: no result is written over one of them. */
  const read = new Set<string>();
  const note = async (path: string) => void read.add(fileKey(await stat(path)));
  return {
    out: (text) => void stdout.write(cleanShown(text)),
    err: (text) => void stderr.write(cleanShown(text)),
    input: stdin,
    output: stdout,
    dialogue: stdout.isTTY === true ? stdout : stderr,
    today: localDay(new Date()),
    commandLine: commandLineFor(env),
    width: Number.isFinite(columns) && columns > 0 ? Math.max(NARROWEST, columns) : USUAL_WIDTH,
    colour: !noColour && !env.NO_COLOR && env.TERM !== 'dumb' && stdout.isTTY === true,
    env,
    readText: async (path) => {
      try {
        if (path === '-') return await readAll(stdin);
        await note(path);
        return await readFile(path, 'utf8');
      } catch (error) {
        throw unreadable(path, error);
      }
    },
    readLines: async function* (path) {
      try {
        if (path !== '-') await note(path);
        yield* textLines(path === '-' ? stdin : createReadStream(path));
      } catch (error) {
        throw unreadable(path, error);
      }
    },
    exists: existsSync,
    writeText: (path, text) => written(path, text, read),
    rewriteText: (path, text) => written(path, text),
    loadPack,
  };
}

async function written(path: string, text: string, kept?: ReadonlySet<string>): Promise<void> {
  try {
    await writeWhole(path, text, { ...(kept && { kept }) });
  } catch (error) {
    throw new CliStop(
      EXIT.files,
      `${path} cannot be written: ${plainReason(error)}. Choose another place for it.`,
    );
  }
}

const unreadable = (path: string, error: unknown): CliStop =>
  new CliStop(EXIT.files, `${path} cannot be read: ${plainReason(error)}. Check the name and try again.`);

async function readAll(stream: NodeJS.ReadableStream): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(Buffer.from(chunk as Buffer));
  return Buffer.concat(chunks).toString('utf8');
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'it is not permitted',
  EISDIR: 'it is a folder',
  ENOSPC: 'the disk is full',
};

function plainReason(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return REASONS[code ?? ''] ?? message;
}
