/**
 * Which packs to buy so that a need is covered: the least cost, then the fewest packs, then the least left over.
 * Where no price is known: the fewest packs that leave no more over than is worth a pack less, else the least left over.
 *
 * Exact: a table over every total up to the need and one pack more (bounded knapsack, after Bellman 1957;
 * counts are split into powers of two, so that a limited stock costs no more than an unlimited one).
 * Sizes are counted in their common measure, such as 250 g or a quarter of a cubic foot. Where they have none that
 * is large enough, as pounds beside kilograms, they are rounded down and the need up, so that it never falls short.
 */
import { requireAbove, requireFinite } from '../base/refuse.js';

export interface PackOffer {
  /** In the material's unit, above 0. */
  readonly size: number;
  /** In hundredths of the currency, whole, 0 or more; null: not known. */
  readonly price: number | null;
  /** How many are to be had; null: as many as wanted. */
  readonly stock: number | null;
}

export interface Choice {
  /** How many of each offer, in the order given. */
  readonly counts: readonly number[];
  /** In hundredths of the currency; null where prices are not known. */
  readonly cost: number | null;
  /** What is bought, in the material's unit. */
  readonly total: number;
}

/** A bundle of equal packs that is taken whole or not at all. */
interface Bundle {
  readonly offer: number;
  readonly count: number;
  readonly size: number;
  readonly cost: number;
}

/** Totals that the table may hold; a larger need is counted in coarser grains, still never short. */
const MOST_TOTALS = 1_000_000;
const GRAINS_PER_UNIT = 10;

/**
 * The best packs, or undefined where the stock does not cover the need.
 *
 * @param need in the material's unit, 0 or more
 * @param spareFraction of the need that may be left over for the sake of fewer packs, where any price is missing
 * @throws {RangeError} when a size is not above 0 or a number not finite
 */
export function choosePacks(
  offers: readonly PackOffer[],
  need: number,
  spareFraction = 0,
): Choice | undefined {
  requireFinite('need', need);
  for (const { size } of offers) requireAbove('size', size, 0);
  const hasPrices = offers.every(({ price }) => price !== null);
  const none = { counts: offers.map(() => 0), cost: hasPrices ? 0 : null, total: 0 };
  if (need <= 0) return none;
  if (offers.length === 0) return undefined;
  const { sizes, wanted, enough } = inGrains(offers, need, need * (1 + spareFraction));
  const bundles = bundlesOf(offers, { sizes, wanted, hasPrices });
  const counts = best(bundles, {
    wanted,
    enough: hasPrices ? undefined : enough,
    offerCount: offers.length,
    largest: Math.max(...sizes),
  });
  if (counts === undefined) return undefined;
  const sum = (of: (offer: PackOffer) => number): number =>
    offers.reduce((total, offer, index) => total + (counts[index] as number) * of(offer), 0);
  return { counts, cost: hasPrices ? sum(({ price }) => price ?? 0) : null, total: sum(({ size }) => size) };
}

interface Grains {
  readonly sizes: readonly number[];
  readonly wanted: number;
  readonly enough: number;
}

/** Sizes and need as whole grains: exact where the sizes have a common measure, else as fine as the table holds. */
function inGrains(offers: readonly PackOffer[], need: number, atMost: number): Grains {
  const packs = offers.map(({ size }) => size);
  const fits = ({ wanted, sizes }: Grains): boolean => wanted + Math.max(...sizes) <= MOST_TOTALS;
  const measure = commonMeasure(packs);
  const exact = {
    sizes: packs.map((size) => Math.round(size / measure)),
    wanted: Math.ceil(dustless(need / measure)),
    enough: Math.floor(dustless(atMost / measure)),
  };
  if (fits(exact)) return exact;
  for (let perUnit = GRAINS_PER_UNIT; ; perUnit /= GRAINS_PER_UNIT) {
    const coarse = {
      sizes: packs.map((size) => Math.max(1, Math.floor(dustless(size * perUnit)))),
      wanted: Math.ceil(dustless(need * perUnit)),
      enough: Math.floor(dustless(atMost * perUnit)),
    };
    if (fits(coarse) || Math.max(...packs) * perUnit < 1) return coarse;
  }
}

