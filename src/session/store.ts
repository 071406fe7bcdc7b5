/**
 * Saved sessions on disk. Each is written whole or not at all (write-file.ts), so that a crash leaves the old session
 * or the new one. A lock file tells two sessions apart.
 */
import type { Stats } from 'node:fs';
import { chmod, mkdir, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { userInfo } from 'node:os';
import { dirname, isAbsolute, join } from 'node:path';
import type { IsoDate } from '../base/dates.js';
import { openLocks, type SessionLock } from './lock.js';
import { readSession, type SavedSession, type SessionReading, writeSession } from './saved-session.js';
import { writeWhole } from './write-file.js';

const ENDING = '.session.json';
/** Sessions that led to a plan: kept, and not offered again. */
const FINISHED_ENDING = '.finished.json';
/** Folder of the rules that sessions were begun with; the latest few are kept. */
const RULES = 'rules';
const MOST_RULES = 8;
const NAME = /^[a-z0-9][a-z0-9-]*$/;
const FOLDER_MODE = 0o700;
const FILE_MODE = 0o600;
/** Names tried for sessions begun on the same day. */
const MOST_A_DAY = 1000;

export interface SessionSummary {
  readonly name: string;
  readonly path: string;
  /** For sorting and for "saved on …"; newest first. */
  readonly savedAtMs: number;
  /** The process that has it open now. */
  readonly heldBy: number | undefined;
}

export type LoadedSession =
  | Extract<SessionReading, { kind: 'whole' | 'foreign' }>
  /** The damaged file was renamed; what was readable comes back. */
  | (Extract<SessionReading, { kind: 'damaged' }> & { readonly setAsideAs: string })
  | { readonly kind: 'missing' };

export interface SessionStore {
  readonly folder: string;
  list(): Promise<SessionSummary[]>;
  /** Takes a free name for a session begun on this day, and its lock. */
  begin(startedOn: IsoDate): Promise<{ readonly name: string; readonly release: () => Promise<void> }>;
  lock(name: string): Promise<SessionLock>;
  pathOf(name: string): string;
  /** What the file holds, without taking it up: a damaged one stays where it is. */
  glance(name: string): Promise<SessionReading | undefined>;
  load(name: string): Promise<LoadedSession>;
  save(name: string, session: SavedSession): Promise<void>;
  /** Puts a session that led to a plan under another name; gives back the new path. */
  finish(name: string): Promise<string>;
  /** Removes a session that is not wanted. */
  remove(name: string): Promise<void>;
  /** Keeps the rules that sessions are answered by, so that one can be finished by them after they change. */
  keepRules(sha256: string, text: () => string): Promise<void>;
  /** Rules kept before, or undefined. */
  rulesOf(sha256: string): Promise<string | undefined>;
}

export interface StoreSettings {
  readonly folder: string;
  readonly pid?: number;
  readonly isRunning?: (pid: number) => boolean;
}

/**
 * The folder for sessions by the XDG Base Directory rules: `$XDG_STATE_HOME/seedbed`, else
 * `~/.local/state/seedbed`. A relative or empty value is ignored, as the rules say.
 *
 * @source XDG Base Directory Specification 0.8
 */
export function sessionFolder(
  { XDG_STATE_HOME: state = '', HOME: home = '' }: Readonly<Record<string, string | undefined>>,
  homeOfUser: () => string = () => userInfo().homedir,
): string {
  const base = isAbsolute(state) ? state : join(isAbsolute(home) ? home : homeOfUser(), '.local', 'state');
  return join(base, 'seedbed');
}

export function openStore({ folder, pid, isRunning }: StoreSettings): SessionStore {
  const locks = openLocks(pid, isRunning);
  const pathOf = (name: string) => join(folder, `${checkedName(name)}${ENDING}`);
  const finishedPathOf = (name: string) => join(folder, `${checkedName(name)}${FINISHED_ENDING}`);

  const lock = async (name: string): Promise<SessionLock> => {
    const path = pathOf(name);
    await makeFolder(folder);
    return locks.take(path);
  };

  return {
    folder,
    lock,
    async list() {
      const names = (await namesIn(folder)).filter((name) => name.endsWith(ENDING));
      const summaries = await Promise.all(
        names.map(async (fileName) => {
          const path = join(folder, fileName);
          const name = fileName.slice(0, -ENDING.length);
          const facts = await factsOf(path);
          if (facts === undefined || !NAME.test(name)) return undefined;
          return { name, path, savedAtMs: facts.mtimeMs, heldBy: await locks.holderOf(path) };
        }),
      );
      return summaries
        .filter((summary) => summary !== undefined)
        .sort((a, b) => b.savedAtMs - a.savedAtMs || (a.name < b.name ? 1 : -1));
    },
    async begin(startedOn) {
      for (let count = 1; count <= MOST_A_DAY; count++) {
        const name = count === 1 ? startedOn : `${startedOn}-${count}`;
        const taken = [pathOf(name), finishedPathOf(name)];
        if ((await Promise.all(taken.map(factsOf))).some((facts) => facts !== undefined)) continue;
        const locked = await lock(name);
        if (locked.kind === 'held') return { name, release: locked.release };
      }
      throw new Error(
        `There are more than ${MOST_A_DAY} sessions of ${startedOn} in ${folder}. Remove some.`,
      );
    },
    pathOf,
    async glance(name) {
      const text = await readFile(pathOf(name), 'utf8').catch(() => undefined);
      return text === undefined ? undefined : readSession(text);
    },
    load: (name) => loadSessionFile(pathOf(name)),
    async save(name, session) {
      await makeFolder(folder);
      await saveSessionFile(pathOf(name), session);
    },
    async finish(name) {
      await rename(pathOf(name), finishedPathOf(name));
      return finishedPathOf(name);
    },
    remove: (name) => rm(pathOf(name), { force: true }),
    async keepRules(sha256, text) {
      const path = join(folder, RULES, `${sha256}.json`);
      if ((await factsOf(path)) !== undefined) return;
      await makeFolder(join(folder, RULES));
      await writeWhole(path, text(), { mode: FILE_MODE });
      await dropOldest(join(folder, RULES));
    },
    rulesOf: (sha256) => readFile(join(folder, RULES, `${sha256}.json`), 'utf8').catch(() => undefined),
  };
}

/** Writes a session to any path, so that a crash at any moment leaves the old file or the new one. */
export const saveSessionFile = (path: string, session: SavedSession): Promise<void> =>
  writeWhole(path, writeSession(session), { mode: FILE_MODE });

/** Reads a session file; a damaged one is renamed to `*.damaged`, so that it is never written over. */
export async function loadSessionFile(path: string): Promise<LoadedSession> {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  });
  if (text === undefined) return { kind: 'missing' };
  const reading = await readSession(text);
  if (reading.kind !== 'damaged') return reading;
  return { ...reading, setAsideAs: await setAside(path) };
}

