/** Braces in the words of the pack: only slots, and only in sentences that have their slots filled. */
import { describe, expect, it } from 'vitest';
import { MEASURE, SLOT, sentencesOf } from '../../src/rules/slots.js';
import { pack } from '../planner/any-lawn.js';

const filled = new Set(sentencesOf(pack).map(({ text }) => text));

/** Every text in the records, at every depth. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null || value instanceof Map) return [];
  return Object.values(value).flatMap(textsIn);
}

/** The templates of explanations have names of their own in braces; test/planner/explain.test.ts fills them all. */
const { wording: _, ...records } = pack;
const texts = textsIn(records);

describe('braces', () => {
  it('stand only around a figure, a fact or a measure', () => {
    expect(texts.filter((text) => /[{}]/.test(text.replace(SLOT, '').replace(MEASURE, '')))).toEqual([]);
  });

  it('stand only in sentences whose slots are filled', () => {
    expect(texts.filter((text) => /[{}]/.test(text) && !filled.has(text))).toEqual([]);
  });

  it('are used', () => {
    expect([...filled].filter((text) => /[{}]/.test(text)).length).toBeGreaterThan(20);
    expect(texts.length).toBeGreaterThan(filled.size);
  });
});