/** The largest measure that every size is a whole multiple of, binary dust apart (Euclid). */
function commonMeasure(sizes: readonly number[]): number {
  const dust = Math.min(...sizes) * DUST;
  return sizes.reduce((a, b) => {
    let [larger, smaller] = [Math.max(a, b), Math.min(a, b)];
    while (smaller > dust) {
      const rest = larger % smaller;
      [larger, smaller] = [smaller, smaller - rest < dust ? 0 : rest];
    }
    return larger;
  });
}

const DUST = 1 / 1_000_000;
const dustless = (value: number): number => Number(value.toFixed(10));

/** Powers of two, and a rest, that add up to every count from 0 to the most that could be of use. */
function bundlesOf(
  offers: readonly PackOffer[],
  { sizes, wanted, hasPrices }: { sizes: readonly number[]; wanted: number; hasPrices: boolean },
): Bundle[] {
  return offers.flatMap(({ price, stock }, offer) => {
    const size = sizes[offer] as number;
    const each = hasPrices ? (price ?? 0) : size;
    let left = Math.min(stock ?? Number.POSITIVE_INFINITY, Math.ceil(wanted / size));
    const bundles: Bundle[] = [];
    for (let next = 1; left > 0; next *= 2) {
      const count = Math.min(next, left);
      bundles.push({ offer, count, size: size * count, cost: each * count });
      left -= count;
    }
    return bundles;
  });
}

interface Aim {
  readonly wanted: number;
  /** Totals up to here are as good as each other, but for the count of packs; undefined: only money decides. */
  readonly enough: number | undefined;
  readonly offerCount: number;
  readonly largest: number;
}

function best(
  bundles: readonly Bundle[],
  { wanted, enough, offerCount, largest }: Aim,
): number[] | undefined {
  // No best choice goes further: without one of its packs it would still do.
  const top = wanted + largest - 1;
  const cost = new Float64Array(top + 1).fill(Number.POSITIVE_INFINITY);
  const packs = new Float64Array(top + 1);
  cost[0] = 0;
  const taken = bundles.map(() => new Uint8Array(top + 1));
  bundles.forEach((bundle, index) => {
    for (let total = top; total >= bundle.size; total--) {
      const before = total - bundle.size;
      const price = (cost[before] as number) + bundle.cost;
      const count = (packs[before] as number) + bundle.count;
      const isBetter =
        price < (cost[total] as number) || (price === cost[total] && count < (packs[total] as number));
      if (!Number.isFinite(price) || !isBetter) continue;
      cost[total] = price;
      packs[total] = count;
      (taken[index] as Uint8Array)[total] = 1;
    }
  });
  const rank = (total: number): readonly number[] => {
    const [price, count] = [cost[total] as number, packs[total] as number];
    if (enough === undefined) return [price, count, total];
    return total <= enough ? [0, count, total] : [1, total, count];
  };
  let chosen: number | undefined;
  for (let total = wanted; total <= top; total++) {
    if (!Number.isFinite(cost[total] as number)) continue;
    if (chosen === undefined || isBefore(rank(total), rank(chosen))) chosen = total;
  }
  return chosen === undefined ? undefined : countsBehind(bundles, taken, { total: chosen, offerCount });
}

/** Whether the first number that differs is the smaller one. */
function isBefore(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at >= 0 && (a[at] as number) < (b[at] as number);
}

/** Walks back through the bundles that made up the total. */
function countsBehind(
  bundles: readonly Bundle[],
  taken: readonly Uint8Array[],
  { total, offerCount }: { readonly total: number; readonly offerCount: number },
): number[] {
  const counts = new Array<number>(offerCount).fill(0);
  let left = total;
  for (let index = bundles.length - 1; index >= 0; index--) {
    if (taken[index]?.[left] !== 1) continue;
    const { offer, count, size } = bundles[index] as Bundle;
    counts[offer] = (counts[offer] ?? 0) + count;
    left -= size;
  }
  return counts;
}
