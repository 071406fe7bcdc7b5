import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { writeSession } from '../../src/session/saved-session.js';
import { loadSessionFile, openStore, saveSessionFile, sessionFolder } from '../../src/session/store.js';
import { SESSION } from './sample-session.js';

const DAY = parseIsoDate('2026-11-25');
let home = '';
let folder = '';
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'store-'));
  folder = join(home, 'state', 'seedbed');
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const store = (pid = 100, running: readonly number[] = []) =>
  openStore({ folder, pid, isRunning: (each) => running.includes(each) });
const modeOf = (path: string) => statSync(path).mode & 0o777;

describe('the folder of sessions', () => {
  // XDG Base Directory Specification 0.8: the default, and that a relative path is to be ignored.
  it.each([
    [{ XDG_STATE_HOME: '/s' }, '/s/seedbed'],
    [{}, '/home/a/.local/state/seedbed'],
    [{ XDG_STATE_HOME: '' }, '/home/a/.local/state/seedbed'],
    [{ XDG_STATE_HOME: 'relative' }, '/home/a/.local/state/seedbed'],
    [{ HOME: '' }, '/home/a/.local/state/seedbed'],
    [{ HOME: '/home/b' }, '/home/b/.local/state/seedbed'],
  ])('for %j is %s', (env, path) => {
    expect(sessionFolder(env, () => '/home/a')).toBe(path);
  });

  it('is made for its owner alone, and so is every file in it', async () => {
    const before = process.umask(0o000);
    try {
      const { name, release } = await store().begin(DAY);
      await store().save(name, SESSION);
      expect(modeOf(folder)).toBe(0o700);
      for (const file of readdirSync(folder)) expect(modeOf(join(folder, file))).toBe(0o600);
      await release();
    } finally {
      process.umask(before);
    }
  });
});

describe('saving and loading', () => {
  it('gives back what was saved, and leaves nothing else in the folder', async () => {
    await store().save('a', SESSION);
    await store().save('a', { ...SESSION, dormant: [] });
    expect(await store().load('a')).toEqual({ kind: 'whole', session: { ...SESSION, dormant: [] } });
    expect(readdirSync(folder)).toEqual(['a.session.json']);
  });

  it('keeps the old session when a new one cannot be written', async () => {
    await store().save('a', SESSION);
    const [file] = readdirSync(folder);
    rmSync(join(folder, 'b'), { force: true });
    // Root may write anywhere, so the obstacle is a folder where the file should be.
    await expect(saveSessionFile(join(folder, 'missing', 'a.session.json'), SESSION)).rejects.toThrow();
    expect(readFileSync(join(folder, file as string), 'utf8')).toBe(writeSession(SESSION));
  });

  it('handles many saves at once as if one came after the other', async () => {
    const versions = Array.from({ length: 20 }, (_, count) => ({
      ...SESSION,
      answers: SESSION.answers.slice(0, count % 6),
    }));
    const one = store();
    await Promise.all(versions.map((session) => one.save('a', session)));
    expect(await one.load('a')).toMatchObject({ kind: 'whole' });
    expect(readdirSync(folder)).toEqual(['a.session.json']);
  });

  it('finds nothing where there is nothing', async () => {
    expect(await store().load('a')).toEqual({ kind: 'missing' });
    expect(await store().list()).toEqual([]);
  });

  it('removes a session that is finished', async () => {
    await store().save('a', SESSION);
    await store().remove('a');
    await store().remove('a');
    expect(await store().list()).toEqual([]);
  });

  it.each(['../a', 'a/b', '', '.', 'A', 'a.b', 'a\0'])(
    'takes no name that could leave the folder: %j',
    async (name) => {
      await expect(store().save(name, SESSION)).rejects.toThrow('no name of a session');
      await expect(store().lock(name)).rejects.toThrow('no name of a session');
    },
  );

  it('lists the newest first, and nothing that is no session', async () => {
    const one = store();
    await one.save('older', SESSION);
    await new Promise((resolve) => setTimeout(resolve, 20));
    await one.save('newer', SESSION);
    writeFileSync(join(folder, 'other.txt'), '');
    writeFileSync(join(folder, 'x.session.json.damaged'), '');
    expect((await one.list()).map(({ name }) => name)).toEqual(['newer', 'older']);
  });
});

