/**
 * An unfinished drill: every line that was typed, kept after each one, so that playing them again comes back to the
 * same place. Taken away once the drill is done.
 */
import { createHash } from 'node:crypto';
import { readFile, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { DrillCase } from '../../rules/schema-case.js';
import { makeFolder, sessionFolder } from '../../session/store.js';
import { writeWhole } from '../../session/write-file.js';
import type { Asker } from '../../terminal/asker.js';
import type { DrillMode } from '../../training/attempt.js';
import type { CliIo } from '../io.js';
import { LEAVING } from './parts.js';

const FILE_MODE = 0o600;

export interface KeptDrill {
  readonly format: 1;
  readonly caseId: string;
  /** Of the case and the rules: other ones would hear the same lines otherwise. */
  readonly madeOf: string;
  readonly mode: DrillMode;
  readonly minutes: number;
  /** Null: picked the line that goes back. */
  readonly typed: readonly (string | null)[];
}

/** What a kept drill was made of. */
export const madeOf = (lesson: DrillCase, packSha256: string): string =>
  createHash('sha256')
    .update(JSON.stringify([lesson, packSha256]))
    .digest('hex');

export const pathOfDrill = (io: Pick<CliIo, 'env'>, caseId: string): string =>
  join(sessionFolder(io.env), 'drills', `${caseId}.json`);

/** Undefined where there is none; one that cannot be read, or is of other rules, is set aside and told. */
export async function readKept(
  path: string,
  now: string,
  tell: (text: string) => void,
): Promise<KeptDrill | undefined> {
  const text = await readFile(path, 'utf8').catch(() => undefined);
  if (text === undefined) return undefined;
  const kept = soundKept(text);
  if (kept?.madeOf === now) return kept;
  const aside = `${path}.old`;
  await rename(path, aside);
  tell(
    kept === undefined
      ? `The unfinished drill cannot be read. It is kept as ${aside}, and this one begins afresh.`
      : `The case or its rules have changed since you left. What you typed is kept in ${aside}, and the case begins afresh.`,
  );
  return undefined;
}

function soundKept(text: string): KeptDrill | undefined {
  try {
    const value = JSON.parse(text) as Partial<KeptDrill> | null;
    const isTyped =
      Array.isArray(value?.typed) && value.typed.every((line) => line === null || typeof line === 'string');
    return value?.format === 1 && isTyped && typeof value.minutes === 'number'
      ? (value as KeptDrill)
      : undefined;
  } catch {
    return undefined;
  }
}

export async function writeKept(path: string, kept: KeptDrill): Promise<void> {
  await makeFolder(dirname(path));
  await writeWhole(path, `${JSON.stringify(kept, null, 2)}\n`, { mode: FILE_MODE });
}

export const dropKept = (path: string): Promise<void> => rm(path, { force: true });

/**
 * An asker that first hears the lines of before, showing only the story and what the last of them led to, and then
 * whoever sits there; every answer is handed to `keep` before anything comes of it.
 */
export function rememberingAsker(
  asker: Asker,
  before: readonly (string | null)[],
  keep: (typed: readonly (string | null)[]) => Promise<void>,
): Asker {
  const waiting = [...before];
  let typed: readonly (string | null)[] = before;
  let isUnderWay = false;
  const heard = async (ask: () => Promise<string | undefined>): Promise<string | undefined> => {
    isUnderWay = true;
    if (waiting.length > 0) return waiting.shift() ?? undefined;
    const answer = await ask();
    if (asker.left?.() !== undefined || (answer !== undefined && LEAVING.test(answer.trim()))) return answer;
    typed = [...typed, answer ?? null];
    await keep(typed);
    return answer;
  };
  return {
    ask: (prompt) => asker.ask(prompt),
    confirm: (message, suggested) => asker.confirm(message, suggested),
    close: () => asker.close(),
    pick: (...args) => heard(() => asker.pick(...args)),
    line: (...args) => heard(() => asker.line(...args)),
    // The story is told again, and what the last line led to.
    say: (text) => {
      if (!isUnderWay || waiting.length === 0) asker.say(text);
    },
    left: () => asker.left?.(),
  };
}
