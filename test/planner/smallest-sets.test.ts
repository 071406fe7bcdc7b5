import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallestSets, subsets } from '../../src/planner/smallest-sets.js';

const ITEMS = ['a', 'b', 'c', 'd', 'e'];
const MANY = 1000;

/** Any state for each of the 32 sets of changes: nothing monotone about it. */
const anyStates = fc.array(fc.constantFrom('x', 'y', 'z'), { minLength: 32, maxLength: 32 });
const indexOf = (set: readonly string[]): number =>
  ITEMS.reduce((sum, item, bit) => sum + (set.includes(item) ? 2 ** bit : 0), 0);
const allSets = ITEMS.flatMap((_, size) => [...subsets(ITEMS, size + 1)]);

describe('the smallest sets', () => {
  it('are exactly those of least size that give what all changes give, whatever the changes do together', () => {
    fc.assert(
      fc.property(anyStates, (states) => {
        const stateOf = (set: readonly string[]): string => states[indexOf(set)] as string;
        const enough = allSets.filter((set) => stateOf(set) === stateOf(ITEMS));
        const least = Math.min(...enough.map((set) => set.length));
        const tryOut = (set: readonly string[]) => new Map([['k', stateOf(set)]]);
        const causes = smallestSets({ changes: ITEMS, tryOut, keys: ['k'], most: MANY }).get('k');
        expect(causes).toEqual({ sets: enough.filter((set) => set.length === least), isComplete: true });
      }),
    );
  });

  it('are still enough, and of no smaller enough set, when only few may be tried', () => {
    fc.assert(
      fc.property(anyStates, fc.integer({ min: 0, max: 40 }), (states, most) => {
        const stateOf = (set: readonly string[]): string => states[indexOf(set)] as string;
        const tryOut = (set: readonly string[]) => new Map([['k', stateOf(set)]]);
        const causes = smallestSets({ changes: ITEMS, tryOut, keys: ['k'], most }).get('k');
        for (const set of causes?.sets ?? []) {
          expect(stateOf(set)).toBe(stateOf(ITEMS));
          if (2 ** set.length > most) continue;
          for (let size = 1; size < set.length; size++)
            for (const part of subsets(set, size)) expect(stateOf(part)).not.toBe(stateOf(ITEMS));
        }
        expect(causes?.sets.length).toBeGreaterThan(0);
      }),
    );
  });

  it('pass over sets that cannot stand by themselves', () => {
    const tryOut = (set: readonly string[]) => (set.length === 1 ? undefined : new Map([['k', 'x']]));
    const { sets } = smallestSets({ changes: ['a', 'b'], tryOut, keys: ['k'], most: MANY }).get('k') ?? {};
    expect(sets).toEqual([['a', 'b']]);
  });

  it('counts every choice of a size once', () => {
    expect([...subsets(['a', 'b', 'c', 'd'], 2)].map((set) => set.join(''))).toEqual([
      'ab',
      'ac',
      'ad',
      'bc',
      'bd',
      'cd',
    ]);
  });
});
