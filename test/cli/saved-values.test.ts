/** What a saved session holds passes the check of an answers file before it is an answer; an edited file is told. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pack } from '../planner/any-lawn.js';
import { newFolder, run } from './run.js';

const DAY = '2026-11-20';
const sound: readonly (readonly [string, unknown])[] = [
  ['dog', true],
  ['mossFraction', 0.4],
];

/** A session as version 0.1 wrote it: without check sums. */
function oldSession(answers: readonly (readonly [string, unknown])[]): string {
  const file = join(newFolder(), 's.json');
  writeFileSync(
    file,
    JSON.stringify({
      format: 1,
      seedbedSession: 1,
      pack: { id: pack.id, version: pack.version, sha256: pack.sha256 },
      startedOn: DAY,
      answers: answers.map(([questionId, value]) => ({ questionId, value, typed: '', givenOn: DAY })),
      dormant: [],
      heldOver: [],
    }),
  );
  return file;
}

const valuesIn = (file: string): Map<string, unknown> => {
  const { answers } = JSON.parse(readFileSync(file, 'utf8')) as {
    readonly answers: readonly { readonly questionId: string; readonly value: unknown }[];
  };
  return new Map(answers.map(({ questionId, value }) => [questionId, value]));
};

describe('a session of version 0.1', () => {
  it('goes on, and is saved with check sums', () => {
    const file = oldSession(sound);
    const { code, out, err } = run(['ask', '--plain', '--save', file], 'save\n');
    expect(code, err).toBe(0);
    expect(`${out}${err}`).toContain('We go on where you stopped');
    expect(readFileSync(file, 'utf8')).toContain('"seedbedSession": 2');
    expect(valuesIn(file)).toEqual(new Map(sound));
  });

  it.each([
    ['labelRateMlPerM2', 1_000_000, /"labelRateMlPerM2" is 1000000\. Allowed: a number from/],
    ['mossFraction', 40, /"mossFraction" is 40\. Allowed: a number from 0 to 1/],
    ['areaM2', -84, /"areaM2" is -84\. Allowed: a number from/],
    ['areaM2', 1e308, /"areaM2" is 1e\+308\. Allowed/],
    ['tankL', 0, /"tankL" is 0\. Allowed: a number from/],
    ['scarifier', 'elektric', /"scarifier" is "elektric"\. Allowed: .*"electric"/],
    ['dog', 'maybe', /"dog" is "maybe"\. Allowed: true, false or "unknown"/],
  ])('with %s at %j says so, and does not take it', (id, value, says) => {
    const answers = [...sound.filter(([key]) => key !== id), [id, value] as const];
    const file = oldSession(answers);
    const { code, out, err } = run(['ask', '--plain', '--save', file], 'save\n');
    expect(code, err).toBe(0);
    expect(`${out}${err}`).toMatch(says);
    expect(valuesIn(file).has(id)).toBe(false);
    // Nothing that was typed is lost: it is kept aside, and no question offers it.
    expect(readFileSync(file, 'utf8')).toContain(`"questionId":"${id}"`);
    const again = run(['ask', '--plain', '--save', file], 'save\n');
    expect(`${again.out}${again.err}`).not.toMatch(says);
  });
});

it('a session whose file was edited is told, and what was not touched goes on', () => {
  const file = join(newFolder(), 's.json');
  const typed = run(['ask', '--plain', '--save', file], 'yes\nyes\nsave\n');
  expect(typed.code, typed.err).toBe(0);
  const before = valuesIn(file);
  expect(before.size).toBe(2);
  writeFileSync(file, readFileSync(file, 'utf8').replace('"value":true', '"value":false'));
  const { code, out, err } = run(['ask', '--plain', '--save', file], 'save\n');
  expect(code, err).toBe(0);
  expect(`${out}${err}`).toMatch(/changed|damaged/);
  expect([...valuesIn(file).values()]).toEqual([true]);
});
