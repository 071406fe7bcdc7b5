/**
 * The one way in which a file is written: whole, or not at all.
 *
 * The text goes to a new file beside the old one, is forced to the disk and measured there, and only then takes the
 * old one's place. Whatever fails before leaves the old file as it was, and nothing beside it.
 */
import * as promises from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** What is asked of the disk; a test can stand in for it and fail each call in turn. */
export type Disk = Pick<
  typeof promises,
  'lstat' | 'open' | 'readdir' | 'realpath' | 'rename' | 'rm' | 'stat'
>;

export interface WriteSettings {
  /** Rights; without them a file that is there keeps its own. */
  readonly mode?: number;
  /** Files that must not be written over, by `fileKey`. */
  readonly kept?: ReadonlySet<string>;
  readonly disk?: Disk;
}

const NEW_FILE_MODE = 0o666;
const PERMISSIONS = 0o777;
const HALF_WRITTEN = /^\.seedbed-(\d+)-\d+\.half$/;
let halves = 0;

/** One file by whatever name it is reached. */
export const fileKey = ({ dev, ino }: { readonly dev: number; readonly ino: number }): string =>
  `${dev}:${ino}`;

/**
 * Writes a text, so that a crash at any moment leaves the old file or the new one.
 *
 * @throws {Error} in plain words where the place is no plain file or one that must be kept; else what the disk said
 */
export async function writeWhole(path: string, text: string, settings: WriteSettings = {}): Promise<void> {
  const { disk = promises, kept } = settings;
  const { target, old } = await placeOf(path, disk);
  if (old !== undefined && kept?.has(fileKey(old)) === true)
    throw new Error('it is one of the files that this was made from');
  const folder = dirname(target);
  await sweep(folder, disk);
  halves += 1;
  const half = join(folder, `.seedbed-${process.pid}-${halves}.half`);
  try {
    await writeForced(half, text, {
      disk,
      mode: settings.mode ?? (old === undefined ? NEW_FILE_MODE : old.mode & PERMISSIONS),
    });
    await disk.rename(half, target);
  } catch (error) {
    await disk.rm(half, { force: true }).catch(() => undefined);
    throw error;
  }
  await forceFolder(folder, disk);
}

/** Where the text is to lie: behind a link, if the path is one; and the file that is there now. */
async function placeOf(path: string, disk: Disk) {
  const facts = await disk.lstat(path).catch(unlessMissing);
  if (facts === undefined) return { target: path, old: undefined };
  const target = facts.isSymbolicLink() ? await disk.realpath(path).catch(unlessMissing) : path;
  if (target === undefined) throw new Error('it is a link that leads nowhere');
  const old = await disk.stat(target);
  if (old.isDirectory()) throw new Error('it is a folder');
  if (!old.isFile()) throw new Error('it is a pipe or a device and no plain file');
  return { target, old };
}

async function writeForced(
  path: string,
  text: string,
  { disk, mode }: { readonly disk: Disk; readonly mode: number },
): Promise<void> {
  const bytes = Buffer.from(text, 'utf8');
  const handle = await disk.open(path, 'wx', mode);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
    // A full disk can take a part of the bytes without an error.
    const { size } = await handle.stat();
    if (size !== bytes.length) throw new Error(`only ${size} of ${bytes.length} bytes fit on the disk`);
  } finally {
    await handle.close();
  }
}

/** Forces a rename to the disk. Some systems cannot open or force a folder; there the rename alone has to do. */
async function forceFolder(folder: string, disk: Disk): Promise<void> {
  const handle = await disk.open(folder, 'r').catch(() => undefined);
  if (handle === undefined) return;
  try {
    await handle.sync();
  } catch (error) {
    if (!['EINVAL', 'EPERM', 'ENOTSUP', 'EISDIR', 'EBADF'].includes(codeOf(error))) throw error;
  } finally {
    await handle.close();
  }
}

/** Takes away what a killed process of ours left half-written in this folder. */
async function sweep(folder: string, disk: Disk): Promise<void> {
  const names = await disk.readdir(folder).catch(() => [] as string[]);
  const left = names.filter((name) => {
    const pid = HALF_WRITTEN.exec(name)?.[1];
    return pid !== undefined && Number(pid) !== process.pid && !isAlive(Number(pid));
  });
  await Promise.all(left.map((name) => disk.rm(join(folder, basename(name)), { force: true }))).catch(
    () => undefined,
  );
}

/** Whether a process runs: asking it with signal 0 does nothing to it. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? '';

function unlessMissing(error: unknown): undefined {
  if (codeOf(error) !== 'ENOENT') throw error;
}
