import { describe, expect, it } from 'vitest';
import { sharesByMass, sharesByNumber } from '../../src/agronomy/mix.js';
import { extraSeedFraction, pureLiveFraction } from '../../src/agronomy/seed.js';
import { convert, MASS_IN_G } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Cornell University, Safe Sports Fields, "Seeding rates": text on pure live seed and on mixes.
const seedsPerG = (perPound: number) => perPound / MASS_IN_G.lb;
const RYEGRASS = seedsPerG(250_000);
const MEADOW_GRASS = seedsPerG(1_500_000);

describe('pure live seed at Cornell', () => {
  const pureLive = pureLiveFraction({ purityFraction: 0.95, germinationFraction: 0.85 });
  // Printed as a whole percentage.
  it('is 81 % for 95 % purity and 85 % germination', () => expectPrinted(100 * pureLive, '81'));
  it('then asks for 23.8 % more seed, not the "20 % more" that the page prints', () => {
    const extra = extraSeedFraction({ pureLiveFraction: pureLive });
    expectPrinted(100 * extra, '23.8');
    expect(extra).toBeGreaterThan(0.2);
  });
});

describe('70 % ryegrass and 30 % meadow-grass by mass', () => {
  it('is 28 to 72 by number of seeds, not the 50 to 50 that the page prints', () => {
    const [ryegrass, meadowGrass] = sharesByNumber({
      parts: [
        { mass: 70, seedsPerG: RYEGRASS },
        { mass: 30, seedsPerG: MEADOW_GRASS },
      ],
    });
    expectPrinted(100 * (ryegrass ?? 0), '28');
    expectPrinted(100 * (meadowGrass ?? 0), '72');
  });
  it('would have to be 85.7 % ryegrass by mass for 50 to 50 by number', () => {
    const [ryegrass] = sharesByMass({
      parts: [
        { number: 50, seedsPerG: RYEGRASS },
        { number: 50, seedsPerG: MEADOW_GRASS },
      ],
    });
    expectPrinted(100 * (ryegrass ?? 0), '85.7');
  });
  it('counts 3,307 seeds in a gram of meadow-grass and 551 in a gram of ryegrass', () => {
    expect(convert(MASS_IN_G, 1_500_000, { from: 'g', to: 'lb' })).toBeCloseTo(MEADOW_GRASS, 6);
    expectPrinted(MEADOW_GRASS, '3307');
    expectPrinted(RYEGRASS, '551');
  });
});
