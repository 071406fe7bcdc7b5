import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { splitUnderCap } from '../../src/agronomy/split.js';
import { amount, amountOrNone, expectRefusals } from './refusals.js';

describe('splitUnderCap', () => {
  it('is one go up to the cap and two just past it', () => {
    expect(splitUnderCap({ total: 4.9, cap: 4.9 })).toEqual({ count: 1, each: 4.9 });
    expect(splitUnderCap({ total: 5, cap: 4.9 })).toEqual({ count: 2, each: 2.5 });
  });
  it('does not add a go for binary dust', () => {
    expect(splitUnderCap({ total: 0.1 + 0.2, cap: 0.1 }).count).toBe(3);
    expect(splitUnderCap({ total: 4 * 4.9, cap: 4.9 }).count).toBe(4);
  });
  it('takes no go for nothing', () =>
    expect(splitUnderCap({ total: 0, cap: 5 })).toEqual({ count: 0, each: 0 }));
  it('keeps each go at or under the cap, and one go fewer would not', () => {
    fc.assert(
      fc.property(amountOrNone, amount, (total, cap) => {
        const { count, each } = splitUnderCap({ total, cap });
        expect(each).toBeLessThanOrEqual(cap * (1 + 1e-9));
        expect(Math.abs(count * each - total)).toBeLessThanOrEqual(1e-9 * total);
        if (count > 1) expect(total / (count - 1)).toBeGreaterThan(cap);
      }),
    );
  });
  it('refuses what cannot be', () => expectRefusals(splitUnderCap, { total: 5, cap: 2 }, { cap: [0] }));
});
