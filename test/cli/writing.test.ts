/** What the commands write: nothing over an input or what is no plain file, nothing half on a full disk. */
import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

const ANSWERS = 'transcripts-examples/mossy-family-lawn/answers.json';
const OLD = 'the plan of last year\n';

/** A folder on a small disk of its own, full but for some bytes; undefined where none may be mounted. */
function smallDisk(freeBytes: number): { readonly folder: string; readonly unmount: () => void } | undefined {
  const folder = newFolder();
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=200k', 'tmpfs', folder]).status !== 0) return undefined;
  const unmount = () => void spawnSync('umount', ['-l', folder]);
  writeFileSync(join(folder, 'plan.md'), OLD);
  const fill = `head -c 300000 /dev/zero > ${folder}/fill; truncate -s -${freeBytes} ${folder}/fill`;
  spawnSync('sh', ['-c', fill]);
  return { folder, unmount };
}

describe('a plan', () => {
  it('is never written over its own answers, and says so', () => {
    const file = join(newFolder(), 'answers.json');
    cpSync(ANSWERS, file);
    const { code, err } = run(['plan', file, '--today', '2027-03-13', '--out', file, '--force']);
    expect(code).toBe(5);
    expect(err).toContain('it is one of the files that this was made from');
    expect(readFileSync(file, 'utf8')).toBe(readFileSync(ANSWERS, 'utf8'));
  });

  it('is not written into a pipe or a device', () => {
    const pipe = join(newFolder(), 'pipe');
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    const { code, err } = run(['plan', ANSWERS, '--today', '2027-03-13', '--out', pipe, '--force']);
    expect(code).toBe(5);
    expect(err).toContain('a pipe or a device');
    expect(statSync(pipe).isFIFO()).toBe(true);
  });

  it('on a full disk is told as not written, and the old one stays', ({ skip }) => {
    const disk = smallDisk(10_000);
    if (disk === undefined) return skip('no disk may be mounted here');
    try {
      const out = join(disk.folder, 'plan.md');
      const { code, err } = run(['plan', ANSWERS, '--today', '2027-03-13', '--out', out, '--force']);
      expect(code).toBe(5);
      expect(err).not.toContain('Saved');
      expect(err).toMatch(/cannot be written: (the disk is full|only \d+ of \d+ bytes fit)/);
      expect(readFileSync(out, 'utf8')).toBe(OLD);
    } finally {
      disk.unmount();
    }
  });
});

describe('a folder for sessions that cannot be made', () => {
  it.each([
    ['a plain file', (state: string) => writeFileSync(state, '')],
    ['a place where nobody can make a folder', (state: string) => void state],
  ])('is told, and the session goes on all the same: %s', (name, make) => {
    const state = name === 'a plain file' ? join(newFolder(), 'state') : '/proc';
    make(state);
    const { code, err, out } = run(['ask', '--plain'], 'yes\nquit\n', state);
    expect(code, err + out).not.toBe(1);
    expect(err + out).toContain('no folder for it can be made');
  });
});
