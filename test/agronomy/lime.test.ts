import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { molarMassGPerMol } from '../../src/agronomy/atomic-weights.js';
import { limeProductG, limeProductGPerM2 } from '../../src/agronomy/lime.js';
import { amount, expectReal, expectRefusals } from './refusals.js';

describe('lime', () => {
  it('is the soil test itself for pure ground limestone', () => {
    expect(limeProductGPerM2({ limeGPerM2: 200, neutralisingFraction: 1 })).toBe(200);
  });
  it('is less of a product that is stronger than limestone', () => {
    expect(limeProductGPerM2({ limeGPerM2: 200, neutralisingFraction: 1.35 })).toBeLessThan(200);
  });
  it('is linear in area and rate', () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        fc.double({ min: 0.05, max: 1.8, noNaN: true }),
        (areaM2, limeGPerM2, neutralisingFraction) => {
          const one = limeProductG({ areaM2, limeGPerM2, neutralisingFraction });
          expectReal(one);
          expect(limeProductG({ areaM2: 2 * areaM2, limeGPerM2, neutralisingFraction }) / one).toBeCloseTo(
            2,
            9,
          );
          expect(
            limeProductG({ areaM2, limeGPerM2: 2 * limeGPerM2, neutralisingFraction }) / one,
          ).toBeCloseTo(2, 9);
        },
      ),
    );
  });
  it('refuses what cannot be, and shows how a neutralising value of 80 is written', () => {
    const valid = { areaM2: 84, limeGPerM2: 200, neutralisingFraction: 0.8 };
    expectRefusals(limeProductG, valid, { areaM2: [0], neutralisingFraction: [0, 2.1] });
    expect(() => limeProductG({ ...valid, neutralisingFraction: 80 })).toThrow(
      'A neutralising value of 80 % is a share of 0.8.',
    );
  });
  // Two moles of acid take one of either: 100.09 g of calcium carbonate or 56.08 g of burnt lime (Ca 40.078).
  it('allows burnt lime, which neutralises 1.785 times its mass of limestone', () => {
    const burnt = (40.078 + molarMassGPerMol({ O: 1 }) + 44.009) / (40.078 + molarMassGPerMol({ O: 1 }));
    expect(burnt).toBeCloseTo(1.785, 3);
    expect(() => limeProductGPerM2({ limeGPerM2: 200, neutralisingFraction: burnt })).not.toThrow();
  });
});
