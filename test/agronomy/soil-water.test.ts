import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  depletionFraction,
  readilyAvailableWaterMm,
  startingDepletionMm,
  stressCoefficient,
  totalAvailableWaterMm,
  totalEvaporableWaterMm,
} from '../../src/agronomy/soil-water.js';

// Worked out by hand on a sandy loam, middle of the range of FAO-56 table 19: FC 0.23, WP 0.11, roots 150 mm.
const sandyLoam = { fieldCapacityFraction: 0.23, wiltingPointFraction: 0.11 };

describe('a sandy loam with 15 cm of roots', () => {
  const availableMm = totalAvailableWaterMm({ ...sandyLoam, rootDepthMm: 150 });
  const share = depletionFraction({ tableFraction: 0.4, turfWaterUseMm: 3.5 });

  // (0.23 − 0.11) × 150 = 18
  it('holds 18 mm for the grass', () => {
    expect(availableMm).toBeCloseTo(18, 12);
  });
  // 0.40 + 0.04 × (5 − 3.5) = 0.46
  it('lets grass take 46 % before it suffers, at 3.5 mm a day', () => {
    expect(share).toBeCloseTo(0.46, 12);
  });
  // 0.46 × 18 = 8.28
  it('so has 8.28 mm that are easy to take', () => {
    expect(readilyAvailableWaterMm({ availableMm, depletionFraction: share })).toBeCloseTo(8.28, 12);
  });
  // (18 − 12) ÷ ((1 − 0.46) × 18) = 6 ÷ 9.72 = 0.6173
  it('keeps grass at 62 % of its water use when 12 mm are gone', () => {
    expect(stressCoefficient({ availableMm, depletionMm: 12, depletionFraction: share })).toBeCloseTo(
      0.6173,
      4,
    );
  });
  // (0.23 − 0.5 × 0.11) × 100 = 17.5
  it('can lose 17.5 mm from its top 10 cm when bare', () => {
    expect(totalEvaporableWaterMm({ ...sandyLoam, dryingDepthMm: 100 })).toBeCloseTo(17.5, 12);
  });
  // (0.23 − 0.18) × 150 = 7.5
  it('lacks 7.5 mm at a water content of 0.18, and nothing when wetter than field capacity', () => {
    const soil = { fieldCapacityFraction: 0.23, rootDepthMm: 150 };
    expect(startingDepletionMm({ ...soil, waterFraction: 0.18 })).toBeCloseTo(7.5, 12);
    expect(startingDepletionMm({ ...soil, waterFraction: 0.3 })).toBe(0);
  });
});

describe('the share that grass may take', () => {
  it('is the printed one at 5 mm a day and stays within 0.1 and 0.8', () => {
    expect(depletionFraction({ tableFraction: 0.4, turfWaterUseMm: 5 })).toBe(0.4);
    expect(depletionFraction({ tableFraction: 0.4, turfWaterUseMm: 15 })).toBe(0.1);
    expect(depletionFraction({ tableFraction: 0.75, turfWaterUseMm: 0 })).toBe(0.8);
  });
});

describe('the stress coefficient', () => {
  it('is 1 down to the easy water, falls without a jump, and is 0 at the wilting point', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 0.8, noNaN: true }),
        (availableMm, share) => {
          const ks = (depletionMm: number) =>
            stressCoefficient({ availableMm, depletionMm, depletionFraction: share });
          expect(ks(0)).toBe(1);
          expect(ks(share * availableMm)).toBe(1);
          expect(ks(share * availableMm * (1 + 1e-9))).toBeCloseTo(1, 6);
          expect(ks(availableMm)).toBe(0);
          expect(ks(0.9 * availableMm)).toBeGreaterThan(ks(0.95 * availableMm));
        },
      ),
    );
  });
});

describe('soil water', () => {
  it('refuses percentages, swapped limits and depths of nothing', () => {
    const swapped = { fieldCapacityFraction: 0.11, wiltingPointFraction: 0.23 };
    expect(() => totalAvailableWaterMm({ ...swapped, rootDepthMm: 150 })).toThrow('Are the two swapped?');
    const percent = { fieldCapacityFraction: 23, wiltingPointFraction: 0.11 };
    expect(() => totalAvailableWaterMm({ ...percent, rootDepthMm: 150 })).toThrow('0.23');
    expect(() => totalAvailableWaterMm({ ...sandyLoam, rootDepthMm: 0 })).toThrow('rootDepthMm');
    expect(() => totalEvaporableWaterMm({ ...sandyLoam, dryingDepthMm: 0.1 })).toThrow('dryingDepthMm');
    expect(() => stressCoefficient({ availableMm: 18, depletionMm: 19, depletionFraction: 0.4 })).toThrow(
      'depletionMm',
    );
  });
});
