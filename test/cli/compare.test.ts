import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { run } from './run.js';

const A = 'transcripts-examples/mossy-family-lawn/answers.json';
const DAY = ['--today', '2027-03-13'];

describe('compare', () => {
  it('tells in words what an answer changes, with the answer and the rule', () => {
    const { code, out, err } = run(['compare', A, '--set', 'dogPatches=false', ...DAY, '--width', '200']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('- dog patches: yes; now: no.');
    expect(out).toMatch(
      /Steps that go\n- Wash out the dog patches, .*\. By dog patches\. Dog patches: no\. \[step flush-patches: finding dog-patches\]/,
    );
  });

  it('says what README shows', () => {
    const readme = readFileSync('README.md', 'utf8');
    const [, shown] = /--set dogPatches=no --today 2027-03-13\n([\s\S]*?)```/.exec(readme) ?? [];
    expect(run(['compare', A, '--set', 'dogPatches=no', ...DAY, '--width', '80']).out).toBe(shown);
  });

  it('tells two files apart, and the same as --set does', () => {
    const changed = JSON.parse(readFileSync(A, 'utf8'));
    changed.answers.dogPatches = false;
    const twoFiles = run(['compare', A, '-', '--format', 'json', ...DAY], JSON.stringify(changed));
    const set = run(['compare', A, '--set', 'dogPatches=no', '--format', 'json', ...DAY]);
    expect(twoFiles.code).toBe(0);
    expect(twoFiles.out).toBe(set.out);
    const { changes } = JSON.parse(set.out);
    expect(changes.map(({ kind, how, id }: Record<string, string>) => `${kind} ${how} ${id}`)).toContain(
      'step out flush-patches',
    );
  });

  it('takes several answers after one --set, and an empty value as no answer', () => {
    const { out } = run([
      'compare',
      A,
      '--set',
      'dog=no',
      'thatchDepthMm=unknown',
      'lawnName=',
      ...DAY,
      '--format',
      'json',
    ]);
    const { answers } = JSON.parse(out);
    expect(answers).toEqual([
      expect.objectContaining({ questionId: 'dog', before: 'yes', after: 'no' }),
      expect.objectContaining({ questionId: 'lawnName', after: 'not answered' }),
      expect.objectContaining({ questionId: 'thatchDepthMm', before: '18 mm', after: "don't know" }),
    ]);
  });

  it('says so when nothing changes', () => {
    expect(run(['compare', A, A, ...DAY]).out).toContain('No answer differs.');
  });

  it.each([
    [['compare', A], 2, 'two answers files'],
    [['compare', A, A, A], 2, 'one too many'],
    [['compare', '-', '-'], 2, 'Only one of the two'],
    [['compare', A, '--set', 'dog'], 2, 'no id=value'],
    [['compare', A, A, '--set', 'dog=no'], 2, 'not both'],
    [['compare', A, '--set', 'dogg=no'], 3, 'Did you mean "dog"?'],
    [['compare', A, '--set', 'dog=perhaps'], 3, 'Allowed: true, false'],
    [['compare', A, '--set', 'mossFraction=40'], 3, 'from 0 to 1'],
    [['compare', A, '--set', 'mossFraction=0.9', 'bareFraction=0.9'], 3, 'cannot be more than the whole'],
    [['compare', A, 'no-such.json'], 5, 'no such file'],
    [['compare', A, A, '--format', 'xml'], 2, 'Allowed: text, json'],
  ])('%j exits with %i and says what is wrong', (args, code, says) => {
    const ran = run(args);
    expect([ran.code, ran.out]).toEqual([code, '']);
    expect(ran.err).toContain(says);
  });
});
