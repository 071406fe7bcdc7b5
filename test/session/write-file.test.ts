/** The one writer: whole or not at all, whatever fails, and never over what is no plain file or was read. */
import { spawnSync } from 'node:child_process';
import * as fs from 'node:fs';
import * as promises from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Disk, fileKey, writeWhole } from '../../src/session/write-file.js';

const OLD = 'the old text\n';
const NEW = 'the new text, ä and €\n'.repeat(500);
const MODE_BITS = 0o777;
let folder: string;
beforeEach(() => {
  folder = fs.mkdtempSync(join(tmpdir(), 'writer-'));
});
afterEach(() => fs.rmSync(folder, { recursive: true, force: true }));
const at = (name: string) => join(folder, name);
const read = (name: string) => fs.readFileSync(at(name), 'utf8');
const fault = (code: string) => Object.assign(new Error(`${code}: made by the test`), { code });

/** A disk whose call number `failing` fails; calls of an open file count too. */
function failingDisk(failing: number, code: string): { readonly disk: Disk; readonly calls: string[] } {
  const calls: string[] = [];
  const counted =
    (name: string, call: (...args: never[]) => unknown) =>
    async (...args: never[]): Promise<unknown> => {
      calls.push(name);
      if (calls.length === failing) throw fault(code);
      const result = await call(...args);
      return name === 'open' ? countedHandle(result as promises.FileHandle) : result;
    };
  const countedHandle = (handle: promises.FileHandle) => ({
    writeFile: counted('handle.writeFile', (bytes: never) => handle.writeFile(bytes)),
    sync: counted('handle.sync', () => handle.sync()),
    stat: counted('handle.stat', () => handle.stat()),
    close: async () => {
      await handle.close();
      calls.push('handle.close');
      if (calls.length === failing) throw fault(code);
    },
  });
  const { lstat, open, readdir, realpath, rename, rm, stat } = promises;
  const disk = Object.fromEntries(
    [lstat, open, readdir, realpath, rename, rm, stat].map((call) => [call.name, counted(call.name, call)]),
  );
  return { disk: disk as unknown as Disk, calls };
}

describe('a file', () => {
  it('is written whole, and nothing else is left in its folder', async () => {
    await writeWhole(at('plan.md'), NEW);
    expect(read('plan.md')).toBe(NEW);
    expect(fs.readdirSync(folder)).toEqual(['plan.md']);
  });

  it('keeps the rights that it had, and a new one gets those that are asked for', async () => {
    fs.writeFileSync(at('plan.md'), OLD, { mode: 0o640 });
    await writeWhole(at('plan.md'), NEW);
    expect(fs.statSync(at('plan.md')).mode & MODE_BITS).toBe(0o640);
    await writeWhole(at('session.json'), NEW, { mode: 0o600 });
    expect(fs.statSync(at('session.json')).mode & MODE_BITS).toBe(0o600);
  });

  it('is the old one or the new one whichever call fails, and only a failed removal leaves a half behind', async () => {
    const { disk, calls } = failingDisk(0, '');
    fs.writeFileSync(at('plan.md'), OLD);
    await writeWhole(at('plan.md'), NEW, { disk });
    expect(calls).toContain('handle.sync');
    for (const code of ['EIO', 'ENOSPC', 'EACCES']) {
      for (let failing = 1; failing <= calls.length; failing++) {
        fs.writeFileSync(at('plan.md'), OLD);
        const broken = failingDisk(failing, code);
        const told = await writeWhole(at('plan.md'), NEW, { disk: broken.disk }).then(
          () => undefined,
          (error: Error) => error,
        );
        const name = `${code} at call ${failing}, ${broken.calls[failing - 1]}`;
        const now = read('plan.md');
        expect([OLD, NEW], name).toContain(now);
        if (told === undefined) expect(now, name).toBe(NEW);
        expect(fs.readdirSync(folder), name).toEqual(['plan.md']);
      }
    }
  });

  it('that the disk takes only in part is refused before the old one goes', async () => {
    fs.writeFileSync(at('plan.md'), OLD);
    const disk = {
      ...promises,
      open: async (...args: Parameters<typeof promises.open>) => {
        const handle = await promises.open(...args);
        const part = async (bytes: Buffer) => void (await handle.write(bytes, 0, 100));
        return {
          writeFile: part,
          sync: () => handle.sync(),
          stat: () => handle.stat(),
          close: () => handle.close(),
        };
      },
    } as unknown as Disk;
    await expect(writeWhole(at('plan.md'), NEW, { disk })).rejects.toThrow(/only 100 of \d+ bytes/);
    expect(read('plan.md')).toBe(OLD);
    expect(fs.readdirSync(folder)).toEqual(['plan.md']);
  });

  it('is written behind a link to a file, and the link stays', async () => {
    fs.writeFileSync(at('real.md'), OLD);
    fs.symlinkSync(at('real.md'), at('link.md'));
    await writeWhole(at('link.md'), NEW);
    expect(read('real.md')).toBe(NEW);
    expect(fs.lstatSync(at('link.md')).isSymbolicLink()).toBe(true);
  });

  it('takes away what a killed process left half-written, and nothing else', async () => {
    const gone = spawnSync(process.execPath, ['-e', '']).pid;
    const others = [`.seedbed-${process.ppid}-1.half`, 'plan.md.123', '.seedbed-x-1.half'];
    for (const name of [`.seedbed-${gone}-7.half`, ...others]) fs.writeFileSync(at(name), 'half');
    await writeWhole(at('plan.md'), NEW);
    expect(fs.readdirSync(folder).sort()).toEqual([...others, 'plan.md'].sort());
  });
});

describe('nothing is written', () => {
  const refused = (name: string, kept?: ReadonlySet<string>) =>
    writeWhole(at(name), NEW, { ...(kept && { kept }) }).then(
      () => 'written',
      (error: Error) => error.message,
    );

  it('over a folder, a pipe, a device or a link that leads nowhere', async () => {
    fs.mkdirSync(at('folder'));
    expect(spawnSync('mkfifo', [at('pipe')]).status).toBe(0);
    fs.symlinkSync('/dev/null', at('device'));
    fs.symlinkSync(at('not there'), at('dangling'));
    expect(await refused('folder')).toMatch(/folder/);
    expect(await refused('pipe')).toMatch(/pipe/);
    expect(await refused('device')).toMatch(/device/);
    expect(await refused('dangling')).toMatch(/leads nowhere/);
    expect(fs.readdirSync(folder).sort()).toEqual(['dangling', 'device', 'folder', 'pipe']);
    expect(fs.statSync(at('pipe')).isFIFO()).toBe(true);
  });

  it('over a file that must be kept, by whatever name it is reached', async () => {
    fs.writeFileSync(at('answers.json'), OLD);
    fs.symlinkSync(at('answers.json'), at('link'));
    fs.linkSync(at('answers.json'), at('second name'));
    const kept = new Set([fileKey(fs.statSync(at('answers.json')))]);
    for (const name of ['answers.json', 'link', 'second name', './answers.json'])
      expect(await refused(name, kept)).toMatch(/made from/);
    expect(read('answers.json')).toBe(OLD);
  });
});
