/** Whether a file could be written at the end, asked before anything is typed that would be lost. */
import { constants } from 'node:fs';
import { access, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

/** Why nothing can be written there, in words; undefined when it can, as far as one can tell beforehand. */
export async function whyNotWritten(file: string): Promise<string | undefined> {
  if (file === '-') return undefined;
  const there = await stat(file).catch(() => undefined);
  if (there?.isDirectory() === true) return 'it is a folder';
  const folder = dirname(resolve(file));
  const isFolder = (await stat(folder).catch(() => undefined))?.isDirectory() === true;
  if (!isFolder) return `there is no folder ${folder}`;
  const isOpen = await access(folder, constants.W_OK).then(
    () => true,
    () => false,
  );
  return isOpen ? undefined : `nothing may be written in ${folder}`;
}
