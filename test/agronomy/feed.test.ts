import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelNutrients, nitrogenProductG, nutrientDoseGPerM2 } from '../../src/agronomy/feed.js';
import { amount, amountOrNone, expectReal, expectRefusals, fractionAboveZero } from './refusals.js';

describe('nitrogenProductG', () => {
  it('gives the dose back when it is spread', () => {
    fc.assert(
      fc.property(amount, amountOrNone, fractionAboveZero, (areaM2, nitrogenGPerM2, nitrogenFraction) => {
        const massG = nitrogenProductG({ areaM2, nitrogenGPerM2, nitrogenFraction });
        expectReal(massG);
        const dose = nutrientDoseGPerM2({ areaM2, massG, nutrientFraction: nitrogenFraction });
        expect(Math.abs(dose - nitrogenGPerM2)).toBeLessThanOrEqual(1e-9 * nitrogenGPerM2);
      }),
    );
  });
  it('never falls when the product is weaker', () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        fractionAboveZero,
        fractionAboveZero,
        (areaM2, nitrogenGPerM2, one, other) => {
          const mass = (nitrogenFraction: number) =>
            nitrogenProductG({ areaM2, nitrogenGPerM2, nitrogenFraction });
          expect(mass(Math.min(one, other))).toBeGreaterThanOrEqual(mass(Math.max(one, other)));
        },
      ),
    );
  });
  it('refuses a percentage with the share to write', () => {
    expect(() => nitrogenProductG({ areaM2: 84, nitrogenGPerM2: 4, nitrogenFraction: 28 })).toThrow(
      new RangeError(
        'nitrogenFraction is a share and must be above 0 and at most 1, got 28. 28 % is written 0.28.',
      ),
    );
  });
  it('refuses what cannot be', () => {
    const valid = { areaM2: 84, nitrogenGPerM2: 4, nitrogenFraction: 0.1 };
    expectRefusals(nitrogenProductG, valid, { areaM2: [0], nitrogenFraction: [0, 1.5] });
    expectRefusals(nutrientDoseGPerM2, { areaM2: 84, massG: 100, nutrientFraction: 0.1 }, { areaM2: [0] });
  });
});

describe('labelNutrients', () => {
  const label = { n: 12, p2o5: 4, k2o: 8 };
  it('takes each number as a percentage of the bag', () => {
    expect(labelNutrients({ massG: 1000, label })).toMatchObject({ nG: 120, p2o5G: 40, k2oG: 80 });
  });
  it('keeps phosphorus and potassium as elements under their oxides', () => {
    fc.assert(
      fc.property(amount, (massG) => {
        const { pG, p2o5G, kG, k2oG } = labelNutrients({ massG, label });
        expect(pG).toBeLessThan(p2o5G);
        expect(kG).toBeLessThan(k2oG);
      }),
    );
  });
  it('takes a label of exactly 100 and refuses one of more', () => {
    expect(() => labelNutrients({ massG: 1, label: { n: 40, p2o5: 30, k2o: 30 } })).not.toThrow();
    expect(() => labelNutrients({ massG: 1, label: { n: 40, p2o5: 30, k2o: 31 } })).toThrow(
      'percentages of one bag, got 101',
    );
  });
  it.each(['n', 'p2o5', 'k2o'] as const)('refuses a number for %s that no bag has', (name) => {
    for (const bad of [-1, 101, Number.NaN]) {
      expect(() => labelNutrients({ massG: 1, label: { ...label, [name]: bad } })).toThrow(name);
    }
  });
  it('holds nothing in nothing', () => expect(labelNutrients({ massG: 0, label }).nG).toBe(0));
  it('refuses a mass below 0', () => expect(() => labelNutrients({ massG: -1, label })).toThrow('massG'));
});
