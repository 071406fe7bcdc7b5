import { describe, expect, it } from 'vitest';
import { seedsPerM2 } from '../../src/agronomy/seed.js';
import { AREA_IN_M2, convert, MASS_IN_G, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Sources: rates and seed counts from Cornell, "Seeding rates", University of California IPM and a University
// of Illinois text; density bands from University of Massachusetts, "Seeding rate considerations" (7 to 14
// plants/in²) and from the trade article "Calculate pure live seed" (1,000 to 2,000 seeds/ft²).
const seedsPerFt2 = (poundsPer1000Ft2: number, seedsPerLb: number) =>
  AREA_IN_M2.ft2 *
  seedsPerM2({
    rateGPerM2: convert(MASS_RATE_IN_G_PER_M2, poundsPer1000Ft2, { from: 'lb/1000 ft2', to: 'g/m2' }),
    seedsPerG: seedsPerLb / MASS_IN_G.lb,
  });

describe('seeds on the ground at published rates', () => {
  // Rate × count ÷ 1,000 by hand, from the publications' own numbers.
  it.each([
    ['ryegrass at 4 lb (Cornell)', 4, 250_000, '1000'],
    ['ryegrass at 6 lb (Cornell)', 6, 250_000, '1500'],
    ['meadow-grass at 1 lb (Cornell)', 1, 1_500_000, '1500'],
    ['meadow-grass at 3 lb (Cornell)', 3, 1_500_000, '4500'],
    ['tall fescue at 6 lb (Cornell; count from Illinois)', 6, 225_000, '1350'],
    ['tall fescue at 8 lb (Cornell; count from Illinois)', 8, 225_000, '1800'],
    ['red fescue at 3.5 lb (California; mid count from Illinois)', 3.5, 475_000, '1662.5'],
    ['red fescue at 4.5 lb (California; mid count from Illinois)', 4.5, 475_000, '2137.5'],
  ] as const)('%s: %4$s to the square foot', (_, pounds, perPound, byHand) => {
    expectPrinted(seedsPerFt2(pounds, perPound), byHand);
  });

  it.each([
    ['ryegrass', 4, 6, 250_000],
    ['tall fescue', 6, 8, 225_000],
  ] as const)(
    '%s at both ends of its rate is inside the 1,000 to 2,000 of the trade article',
    (_, from, to, count) => {
      expect(seedsPerFt2(from, count)).toBeGreaterThanOrEqual(1000 - 1e-9);
      expect(seedsPerFt2(to, count)).toBeLessThanOrEqual(2000);
    },
  );

  it('4 lb of ryegrass is 6.9 seeds to the square inch, at the edge of the 7 of Massachusetts', () => {
    expectPrinted(seedsPerFt2(4, 250_000) / 144, '6.9');
  });

  it('4 lb of ryegrass is 10,764 seeds to the square metre', () => {
    const perM2 = seedsPerFt2(4, 250_000) / AREA_IN_M2.ft2;
    expectPrinted(perM2, '10764');
  });
});
