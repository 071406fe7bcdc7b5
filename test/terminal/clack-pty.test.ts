import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Prompt, Reply } from '../../src/terminal/asker.js';
import { compiledSource } from '../session/compiled-source.js';
import { FEEL, SUN } from './samples.js';
import { screenOf } from './screen.js';

/** A lone Escape is told from a longer key by a pause. */
const KEY_GAP_MS = 200;
let folder = '';

beforeAll(() => {
  folder = compiledSource(['src/terminal/clack-asker.ts', 'src/interview/read-answer.ts']);
  writeFileSync(join(folder, 'pty-script.mjs'), readFileSync('test/terminal/pty-script.mjs'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the prompts at a real terminal; each key waits for a text on the screen. */
async function atTerminal(
  prompts: readonly Prompt[],
  script: readonly (readonly [wait: RegExp, ...keys: string[]])[],
) {
  const child = spawn(process.execPath, ['pty-script.mjs', JSON.stringify({ prompts })], {
    cwd: folder,
    cols: 80,
    rows: 40,
    env: { PATH: process.env.PATH ?? '', TERM: 'xterm-256color' },
  });
  let text = '';
  let from = 0;
  const steps = [...script];
  const code = await new Promise<number>((done) => {
    child.onData((data) => {
      text += data;
      const step = steps[0];
      const found = step?.[0].exec(text.slice(from));
      if (step === undefined || !found) return;
      steps.shift();
      from = text.length;
      for (const [index, keys] of step.slice(1).entries())
        setTimeout(() => child.write(keys as string), 30 + index * KEY_GAP_MS);
    });
    child.onExit(({ exitCode }) => done(exitCode));
  });
  const replies = [...text.matchAll(/REPLY (\{.*?\})\r*\n/g)].map(
    ([, json]) => JSON.parse(json as string) as Reply,
  );
  return { text, code, replies, screen: await screenOf(text, { columns: 80, rows: 40 }) };
}

describe('clack at a real terminal', () => {
  it('takes an answer from a list and one that is typed, and hands the terminal back', async () => {
    const { code, replies, text, screen } = await atTerminal(
      [FEEL, SUN],
      [
        [/quit without a plan/, '\x1b[B', '\r'],
        [/Or type/, '6 hours\r'],
      ],
    );
    expect(replies).toMatchObject([{ value: 'springy' }, { value: 6, typed: '6 hours' }]);
    expect(code).toBe(0);
    expect(text).toContain('DONE raw=false');
    expect(text.lastIndexOf('\x1b[?25h')).toBeGreaterThan(text.lastIndexOf('\x1b[?25l'));
    expect(screen.isAlternate).toBe(false);
  });

  it.each([
    ['Ctrl-C', '\x03', 'interrupted'],
    ['Ctrl-D', '\x04', 'ended'],
    ['Shift+Tab', '\x1b[Z', 'back'],
  ])('settles on %s and lets the program end by itself', async (_, key, kind) => {
    const { code, replies, text } = await atTerminal([FEEL], [[/quit without a plan/, key]]);
    expect(replies).toEqual([{ kind }]);
    expect(code).toBe(0);
    expect(text).toContain('DONE raw=false');
    expect(text.lastIndexOf('\x1b[?25h')).toBeGreaterThan(text.lastIndexOf('\x1b[?25l'));
  });

  it('lives through Escape', async () => {
    const { replies } = await atTerminal([SUN], [[/Or type/, '\x1b', '5\r']]);
    expect(replies).toMatchObject([{ value: 5 }]);
  });
});
