import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Prompt, Reply } from '../../src/terminal/asker.js';
import { compiledSource } from '../session/compiled-source.js';
import { atTerminal, type Turn } from './at-terminal.js';
import { FEEL, SUN } from './samples.js';

let folder = '';

beforeAll(() => {
  folder = compiledSource(['src/terminal/clack-asker.ts', 'src/interview/read-answer.ts']);
  writeFileSync(join(folder, 'pty-script.mjs'), readFileSync('test/terminal/pty-script.mjs'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the prompts at a real terminal. */
async function asked(prompts: readonly Prompt[], turns: readonly Turn[]) {
  const sat = await atTerminal(['pty-script.mjs', JSON.stringify({ prompts })], turns, { cwd: folder });
  const replies = [...sat.text.matchAll(/REPLY (\{.*?\})\r*\n/g)].map(
    ([, json]) => JSON.parse(json as string) as Reply,
  );
  return { ...sat, replies };
}

describe('clack at a real terminal', () => {
  it('takes an answer from a list and one that is typed, and hands the terminal back', async () => {
    const { code, replies, text, screen } = await asked(
      [FEEL, SUN],
      [
        [/what you have answered/, '\x1b[B', '\x1b[B', '\r'],
        [/Or don't know/, '6 hours\r'],
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
    const { code, replies, text } = await asked([FEEL], [[/what you have answered/, key]]);
    expect(replies).toEqual([{ kind }]);
    expect(code).toBe(0);
    expect(text).toContain('DONE raw=false');
    expect(text.lastIndexOf('\x1b[?25h')).toBeGreaterThan(text.lastIndexOf('\x1b[?25l'));
  });

  it('hears what is typed at a list, in one go or key by key, and not what is marked', async () => {
    const marked = { ...FEEL, suggested: 'very-springy', suggestedText: 'very springy' };
    const { replies, text } = await asked(
      [marked, marked, FEEL],
      [
        [/what you have answered/, 'firm\r'],
        [/REPLY/, 'f', 'i', 'r', 'm', '\r'],
        [/REPLY/, '\r', 'bouncy\r', 'idk\r'],
      ],
    );
    expect(replies).toMatchObject([{ value: 'firm' }, { value: 'firm' }, { kind: 'unknown' }]);
    expect(text).toContain('bouncy█');
  });

  it('lives through Escape', async () => {
    const { replies } = await asked([SUN], [[/Or don't know/, '\x1b', '5\r']]);
    expect(replies).toMatchObject([{ value: 5 }]);
  });
});
