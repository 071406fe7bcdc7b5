import { describe, expect, it } from 'vitest';
import { UNKNOWN } from '../../src/interview/answers.js';
import { clashesIn } from '../../src/interview/together.js';
import { pack } from '../planner/any-lawn.js';

const clash = (mossFraction: number | string, weedFraction?: number | string, bareFraction?: number) =>
  clashesIn(pack, {
    mossFraction,
    ...(weedFraction === undefined ? {} : { weedFraction }),
    ...(bareFraction === undefined ? {} : { bareFraction }),
  }).map(({ questionIds }) => questionIds);

describe('shares of one lawn', () => {
  it.each([
    [0.4, 0.3, 0.3],
    [1 / 3, 1 / 3, 1 / 3],
    // In binary these come to a hair more than 1.
    [0.8, 0.15, 0.05],
    [1, 0, 0],
    // Three shares rounded to whole per cents.
    [0.34, 0.34, 0.33],
  ])('%d, %d and %d are the whole or less', (moss, weeds, bare) => {
    expect(clash(moss, weeds, bare)).toEqual([]);
  });

  it.each([
    [0.5, 0.4, 0.3, 3],
    [0.34, 0.34, 0.34, 3],
    [1, 1, undefined, 2],
  ])('%d, %d and %s cannot be', (moss, weeds, bare, count) => {
    const [ids] = clash(moss, weeds, bare);
    expect(ids).toHaveLength(count);
    expect(ids).toContain('mossFraction');
  });

  it('clash before the third is known, when two are too many by themselves', () => {
    expect(clash(0.7, 0.6)).toEqual([['mossFraction', 'weedFraction']]);
    expect(clash(0.7, UNKNOWN, 0.6)).toEqual([['mossFraction', 'bareFraction']]);
  });

  it('never clash over what nobody knows, or over an answer that is not used', () => {
    expect(clash(UNKNOWN, 0.9)).toEqual([]);
    const answers = { mossFraction: 0.7, weedFraction: 0.6 };
    expect(clashesIn(pack, answers, (id) => id !== 'weedFraction')).toEqual([]);
  });
});
