import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from '../../src/base/nearest.js';

const NAMES = ['thatchDepthMm', 'mossFraction', 'weedFraction', 'dog', 'areaM2', 'soilPh'];

describe('nearest', () => {
  it.each([
    ['thatchDepth', 'thatchDepthMm'],
    ['mosFraction', 'mossFraction'],
    ['mossfraction', 'mossFraction'],
    ['areM2', 'areaM2'],
    ['DOG', 'dog'],
    ['dgo', 'dog'],
  ])('takes %s for %s', (typed, name) => {
    expect(nearest(typed, NAMES)).toBe(name);
  });

  it.each(['', 'x', 'cat', 'lawnmower', 'q'.repeat(10_000)])('finds nothing near %j', (typed) => {
    expect(nearest(typed, NAMES)).toBeUndefined();
  });

  it('finds nothing among no names', () => {
    expect(nearest('dog', [])).toBeUndefined();
  });
});

describe('editDistance', () => {
  // Worked examples from common textbooks on approximate matching, from memory: kitten/sitting 3,
  // Saturday/Sunday 3 (Levenshtein); CA/ABC 3 under optimal string alignment.
  it.each([
    ['kitten', 'sitting', 3],
    ['Saturday', 'Sunday', 3],
    ['CA', 'ABC', 3],
    ['ab', 'ba', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('from %s to %s is %i', (from, to, edits) => {
    expect(editDistance(from, to)).toBe(edits);
  });

  it('is a symmetric distance that is 0 only for equal texts and never above the longer length', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 8 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const edits = editDistance(a, b);
        expect(edits).toBe(editDistance(b, a));
        expect(edits === 0).toBe(a === b);
        expect(edits).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(edits).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
    );
  });
});
