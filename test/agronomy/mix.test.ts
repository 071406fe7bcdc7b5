import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelSum, mixPureLiveFraction, sharesByMass, sharesByNumber } from '../../src/agronomy/mix.js';
import { amount, fraction } from './refusals.js';

const total = (shares: readonly number[]) => shares.reduce((sum, share) => sum + share, 0);

describe('shares of a mix', () => {
  const parts = fc.array(fc.record({ mass: amount, seedsPerG: amount }), { minLength: 1, maxLength: 6 });

  it('come to the whole', () => {
    fc.assert(fc.property(parts, (list) => Math.abs(total(sharesByNumber({ parts: list })) - 1) < 1e-9));
  });

  it('go from mass to number and back to the same mass', () => {
    fc.assert(
      fc.property(parts, (list) => {
        const byNumber = sharesByNumber({ parts: list });
        const back = sharesByMass({
          parts: list.map(({ seedsPerG }, at) => ({ number: byNumber[at] as number, seedsPerG })),
        });
        const massTotal = total(list.map(({ mass }) => mass));
        for (const [at, share] of back.entries()) {
          expect(share).toBeCloseTo((list[at]?.mass ?? 0) / massTotal, 9);
        }
      }),
    );
  });

  it('are the same by mass and by number when all seeds weigh the same', () => {
    const shares = sharesByNumber({
      parts: [
        { mass: 3, seedsPerG: 500 },
        { mass: 1, seedsPerG: 500 },
      ],
    });
    expect(shares).toEqual([0.75, 0.25]);
  });

  it('are 0 for a grass of which there is none', () => {
    const none = { mass: 0, number: 0, seedsPerG: 500 };
    const some = { mass: 2, number: 2, seedsPerG: 100 };
    expect(sharesByNumber({ parts: [none, some] })).toEqual([0, 1]);
    expect(sharesByMass({ parts: [none, some] })).toEqual([0, 1]);
  });

  it('are refused for an empty mix, a mass below 0 or a seed without weight', () => {
    expect(() => sharesByNumber({ parts: [] })).toThrow('parts must have 1 or more');
    expect(() => sharesByNumber({ parts: [{ mass: 0, seedsPerG: 500 }] })).toThrow('must hold some seed');
    expect(() => sharesByNumber({ parts: [{ mass: -1, seedsPerG: 500 }] })).toThrow('mass must be 0 or more');
    expect(() => sharesByNumber({ parts: [{ mass: 1, seedsPerG: 0 }] })).toThrow('seedsPerG must be above 0');
    expect(() => sharesByMass({ parts: [{ number: 1, seedsPerG: 0 }] })).toThrow('seedsPerG must be above 0');
    expect(() => sharesByMass({ parts: [{ number: Number.NaN, seedsPerG: 1 }] })).toThrow('number');
  });
});

describe('mixPureLiveFraction', () => {
  it('is the germination itself when the bag is all seed of one germination', () => {
    fc.assert(
      fc.property(fraction, fraction, (germinationFraction, first) => {
        const kinds = [first, 1 - first].map((massFraction) => ({ massFraction, germinationFraction }));
        expect(mixPureLiveFraction({ kinds })).toBeCloseTo(germinationFraction, 9);
      }),
    );
  });
  it('is never more than the pure share', () => {
    fc.assert(
      fc.property(fraction, fraction, (massFraction, germinationFraction) => {
        expect(mixPureLiveFraction({ kinds: [{ massFraction, germinationFraction }] })).toBeLessThanOrEqual(
          massFraction,
        );
      }),
    );
  });
  it('refuses more than a whole bag, percentages and an empty list', () => {
    const half = { massFraction: 0.6, germinationFraction: 0.9 };
    expect(() => mixPureLiveFraction({ kinds: [half, half] })).toThrow(
      'must not add up to more than the whole bag',
    );
    expect(() => mixPureLiveFraction({ kinds: [{ massFraction: 60, germinationFraction: 0.9 }] })).toThrow(
      '0.6',
    );
    expect(() => mixPureLiveFraction({ kinds: [] })).toThrow('kinds');
  });
});

describe('labelSum', () => {
  it('is whole just inside the tolerance and not just outside', () => {
    expect(labelSum({ fractions: [0.5, 0.495], toleranceFraction: 0.005 }).isWhole).toBe(true);
    expect(labelSum({ fractions: [0.5, 0.494], toleranceFraction: 0.005 }).isWhole).toBe(false);
    expect(labelSum({ fractions: [0.5, 0.506], toleranceFraction: 0.005 }).isWhole).toBe(false);
  });
  it('refuses an empty label and a percentage', () => {
    expect(() => labelSum({ fractions: [], toleranceFraction: 0 })).toThrow('fractions');
    expect(() => labelSum({ fractions: [44], toleranceFraction: 0 })).toThrow('44 % is written 0.44.');
  });
});
