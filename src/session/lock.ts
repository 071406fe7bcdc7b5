/** Lock files, by which two sessions at once are told apart: beside a session file, with the pid of its process. */
import { link, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { isAlive } from './write-file.js';

export type SessionLock =
  | { readonly kind: 'held'; readonly release: () => Promise<void> }
  | { readonly kind: 'busy'; readonly pid: number; readonly lockPath: string };

export interface Locks {
  /** The lock of the file at this path; its folder must be there. */
  take(path: string): Promise<SessionLock>;
  /** The process that holds it now. */
  holderOf(path: string): Promise<number | undefined>;
}

const LOCK_ENDING = '.lock';
const FILE_MODE = 0o600;
/** A lock without its pid in it is being written just now, or its writer died that instant. */
const EMPTY_LOCK_WAIT_MS = 100;

export function openLocks(pid = process.pid, isRunning = isAlive): Locks {
  /** Locks taken here: after a crash, a new process can have the pid of the old one. */
  const held = new Set<string>();
  const holds = (lockPath: string, owner: number) => (owner === pid ? held.has(lockPath) : isRunning(owner));
  return {
    async take(path) {
      const lockPath = `${path}${LOCK_ENDING}`;
      for (;;) {
        if (await createLock(lockPath, pid)) {
          held.add(lockPath);
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
    },
    async holderOf(path) {
      const lockPath = `${path}${LOCK_ENDING}`;
      const owner = await ownerOf(lockPath);
      return owner !== undefined && holds(lockPath, owner) ? owner : undefined;
    },
  };
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
