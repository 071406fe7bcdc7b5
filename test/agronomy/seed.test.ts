import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  extraSeedFraction,
  patchySeedMassG,
  pureLiveFraction,
  seedMassG,
  seedMassRangeG,
  seedsPerM2,
} from '../../src/agronomy/seed.js';
import { amount, amountOrNone, expectReal, expectRefusals, fraction, fractionAboveZero } from './refusals.js';

describe('seedMassG', () => {
  it('is area times rate', () => expect(seedMassG({ areaM2: 84, rateGPerM2: 15 })).toBe(1260));
  it('is more where some of the bag cannot grow', () => {
    expect(seedMassG({ areaM2: 100, rateGPerM2: 30, pureLiveFraction: 0.8 })).toBeCloseTo(3750, 9);
  });
  it('is more where part of the mass is coating', () => {
    // Half of the mass is coating, so twice the mass is needed.
    expect(seedMassG({ areaM2: 100, rateGPerM2: 30, coatingFraction: 0.5 })).toBeCloseTo(6000, 9);
  });
  it('is linear in the area and in the rate', () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        fractionAboveZero,
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (areaM2, rateGPerM2, pureLive, coatingFraction) => {
          const quality = { pureLiveFraction: pureLive, coatingFraction };
          const one = seedMassG({ areaM2, rateGPerM2, ...quality });
          expectReal(one);
          expect(seedMassG({ areaM2: 3 * areaM2, rateGPerM2, ...quality }) / one).toBeCloseTo(3, 9);
          expect(seedMassG({ areaM2, rateGPerM2: 3 * rateGPerM2, ...quality }) / one).toBeCloseTo(3, 9);
        },
      ),
    );
  });
  it('never falls when the seed is worse', () => {
    fc.assert(
      fc.property(amount, amount, fractionAboveZero, fractionAboveZero, (areaM2, rateGPerM2, one, other) => {
        const mass = (pureLive: number) => seedMassG({ areaM2, rateGPerM2, pureLiveFraction: pureLive });
        expect(mass(Math.min(one, other))).toBeGreaterThanOrEqual(mass(Math.max(one, other)));
      }),
    );
  });
  it('refuses what cannot be', () => {
    expectRefusals(
      seedMassG,
      { areaM2: 84, rateGPerM2: 15, pureLiveFraction: 0.8, coatingFraction: 0.1 },
      { areaM2: [0], pureLiveFraction: [0, 1.1], coatingFraction: [1, 1.1] },
    );
  });
  it('shows how a percentage of pure live seed is written', () => {
    expect(() => seedMassG({ areaM2: 84, rateGPerM2: 15, pureLiveFraction: 81 })).toThrow(
      '81 % is written 0.81.',
    );
  });
});

describe('seedMassRangeG', () => {
  it('keeps both ends of the band', () => {
    expect(seedMassRangeG({ areaM2: 100, rateGPerM2: { min: 20, max: 44 } })).toEqual({
      min: 2000,
      max: 4400,
    });
  });
  it('halves both for half the rate', () => {
    const range = seedMassRangeG({ areaM2: 100, rateGPerM2: { min: 20, max: 44 }, rateShareFraction: 0.5 });
    expect(range).toEqual({ min: 1000, max: 2200 });
  });
  it('refuses a band that runs backwards', () => {
    expect(() => seedMassRangeG({ areaM2: 100, rateGPerM2: { min: 44, max: 20 } })).toThrow('rateGPerM2.max');
  });
});

describe('patchySeedMassG', () => {
  const rates = { overseedRateGPerM2: 15, newRateGPerM2: 30 };
  it('is the overseeding mass for a lawn without bare ground', () => {
    expect(patchySeedMassG({ areaM2: 84, bareFraction: 0, ...rates })).toBe(84 * 15);
  });
  it('is the new-lawn mass for bare ground', () => {
    expect(patchySeedMassG({ areaM2: 84, bareFraction: 1, ...rates })).toBe(84 * 30);
  });
  it('is the two parts sown apart for anything between', () => {
    fc.assert(
      fc.property(amount, fraction, amountOrNone, amountOrNone, (areaM2, bareFraction, one, other) => {
        const overseedRateGPerM2 = Math.min(one, other);
        const newRateGPerM2 = Math.max(one, other);
        const together = patchySeedMassG({ areaM2, bareFraction, overseedRateGPerM2, newRateGPerM2 });
        const apart = areaM2 * (bareFraction * newRateGPerM2 + (1 - bareFraction) * overseedRateGPerM2);
        expectReal(together);
        expect(Math.abs(together - apart)).toBeLessThanOrEqual(1e-9 * (1 + apart));
      }),
    );
  });
  it('refuses a bare-soil rate under the overseeding rate', () => {
    expect(() =>
      patchySeedMassG({ areaM2: 84, bareFraction: 0.3, overseedRateGPerM2: 30, newRateGPerM2: 15 }),
    ).toThrow('Bare soil takes no less than living grass.');
  });
  it('refuses what cannot be', () => {
    expectRefusals(
      patchySeedMassG,
      { areaM2: 84, bareFraction: 0.3, ...rates },
      { areaM2: [0], bareFraction: [1.01], newRateGPerM2: [0] },
    );
  });
});

describe('pure live seed', () => {
  it('is never more than either share', () => {
    fc.assert(
      fc.property(fraction, fraction, (purityFraction, germinationFraction) => {
        const pureLive = pureLiveFraction({ purityFraction, germinationFraction });
        expectReal(pureLive);
        expect(pureLive).toBeLessThanOrEqual(Math.min(purityFraction, germinationFraction));
      }),
    );
  });
  it('asks for more than what is missing: 1 ÷ p − 1 is at least 1 − p', () => {
    fc.assert(
      fc.property(fractionAboveZero, (pureLive) => {
        const extra = extraSeedFraction({ pureLiveFraction: pureLive });
        expectReal(extra);
        expect(extra).toBeGreaterThanOrEqual(1 - pureLive - 1e-12);
      }),
    );
  });
  it('refuses a percentage and a bag without life', () => {
    expectRefusals(
      pureLiveFraction,
      { purityFraction: 0.9, germinationFraction: 0.8 },
      { purityFraction: [90] },
    );
    expectRefusals(extraSeedFraction, { pureLiveFraction: 0.8 }, { pureLiveFraction: [0, 80] });
  });
});

describe('seedsPerM2', () => {
  it('counts only seeds that can grow when told how many do', () => {
    expect(seedsPerM2({ rateGPerM2: 20, seedsPerG: 500 })).toBe(10_000);
    expect(seedsPerM2({ rateGPerM2: 20, seedsPerG: 500, pureLiveFraction: 0.8 })).toBe(8000);
  });
  it('refuses what cannot be', () => {
    expectRefusals(seedsPerM2, { rateGPerM2: 20, seedsPerG: 500, pureLiveFraction: 1 }, { seedsPerG: [0] });
  });
});
