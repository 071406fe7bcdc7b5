/**
 * Saved sessions on disk: the only file of the session layer that touches it.
 *
 * A session is written whole to a new file, forced to the disk, renamed over the old one, and the folder is
 * forced too, so that a crash leaves the old session or the new one. A lock file tells two sessions apart.
 */
import type { Stats } from 'node:fs';
import { chmod, link, mkdir, open, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, isAbsolute, join } from 'node:path';
import type { IsoDate } from '../base/dates.js';
import { readSession, type SavedSession, type SessionReading, writeSession } from './saved-session.js';

const ENDING = '.session.json';
/** Sessions that led to a plan: kept, and not offered again. */
const FINISHED_ENDING = '.finished.json';
const LOCK_ENDING = '.lock';
const NAME = /^[a-z0-9][a-z0-9-]*$/;
const FOLDER_MODE = 0o700;
const FILE_MODE = 0o600;
/** Names tried for sessions begun on the same day. */
const MOST_A_DAY = 1000;
/** A lock without its pid in it is being written just now, or its writer died that instant. */
const EMPTY_LOCK_WAIT_MS = 100;

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

export type SessionLock =
  | { readonly kind: 'held'; readonly release: () => Promise<void> }
  | { readonly kind: 'busy'; readonly pid: number; readonly lockPath: string };

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
export function sessionFolder(env: Readonly<Record<string, string | undefined>>, home: string): string {
  const { XDG_STATE_HOME: state } = env;
  const base = state !== undefined && isAbsolute(state) ? state : join(home, '.local', 'state');
  return join(base, 'seedbed');
}

export function openStore({ folder, pid = process.pid, isRunning = isAlive }: StoreSettings): SessionStore {
  /** Locks taken here: after a crash, a new process can have the pid of the old one. */
  const held = new Set<string>();
  const pathOf = (name: string) => join(folder, `${checkedName(name)}${ENDING}`);
  const finishedPathOf = (name: string) => join(folder, `${checkedName(name)}${FINISHED_ENDING}`);
  const lockPathOf = (name: string) => `${pathOf(name)}${LOCK_ENDING}`;
  const holds = (lockPath: string, owner: number) => (owner === pid ? held.has(lockPath) : isRunning(owner));

  const lock = async (name: string): Promise<SessionLock> => {
    const lockPath = lockPathOf(name);
    await makeFolder(folder);
    for (;;) {
      if (await createLock(lockPath, pid)) {
        held.add(lockPath);
        await sweep(folder, `${name}${ENDING}`);
        const release = async () => {
          if (!held.delete(lockPath) || (await ownerOf(lockPath)) !== pid) return;
          await rm(lockPath, { force: true });
        };
        return { kind: 'held', release };
      }
      const owner = await ownerOf(lockPath);
      if (owner !== undefined && holds(lockPath, owner)) return { kind: 'busy', pid: owner, lockPath };
      await removeStale(lockPath, owner, pid);
    }
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
          const owner = await ownerOf(lockPathOf(name));
          const heldBy = owner !== undefined && holds(lockPathOf(name), owner) ? owner : undefined;
          return { name, path, savedAtMs: facts.mtimeMs, heldBy };
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
  };
}

/** Writes a session to any path, so that a crash at any moment leaves the old file or the new one. */
export async function saveSessionFile(path: string, session: SavedSession): Promise<void> {
  const bytes = Buffer.from(writeSession(session), 'utf8');
  const { default: writeFileAtomic } = await import('write-file-atomic');
  await writeFileAtomic(path, bytes, { mode: FILE_MODE });
  // A full disk can take a part of the bytes without an error, and the writer above would not notice.
  const written = (await stat(path)).size;
  if (written !== bytes.length)
    throw new Error(`only ${written} of ${bytes.length} bytes fit on the disk at ${path}`);
  await forceFolder(dirname(path));
}

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

async function makeFolder(folder: string): Promise<void> {
  const created = await mkdir(folder, { recursive: true, mode: FOLDER_MODE });
  // The mode given above is cut by the umask; and only the last folder is ours to close.
  if (created !== undefined) await chmod(folder, FOLDER_MODE);
}

/** Forces a rename to the disk. Some systems cannot open a folder; there the rename alone has to do. */
async function forceFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined);
  if (handle === undefined) return;
  try {
    await handle.sync();
  } catch {
    // EINVAL and EPERM on file systems that do not force folders.
  } finally {
    await handle.close();
  }
}

/** True when the lock file was created here; false when there is one. */
async function createLock(lockPath: string, pid: number): Promise<boolean> {
  try {
    await writeFile(lockPath, `${pid}\n`, { flag: 'wx', mode: FILE_MODE });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

/** The pid in the lock, or undefined when the lock is gone or holds none. */
async function ownerOf(lockPath: string): Promise<number | undefined> {
  for (let tries = 0; ; tries++) {
    const text = await readFile(lockPath, 'utf8').catch(() => undefined);
    if (text === undefined) return undefined;
    if (/^\d{1,10}\n$/.test(text)) return Number(text);
    if (tries > 0) return undefined;
    await new Promise((resolve) => setTimeout(resolve, EMPTY_LOCK_WAIT_MS));
  }
}

/**
 * Removes a lock whose owner is gone. It is renamed first and looked at again: if another process was quicker
 * and the lock is already a fresh one, it is put back.
 */
async function removeStale(lockPath: string, owner: number | undefined, pid: number): Promise<void> {
  const aside = `${lockPath}.${pid}.stale`;
  try {
    await rename(lockPath, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw error;
  }
  if ((await ownerOf(aside)) !== owner) await link(aside, lockPath).catch(() => undefined);
  await rm(aside, { force: true });
}

/** Whether a process runs: asking it with signal 0 does nothing to it. */
function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
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

/** Removes half-written files that a killed process left beside the session; whoever holds the lock may. */
async function sweep(folder: string, fileName: string): Promise<void> {
  const left = (await namesIn(folder)).filter(
    (name) => name.startsWith(`${fileName}.`) && /^\d+$/.test(name.slice(fileName.length + 1)),
  );
  await Promise.all(left.map((name) => rm(join(folder, name), { force: true })));
}

/** A name is part of a path, so nothing but plain letters, figures and hyphens is let in. */
function checkedName(name: string): string {
  if (!NAME.test(name))
    throw new Error(`"${name}" is no name of a session: use letters, figures and hyphens.`);
  return name;
}
