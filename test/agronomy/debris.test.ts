import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bagCount, debrisRangeL, mossLeftFraction } from '../../src/agronomy/debris.js';
import { amount, amountOrNone, expectReal, expectRefusals, fraction } from './refusals.js';

const GUESS = {
  areaM2: 100,
  layerMm: { min: 10, max: 20 },
  removedFraction: { min: 0.5, max: 0.75 },
  bulkingFactor: { min: 2, max: 4 },
};

describe('debrisRangeL', () => {
  // By hand: 100 × 10 × 0.5 × 2 and 100 × 20 × 0.75 × 4.
  it('runs from all low ends to all high ends', () => {
    expect(debrisRangeL(GUESS)).toEqual({ min: 1000, max: 6000 });
  });
  it('is linear in the area and never runs backwards', () => {
    fc.assert(
      fc.property(amount, (areaM2) => {
        const { min, max } = debrisRangeL({ ...GUESS, areaM2 });
        expectReal(min);
        expect(max).toBeGreaterThanOrEqual(min);
        expect(debrisRangeL({ ...GUESS, areaM2: 2 * areaM2 }).max / max).toBeCloseTo(2, 9);
      }),
    );
  });
  it('refuses a share over 1, bulking under 1 and ranges that run backwards', () => {
    expect(() => debrisRangeL({ ...GUESS, removedFraction: { min: 0.5, max: 75 } })).toThrow(
      '75 % is written 0.75.',
    );
    expect(() => debrisRangeL({ ...GUESS, bulkingFactor: { min: 0.5, max: 2 } })).toThrow(
      'bulkingFactor.min',
    );
    expect(() => debrisRangeL({ ...GUESS, layerMm: { min: 20, max: 10 } })).toThrow('layerMm.max');
    expect(() => debrisRangeL({ ...GUESS, areaM2: 0 })).toThrow('areaM2');
  });
});

describe('bagCount', () => {
  it('is whole bags, none for nothing', () => {
    expect(bagCount({ volumeL: 0, bagL: 90 })).toBe(0);
    expect(bagCount({ volumeL: 90, bagL: 90 })).toBe(1);
    expect(bagCount({ volumeL: 91, bagL: 90 })).toBe(2);
    expect(bagCount({ volumeL: 0.1 + 0.2, bagL: 0.1 })).toBe(3);
  });
  it('holds everything, and one bag fewer does not', () => {
    fc.assert(
      fc.property(amountOrNone, amount, (volumeL, bagL) => {
        const bags = bagCount({ volumeL, bagL });
        expect(bags * bagL).toBeGreaterThanOrEqual(volumeL * (1 - 1e-9));
        if (bags > 0) expect((bags - 1) * bagL).toBeLessThan(volumeL);
      }),
    );
  });
  it('refuses what cannot be', () => expectRefusals(bagCount, { volumeL: 100, bagL: 90 }, { bagL: [0] }));
});

describe('mossLeftFraction', () => {
  it('multiplies over several rakings', () => {
    expect(mossLeftFraction({ mossFraction: 0.8, removedFraction: 0.5, rakingCount: 3 })).toBeCloseTo(
      0.1,
      12,
    );
    expect(mossLeftFraction({ mossFraction: 0.8, removedFraction: 0.5, rakingCount: 0 })).toBe(0.8);
  });
  it('never grows by raking', () => {
    fc.assert(
      fc.property(fraction, fraction, fc.nat({ max: 6 }), (mossFraction, removedFraction, rakingCount) => {
        const left = mossLeftFraction({ mossFraction, removedFraction, rakingCount });
        expectReal(left);
        expect(left).toBeLessThanOrEqual(mossFraction);
      }),
    );
  });
  it('refuses what cannot be', () => {
    expectRefusals(
      mossLeftFraction,
      { mossFraction: 0.4, removedFraction: 0.75, rakingCount: 1 },
      { mossFraction: [40], removedFraction: [75], rakingCount: [1.5] },
    );
  });
});
