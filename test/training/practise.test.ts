/** What to practise: every mark that was lost has a line, and nothing else has. */
import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/training/attempt.js';
import { markAttempt } from '../../src/training/marks.js';
import { perfectAttempt } from '../../src/training/perfect.js';
import { practiseOf } from '../../src/training/practise.js';
import { byId, looksIn, worked } from './book.js';

const green = byId('spongy-green');
const perfect = perfectAttempt(green);
const lines = (change: Partial<Attempt>): string[] => {
  const attempt = { ...perfect, ...change };
  return practiseOf(green, attempt, markAttempt(green, attempt));
};
const without = (id: string): Partial<Attempt> => ({
  looks: looksIn(
    green,
    perfect.looks.map(({ question }) => question.id).filter((look) => look !== id),
  ),
});
const committed = (change: Partial<NonNullable<Attempt['commitment']>>): Partial<Attempt> =>
  perfect.commitment === undefined ? {} : { commitment: { ...perfect.commitment, ...change } };

describe('what to practise', () => {
  it('is nothing where nothing was lost', () => {
    for (const each of worked) {
      const attempt = perfectAttempt(each);
      expect(practiseOf(each, attempt, markAttempt(each, attempt))).toEqual([]);
    }
  });

  it.each<[string, Partial<Attempt>, RegExp]>([
    ['a danger', without('dog'), /^Safety first.*dog on the lawn\.$/],
    ['a look', without('tankL'), /^Looks that you left out: tank size\.$/],
    ['a finding', committed({ findings: [{ id: 'mossy', sure: 1 }] }), /^How to tell: A thick felt/],
    [
      'an amount with a slip',
      { amounts: { ...perfect.amounts, area: 96 } },
      /^Sums: You forgot to take the beds/,
    ],
    ['an amount without one', { amounts: { ...perfect.amounts, area: 60 } }, /^Sums: How much ground/],
    ['a step', { order: (perfect.order ?? []).slice(0, -1) }, /^Steps that you left out: Water/],
    ['a hint', { hints: [{ towards: 'look', id: 'dog', rung: 'point' }] }, /without a hint/],
    [
      'sureness, in one who was right',
      committed({
        sure: 0.5,
        findings: [
          { id: 'mossy', sure: 0.5 },
          { id: 'thick-thatch', sure: 0.5 },
        ],
      }),
      /trust two signs/,
    ],
  ])('names %s once', (_, change, says) => {
    const said = lines(change);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(says);
  });

  it('names a look-alike, and that they were too sure of it', () => {
    const wrong = [...(perfect.commitment?.findings ?? []), { id: 'acid', sure: 0.9 }];
    expect(lines(committed({ findings: wrong })).join(' ')).toMatch(
      /look-alikes: The soil is more acid.*surer than/,
    );
  });

  it('names the order of the work, and work that was not called for', () => {
    const swapped = ['sow', 'treat-moss', 'low-cut', 'scarify', 'clear', 'water-in'];
    expect(lines({ order: swapped }).join(' ')).toMatch(/what each step waits for/);
    expect(lines({ order: [...(perfect.order ?? []), 'lime'] }).join(' ')).toMatch(/a reason of its own/);
  });
});
