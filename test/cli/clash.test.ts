/** A lawn for which no dates hold, as each command tells it. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CLIMATES } from '../planner/climates.js';
import { newFolder, run as runIt } from './run.js';

const family = JSON.parse(readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8'));
/**
 * Sown by 30 September, treated from 1 August: 60 days, which is 4 more than whole weeks, so that no two weekend days of
 * these two months are as far apart. In spring the moss grows from April on, and seed is sown by 31 May.
 */
const answers = { ...family.answers, place: '45, -93.3', labelWaitDays: 60, workDays: 'weekends' };
const climateFile = (): string => {
  const path = join(newFolder(), 'ours.csv');
  const { tMinC, tMaxC } = CLIMATES.minneapolis;
  const rows = tMinC.map((least, month) => [month + 1, least, tMaxC[month]].join());
  writeFileSync(path, ['month,tmin_c,tmax_c', ...rows].join('\n'));
  return path;
};
const run: typeof runIt = (words, ...more) => runIt([...words, '--climate', climateFile()], ...more);
const answersFile = (): string => {
  const path = join(newFolder(), 'answers.json');
  writeFileSync(path, JSON.stringify({ format: 1, answers }));
  return path;
};
const CLASH = 'No dates in the next three years keep every wait and season';

describe('a lawn for which no dates hold', () => {
  it('stops "plan" with exit code 3, what clashes and what to change, and writes no plan', () => {
    const out = join(newFolder(), 'plan.md');
    const ran = run(['plan', answersFile(), '--today', '2027-03-13', '--out', out]);
    expect([ran.code, ran.out, existsSync(out)]).toEqual([3, '', false]);
    expect(ran.err).toContain(CLASH);
    expect(ran.err).toContain('"Sow" must be begun by Monday 31 May 2027');
    expect(ran.err).toContain('  - Moss treatment (mossTreatment): by raking alone');
  });

  it('is one error object of a batch, and the other lines are planned', () => {
    const lines = [answers, { ...answers, mossTreatment: 'rake-only' }]
      .map((each) => JSON.stringify(each))
      .join('\n');
    const file = join(newFolder(), 'lawns.ndjson');
    writeFileSync(file, `${lines}\n`);
    const ran = run(['batch', file, '--today', '2027-03-13']);
    const [first, second] = ran.out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(first.error.code).toBe(3);
    expect(first.error.message).toContain('"Treat the moss" cannot be begun before Sunday');
    expect(second.steps.map(({ id }: { id: string }) => id)).toContain('sow');
  });

  it('leads a session back to its answers, and one changed makes the plan', () => {
    const state = newFolder();
    const list = run(['ask', '--plain', '--answers', answersFile()], '', state).err;
    const number = /(\d+) {2}moss treatment: /.exec(list)?.[1];
    const saved = join(state, 'kept.json');
    const ran = run(
      ['ask', '--plain', '--save', saved, '--answers', answersFile()],
      `\n${number}\n2\n\n`,
      state,
    );
    expect(ran.err).toContain(CLASH);
    expect(ran.code).toBe(0);
    expect(ran.out).toContain('# Lawn plan for');
  });

  it('ends a session whose input ends with exit code 3, and keeps the answers', () => {
    const saved = join(newFolder(), 'kept.json');
    const ran = run(['ask', '--plain', '--save', saved, '--answers', answersFile()]);
    expect([ran.code, ran.out]).toEqual([3, '']);
    expect(ran.err).toContain(CLASH);
    expect(ran.err.split(CLASH)).toHaveLength(2);
    expect(ran.err).toContain(`Your answers are saved:\n  ${saved}`);
    expect(readFileSync(saved, 'utf8')).toContain('"labelWaitDays"');
  });
});