describe('a damaged file', () => {
  it('is set aside under a free name, and what can be read comes back', async () => {
    const one = store();
    await one.save('a', SESSION);
    const path = join(folder, 'a.session.json');
    const cut = readFileSync(path, 'utf8').slice(0, -60);
    for (const aside of ['a.session.json.damaged', 'a.session.json.2.damaged', 'a.session.json.3.damaged']) {
      writeFileSync(path, cut);
      expect(await one.load('a')).toMatchObject({
        kind: 'damaged',
        setAsideAs: join(folder, aside),
        salvaged: { answers: SESSION.answers, pack: SESSION.pack, startedOn: SESSION.startedOn },
      });
      expect(readFileSync(join(folder, aside), 'utf8')).toBe(cut);
      expect(existsSync(path)).toBe(false);
    }
    expect(await one.list()).toEqual([]);
  });

  it('cut at any byte never stops a session from being begun', async () => {
    const one = store();
    const bytes = Buffer.from(writeSession(SESSION));
    const path = join(folder, 'a.session.json');
    await one.save('a', SESSION);
    for (let length = 0; length < bytes.length - 1; length += 7) {
      writeFileSync(path, bytes.subarray(0, length));
      const loaded = await one.load('a');
      expect(loaded.kind).toBe('damaged');
      if (loaded.kind === 'damaged') rmSync(loaded.setAsideAs);
    }
    expect((await one.begin(DAY)).name).toBe('2026-11-25');
  });

  it('of another format is left where it is', async () => {
    const path = join(home, 'other.json');
    writeFileSync(path, '{"format":2}');
    expect(await loadSessionFile(path)).toMatchObject({ kind: 'foreign' });
    expect(readFileSync(path, 'utf8')).toBe('{"format":2}');
  });

  it('that cannot be read at all is an error, and no lost session', async () => {
    await expect(loadSessionFile(home)).rejects.toThrow(/EISDIR/);
  });
});

describe('two sessions at once', () => {
  it('are told apart by a lock that names its process', async () => {
    const first = store(100, [100, 200]);
    const second = store(200, [100, 200]);
    const lock = await first.lock('a');
    expect(lock.kind).toBe('held');
    expect(await second.lock('a')).toEqual({
      kind: 'busy',
      pid: 100,
      lockPath: join(folder, 'a.session.json.lock'),
    });
    expect(await first.lock('a')).toMatchObject({ kind: 'busy', pid: 100 });
    if (lock.kind === 'held') await lock.release();
    expect((await second.lock('a')).kind).toBe('held');
  });

  it('never release a lock that is no longer theirs', async () => {
    const lock = await store(100).lock('a');
    const taken = await store(200, []).lock('a');
    expect(taken.kind).toBe('held');
    if (lock.kind === 'held') await lock.release();
    expect(readFileSync(join(folder, 'a.session.json.lock'), 'utf8')).toBe('200\n');
  });

  it('take over a lock whose process is gone, is itself reborn, or wrote nothing', async () => {
    for (const left of ['300\n', '100\n', '', 'rubbish']) {
      await store().save('a', SESSION);
      writeFileSync(join(folder, 'a.session.json.lock'), left);
      const lock = await store(100, []).lock('a');
      expect(lock.kind).toBe('held');
      if (lock.kind === 'held') await lock.release();
      expect(readdirSync(folder)).toEqual(['a.session.json']);
    }
  });

  it('get names of their own on the same day', async () => {
    const one = store(100, [100, 200]);
    const other = store(200, [100, 200]);
    const names = await Promise.all(
      [one.begin(DAY), other.begin(DAY), one.begin(DAY)].map(async (begun) => (await begun).name),
    );
    expect(names.sort()).toEqual(['2026-11-25', '2026-11-25-2', '2026-11-25-3']);
  });

  it('show in the list who holds which', async () => {
    const one = store(100, [100]);
    const { name, release } = await one.begin(DAY);
    await one.save(name, SESSION);
    expect(await store(200, [100]).list()).toMatchObject([{ name, heldBy: 100 }]);
    await release();
    expect(await store(200, [100]).list()).toMatchObject([{ name, heldBy: undefined }]);
  });

  it('see a real process for as long as it lives', async () => {
    const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
    try {
      await store().save('a', SESSION);
      writeFileSync(join(folder, 'a.session.json.lock'), `${child.pid}\n`);
      expect(await openStore({ folder }).lock('a')).toMatchObject({ kind: 'busy', pid: child.pid });
    } finally {
      const gone = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGKILL');
      await gone;
    }
    expect((await openStore({ folder }).lock('a')).kind).toBe('held');
  });
});

describe('a session saved through a link', () => {
  it('is written to the file behind it', async () => {
    const target = join(home, 'real.json');
    writeFileSync(target, '');
    chmodSync(target, 0o644);
    symlinkSync(target, join(home, 'link.json'));
    await saveSessionFile(join(home, 'link.json'), SESSION);
    expect(readFileSync(target, 'utf8')).toBe(writeSession(SESSION));
    expect(modeOf(target)).toBe(0o600);
  });
});
