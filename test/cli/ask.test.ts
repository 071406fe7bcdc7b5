import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

const linesOf = (folder: string): string[] =>
  readFileSync(`transcripts-examples/${folder}/transcript.txt`, 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('> '))
    .map((line) => line.slice(2));

describe('seedbed without a terminal', () => {
  it('plays the example, says so first, and exits 0', () => {
    const { code, out, err } = run([]);
    expect(code).toBe(0);
    expect(err.split('\n')[0]).toMatch(/^This is an invented example lawn/);
    expect(out).toBe(readFileSync('transcripts-examples/mossy-family-lawn/plan.md', 'utf8'));
  });
});

describe('ask with piped lines', () => {
  it('makes a plan when everything that matters is answered before the input ends', () => {
    const typed = ['2027-04-03', ...linesOf('hardly-anything-known')].slice(1);
    const { code, out } = run(['ask', '--plain'], `${typed.join('\n')}\n`);
    expect(code).toBe(0);
    expect(out).toContain('# Lawn plan');
  });

  it('saves and exits 3 when the input ends early, and goes on from there', () => {
    const state = newFolder();
    const first = run(['ask', '--plain'], 'yes\nno\n', state);
    expect(first.code).toBe(3);
    expect(first.err).toContain('Your answers are saved');
    const again = run(['ask', '--plain'], '1\nyes\nquit\n', state);
    expect(again.err).toContain('We go on where you stopped');
    expect(again.err).toContain('nearest pond');
  });

  it('keeps the session in the file that --save names', () => {
    const file = join(newFolder(), 'mine.json');
    expect(run(['ask', '--plain', '--save', file], 'yes\nquit\n').code).toBe(0);
    expect(JSON.parse(readFileSync(file, 'utf8')).answers[0]).toMatchObject({
      questionId: 'dog',
      value: true,
    });
    expect(run(['ask', '--plain', '--save', file], 'quit\n').err).toContain('Do children play');
  });

  it('does not ask what --answers already tells', () => {
    const file = join(newFolder(), 'answers.json');
    writeFileSync(file, JSON.stringify({ format: 1, answers: { dog: true, children: false } }));
    expect(run(['ask', '--plain', '--answers', file], 'quit\n').err).toContain('nearest pond');
  });

  it('explains, goes back, reviews and takes "don\'t know" at any question', () => {
    const { err } = run(['ask', '--plain'], 'why\nhelp\ndk\nback\nno\nreview\n\nquit\n');
    expect(err).toContain('Question 1');
    expect(err.match(/Does a dog ever come/g)?.length).toBeGreaterThanOrEqual(2);
  });

  it('writes no control codes and no line wider than asked', () => {
    const { err } = run(['ask', '--plain', '--width', '40'], 'why\nhelp\nyes\nno\ndk\nquit\n');
    expect(err).not.toContain('\u001b');
    const state = /\/\S+/g;
    for (const line of err.split('\n')) expect(line.replace(state, '').length, line).toBeLessThanOrEqual(40);
  });

  it('leaves files that only their owner can read', () => {
    const state = newFolder();
    run(['ask', '--plain'], 'yes\n', state);
    expect(readdirSync(join(state, 'seedbed')).filter((name) => name.endsWith('.session.json')).length).toBe(
      1,
    );
  });
});

describe('help and version', () => {
  it.each([['--help'], ['-h'], ['help']])('%s lists the commands', (flag) => {
    const { code, out } = run([flag]);
    expect(code).toBe(0);
    for (const name of ['ask', 'plan', 'rules']) expect(out).toContain(`seedbed ${name}`);
  });

  it('is there for every command', () => {
    for (const name of ['ask', 'plan', 'rules']) {
      const { code, out } = run([name, '--help']);
      expect([code, out.includes('Usage: seedbed')]).toEqual([0, true]);
    }
  });

  it('tells the version of the package', () => {
    expect(run(['--version']).out.trim()).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
  });
});
