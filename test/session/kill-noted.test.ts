/** Whatever the screen has called noted is on the disk, however the program is killed. */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { newFolder } from '../cli/run.js';

const MAIN = resolve('dist/bin/main.js');
const KILLS = 30;
/** Steps of the killing times that share no factor with their span, so that they spread over it. */
const [STEP_MS, SPAN_MS] = [7, 61];
const folder = newFolder();
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What was typed in the example, in the order of its questions. */
const TYPED = readFileSync('transcripts-examples/mossy-family-lawn/transcript.txt', 'utf8')
  .split('\n')
  .filter((line) => line.startsWith('> '))
  .map((line) => line.slice(2));

/** What stood on the screen when the program was killed, a while after it first noted something. */
async function saidBeforeKill(file: string, afterMs: number): Promise<string> {
  const env = { PATH: process.env.PATH, HOME: folder, XDG_STATE_HOME: folder };
  const child = spawn(process.execPath, [MAIN, 'ask', '--plain', '--save', file], { env });
  let said = '';
  const hear = (data: Buffer): void => {
    const isFirst = !said.includes('Noted') && String(data).includes('Noted');
    said += String(data);
    if (isFirst) setTimeout(() => child.kill('SIGKILL'), afterMs);
  };
  child.stderr.on('data', hear);
  child.stdout.on('data', hear);
  child.stdin.on('error', () => undefined);
  child.stdin.write(`${TYPED.join('\n')}\n`);
  await new Promise((done) => child.once('close', done));
  return said;
}

it(`a session that is killed ${KILLS} times has everything that was noted`, {
  timeout: 120_000,
}, async () => {
  const counts: number[] = [];
  for (let kill = 0; kill < KILLS; kill++) {
    const file = join(folder, `${kill}.json`);
    const said = await saidBeforeKill(file, (kill * STEP_MS) % SPAN_MS);
    const noted = said.match(/^Noted: /gm)?.length ?? 0;
    const { answers } = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : { answers: [] };
    const saved = (answers as { value: unknown }[]).filter(({ value }) => value !== 'unknown').length;
    expect(saved, said).toBeGreaterThanOrEqual(noted);
    counts.push(noted);
  }
  // The kills really come in the middle.
  expect(Math.max(...counts)).toBeGreaterThan(1);
  expect(Math.min(...counts)).toBeLessThan(TYPED.length);
});