/** The damaged file under a name that nothing else has. */
async function setAside(path: string): Promise<string> {
  for (let count = 1; ; count++) {
    const aside = count === 1 ? `${path}.damaged` : `${path}.${count}.damaged`;
    if ((await factsOf(aside)) !== undefined) continue;
    await rename(path, aside);
    return aside;
  }
}

/**
 * Makes a folder for nobody but its owner, and those above it. One by one: where a file system takes no folders, the
 * recursive call of Node 20 goes on for ever.
 */
export async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, FOLDER_MODE);
    // The mode given above is cut by the umask.
    await chmod(folder, FOLDER_MODE);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST' && (await factsOf(folder))?.isDirectory() === true) return;
    const above = dirname(folder);
    if (code !== 'ENOENT' || (await factsOf(above)) !== undefined) throw error;
    await makeFolder(above);
    await makeFolder(folder);
  }
}

async function factsOf(path: string): Promise<Stats | undefined> {
  return stat(path).catch(() => undefined);
}

async function namesIn(folder: string): Promise<string[]> {
  return readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw error;
  });
}

async function dropOldest(folder: string): Promise<void> {
  const files = await Promise.all(
    (await namesIn(folder)).map(async (name) => ({
      name,
      keptAtMs: (await factsOf(join(folder, name)))?.mtimeMs ?? 0,
    })),
  );
  const old = files.sort((a, b) => b.keptAtMs - a.keptAtMs).slice(MOST_RULES);
  await Promise.all(old.map(({ name }) => rm(join(folder, name), { force: true })));
}

/** A name is part of a path, so nothing but plain letters, figures and hyphens is let in. */
function checkedName(name: string): string {
  if (!NAME.test(name))
    throw new Error(`"${name}" is no name of a session: use letters, figures and hyphens.`);
  return name;
}
