import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guideWeightKg, liftsNeeded } from '../../src/agronomy/lifting.js';
import { amount, expectReal, expectRefusals, fraction } from './refusals.js';

describe('guideWeightKg', () => {
  it('is the base when nothing makes it less', () =>
    expect(guideWeightKg({ baseKg: 25, reductions: [] })).toBe(25));
  it('is never more than the largest reduction alone allows, in whatever order they come', () => {
    fc.assert(
      fc.property(amount, fc.array(fraction, { minLength: 1, maxLength: 5 }), (baseKg, reductions) => {
        const weight = guideWeightKg({ baseKg, reductions });
        expectReal(weight);
        expect(weight).toBeLessThanOrEqual(
          guideWeightKg({ baseKg, reductions: [Math.max(...reductions)] }) * (1 + 1e-12),
        );
        const reversed = guideWeightKg({ baseKg, reductions: [...reductions].reverse() });
        expect(Math.abs(reversed - weight)).toBeLessThanOrEqual(1e-9 * baseKg);
      }),
    );
  });
  it('refuses a percentage and a weight that cannot be', () => {
    expect(() => guideWeightKg({ baseKg: 25, reductions: [10] })).toThrow('10 % is written 0.1.');
    expect(() => guideWeightKg({ baseKg: 0, reductions: [] })).toThrow('baseKg');
    expect(() => guideWeightKg({ baseKg: 25, reductions: [Number.NaN] })).toThrow('reductions');
  });
});

describe('liftsNeeded', () => {
  it('splits a bag that is too heavy', () => {
    expect(liftsNeeded({ massKg: 0, maxLiftKg: 25 })).toEqual({ count: 0, each: 0 });
    expect(liftsNeeded({ massKg: 25, maxLiftKg: 25 })).toEqual({ count: 1, each: 25 });
    expect(liftsNeeded({ massKg: 25, maxLiftKg: 15 })).toEqual({ count: 2, each: 12.5 });
  });
  it('refuses someone who can lift nothing', () => {
    expect(() => liftsNeeded({ massKg: 25, maxLiftKg: 0 })).toThrow('maxLiftKg must be above 0');
    expect(() => liftsNeeded({ massKg: -1, maxLiftKg: 10 })).toThrow(RangeError);
  });
  it('never asks for more than the person can lift', () => {
    fc.assert(
      fc.property(amount, amount, (massKg, maxLiftKg) => {
        expect(liftsNeeded({ massKg, maxLiftKg }).each).toBeLessThanOrEqual(maxLiftKg * (1 + 1e-9));
      }),
    );
  });
  it('names its own argument when the limit cannot be', () => {
    expectRefusals(
      (args: { maxLiftKg: number }) => liftsNeeded({ massKg: 25, ...args }),
      { maxLiftKg: 10 },
      { maxLiftKg: [0] },
    );
  });
});
