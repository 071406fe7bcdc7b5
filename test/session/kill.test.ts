import { spawn } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openStore } from '../../src/session/store.js';
import { compiledSource } from './compiled-source.js';

const KILLS = 25;
let folder = '';
beforeAll(() => {
  folder = compiledSource(['src/session/store.ts']);
  writeFileSync(join(folder, 'kill-script.mjs'), readFileSync('test/session/kill-script.mjs'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** How many answers were confirmed on the screen when the process was killed, a varying time after its start. */
async function confirmedBeforeKill(sessions: string, first: number, afterMs: number): Promise<number> {
  const child = spawn(process.execPath, ['kill-script.mjs', sessions, String(first)], { cwd: folder });
  let text = '';
  child.stdout.on('data', (data) => {
    if (text === '') setTimeout(() => child.kill('SIGKILL'), afterMs);
    text += String(data);
  });
  await new Promise((resolve) => child.once('close', resolve));
  return Number(text.split('\n').at(-2));
}

it(`a session that is killed ${KILLS} times has every answer that was confirmed`, {
  timeout: 60_000,
}, async () => {
  const sessions = join(folder, 'sessions');
  let confirmed = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    confirmed = await confirmedBeforeKill(sessions, confirmed, (kill * 7) % 23);
    const loaded = await openStore({ folder: sessions }).load('a');
    if (loaded.kind !== 'whole') throw new Error(`after kill ${kill + 1} the session is ${loaded.kind}`);
    // One more may have been saved just before it could be said.
    expect(loaded.session.answers.length - confirmed).toBeGreaterThanOrEqual(0);
    expect(loaded.session.answers.length - confirmed).toBeLessThanOrEqual(1);
  }
  expect(confirmed).toBeGreaterThan(KILLS);
});
