/**
 * The choice of packs against a search of every combination, and against yalps 0.6.4, a general integer-programming
 * library that knows nothing of packs. The tie-break is settled by the search alone: yalps has none.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greaterEq, lessEq, type Model, solve } from 'yalps';
import { choosePacks, type PackOffer } from '../../src/planner/choose-packs.js';

const offer = (size: number, price: number | null = null, stock: number | null = null): PackOffer => ({
  size,
  price,
  stock,
});

/** Every combination that could matter; the best by cost, packs, total, or without prices by the rule told there. */
function bruteForce(offers: readonly PackOffer[], need: number, spare = 0): number[] | undefined {
  const priced = offers.every(({ price }) => price !== null);
  let best: number[] | undefined;
  const visit = (index: number, [cost, packs, total]: readonly [number, number, number]): void => {
    const next = offers[index];
    if (next === undefined) {
      if (total < need) return;
      // Within the spare all totals are as good as each other but for the packs; past it the least total is best.
      const key = priced
        ? [cost, packs, total]
        : total <= need * (1 + spare)
          ? [0, packs, total]
          : [1, total, packs];
      const differs = best === undefined ? -1 : key.findIndex((part, at) => part !== best?.[at]);
      if (best === undefined || (differs >= 0 && (key[differs] as number) < (best[differs] as number)))
        best = key;
      return;
    }
    const most = Math.min(next.stock ?? Number.POSITIVE_INFINITY, Math.ceil(need / next.size));
    for (let count = 0; count <= most; count++)
      visit(index + 1, [cost + count * (next.price ?? 0), packs + count, total + count * next.size]);
  };
  visit(0, [0, 0, 0]);
  return best;
}

const size = fc.constantFrom(200, 250, 400, 500, 700, 1000, 2500);
const anyOffers = (price: fc.Arbitrary<number | null>): fc.Arbitrary<PackOffer[]> =>
  fc.array(fc.record({ size, price, stock: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 4 })) }), {
    minLength: 1,
    maxLength: 4,
  });
const need = fc.integer({ min: 1, max: 4000 });

/** Cost or total, packs, total of what was chosen. */
const keyOf = (offers: readonly PackOffer[], wanted: number, spare = 0): number[] | undefined => {
  const choice = choosePacks(offers, wanted, spare);
  if (choice === undefined) return undefined;
  const { cost, counts, total } = choice;
  const packs = counts.reduce((sum, count) => sum + count, 0);
  if (cost !== null) return [cost, packs, total];
  return total <= wanted * (1 + spare) ? [0, packs, total] : [1, total, packs];
};

describe('the choice of packs', () => {
  it('with prices is the best of all combinations: cost, then packs, then what is left over', () => {
    fc.assert(
      fc.property(anyOffers(fc.integer({ min: 0, max: 3000 })), need, (offers, wanted) => {
        expect(keyOf(offers, wanted)).toEqual(bruteForce(offers, wanted));
      }),
      { numRuns: 300 },
    );
  });

  it('breaks ties as told where many combinations cost the same', () => {
    const alike = fc
      .array(size, { minLength: 1, maxLength: 4 })
      .map((sizes) => sizes.map((each) => offer(each, each)));
    fc.assert(
      fc.property(alike, need, (offers, wanted) => {
        expect(keyOf(offers, wanted)).toEqual(bruteForce(offers, wanted));
      }),
      { numRuns: 100 },
    );
  });

  it('without prices takes the fewest packs within the spare, and else leaves the least over', () => {
    const spare = fc.constantFrom(0, 0.1, 0.2, 0.5);
    fc.assert(
      fc.property(anyOffers(fc.constant(null)), need, spare, (offers, wanted, share) => {
        expect(keyOf(offers, wanted, share)).toEqual(bruteForce(offers, wanted, share));
      }),
      { numRuns: 300 },
    );
  });

  it('makes two bags of three odd ones where a little more is left', () => {
    // 26 kg by hand: 20 + 5 + 2.5 leaves 1.5 kg in three bags, 20 + 10 leaves 4 kg in two, within a fifth.
    const bags = [2500, 5000, 10_000, 20_000].map((size) => offer(size));
    expect(choosePacks(bags, 26_000)?.counts).toEqual([1, 1, 0, 1]);
    expect(choosePacks(bags, 26_000, 0.2)?.counts).toEqual([0, 0, 1, 1]);
  });

  it('costs what an integer-programming library finds, for larger needs too', () => {
    fc.assert(
      fc.property(
        anyOffers(fc.integer({ min: 1, max: 9000 })),
        fc.integer({ min: 1, max: 60_000 }),
        (offers, wanted) => {
          const model: Model = {
            direction: 'minimize',
            objective: 'cost',
            constraints: Object.fromEntries([
              ['total', greaterEq(wanted)],
              ...offers.flatMap(({ stock }, index) =>
                stock === null ? [] : [[`stock${index}`, lessEq(stock)]],
              ),
            ]),
            variables: Object.fromEntries(
              offers.map((each, index) => [
                `pack${index}`,
                { cost: each.price ?? 0, total: each.size, [`stock${index}`]: 1 },
              ]),
            ),
            integers: true,
          };
          const { status, result } = solve(model, { tolerance: 0 });
          const chosen = choosePacks(offers, wanted);
          if (status === 'infeasible') expect(chosen).toBeUndefined();
          else expect(chosen?.cost).toBeCloseTo(result, 6);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('always covers the need, in any size, a pound or a cubic foot too', () => {
    const odd = fc.constantFrom(453.59237, 2267.96185, 21.237634944, 0.3, 1000);
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ size: odd, price: fc.integer({ min: 0, max: 999 }), stock: fc.constant(null) }),
          {
            minLength: 1,
            maxLength: 3,
          },
        ),
        fc.double({ min: 0.1, max: 9000, noNaN: true }),
        (offers, wanted) => {
          const choice = choosePacks(offers, wanted);
          expect(choice?.total).toBeGreaterThanOrEqual(wanted - 1e-9);
          const bought = offers.reduce(
            (sum, each, index) => sum + each.size * (choice?.counts[index] ?? 0),
            0,
          );
          expect(choice?.total).toBeCloseTo(bought, 6);
        },
      ),
    );
  });

  it('takes nothing for no need, and says so where the stock or the offers run out', () => {
    expect(choosePacks([offer(500, 100)], 0)).toEqual({ counts: [0], cost: 0, total: 0 });
    expect(choosePacks([], 0)).toEqual({ counts: [], cost: 0, total: 0 });
    expect(choosePacks([], 5)).toBeUndefined();
    expect(choosePacks([offer(500, 100, 2)], 1001)).toBeUndefined();
    expect(choosePacks([offer(500, 100, 2)], 1000)).toEqual({ counts: [2], cost: 200, total: 1000 });
  });

  it('refuses a pack that holds nothing', () => {
    expect(() => choosePacks([offer(0, 1)], 5)).toThrow(RangeError);
    expect(() => choosePacks([offer(1, 1)], Number.NaN)).toThrow(RangeError);
  });

  it('is settled for six hundred kilograms in pound bags and in kilogram bags', () => {
    const bags = [offer(2267.96185, 900), offer(2500, 950), offer(22679.6185, 7000), offer(25_000, 7600)];
    const choice = choosePacks(bags, 600_000);
    expect(choice?.total).toBeGreaterThanOrEqual(600_000);
    // 24 bags of 25 kg are exactly enough at 182400 hundredths, so nothing dearer may be chosen.
    expect(choice?.cost).toBeLessThanOrEqual(24 * 7600);
  });
});
