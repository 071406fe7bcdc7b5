import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { IRON_SALTS, ironFraction, ironGPerM2, ironProductGPerM2 } from '../../src/agronomy/iron.js';
import { amountOrNone, expectReal, expectRefusals } from './refusals.js';

const salt = fc.constantFrom(...IRON_SALTS);

describe('iron', () => {
  it('goes to product and back', () => {
    fc.assert(
      fc.property(amountOrNone, salt, (dose, which) => {
        const productGPerM2 = ironProductGPerM2({ ironGPerM2: dose, salt: which });
        expectReal(productGPerM2);
        expect(Math.abs(ironGPerM2({ productGPerM2, salt: which }) - dose)).toBeLessThanOrEqual(1e-9 * dose);
      }),
    );
  });
  it('is richer in a salt the less water it holds', () => {
    const shares = IRON_SALTS.map(ironFraction);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(new Set(shares).size).toBe(3);
  });
  it('refuses a dose that cannot be', () => {
    expectRefusals(ironProductGPerM2, { ironGPerM2: 1, salt: 'heptahydrate' as const });
    expectRefusals(ironGPerM2, { productGPerM2: 1, salt: 'anhydrous' as const });
  });
});
