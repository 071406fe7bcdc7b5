/** What the README shows is what the program says. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { newFolder } from './run.js';

const read = (path: string): string => readFileSync(path, 'utf8');
const blocks = [...read('README.md').matchAll(/^```\w*\n([\s\S]*?)^```$/gm)].map(([, block = '']) => block);
const played = blocks.filter((block) => block.startsWith('$ seedbed '));

/** Every line of the block stands in the text; an ellipsis stands for lines that are left out. */
function expectQuoted(block: string, text: string): void {
  const lines = text.split('\n').map((line) => line.trimEnd());
  for (const line of block.trimEnd().split('\n')) if (line !== '…') expect(lines, line).toContain(line);
}

describe('the README', () => {
  it('quotes the family lawn, its session and its plan, as they are', () => {
    const folder = 'transcripts-examples/mossy-family-lawn';
    for (const [start, file] of [
      ['### ', 'plan.md'],
      ['Question ', 'transcript.txt'],
    ] as const) {
      const quoted = blocks.find((block) => block.startsWith(start)) ?? '';
      expect(quoted.split('\n').length).toBeGreaterThan(5);
      expectQuoted(quoted, read(`${folder}/${file}`));
    }
  });

  it('plays some commands', () => {
    expect(played.length).toBeGreaterThanOrEqual(4);
  });

  it.each(played)('shows what a command says: %s', (block) => {
    const [, command = '', shown = ''] = /^\$ seedbed ((?:.*\\\n)*.*)\n([\s\S]*)$/.exec(block) ?? [];
    const typed = shown.split('\n').flatMap((line) => (line.startsWith('> ') ? [`${line.slice(2)}\n`] : []));
    const state = newFolder();
    const { stdout, stderr } = spawnSync(
      'bash',
      ['-c', `"${process.execPath}" dist/bin/main.js ${command}`],
      {
        encoding: 'utf8',
        input: typed.join(''),
        env: { PATH: process.env.PATH, HOME: state, XDG_STATE_HOME: state, COLUMNS: '80' },
      },
    );
    expectQuoted(shown, stdout + stderr);
  });
});
