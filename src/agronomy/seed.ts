/** How much grass seed an area takes, and how much of a bag is seed that can grow. */
import {
  finiteResult,
  type NumberRange,
  refuse,
  requireAbove,
  requireAtLeast,
  requireFraction,
  requireFractionAboveZero,
  requireRange,
} from '../base/refuse.js';

/**
 * Share of a bag, by mass, that is wanted seed and alive.
 *
 *   pureLiveFraction = purityFraction × germinationFraction
 *
 * @param purityFraction wanted seed ÷ all that is in the bag, 0 to 1
 * @param germinationFraction seeds that grew in the label's test ÷ seeds tested, 0 to 1
 * @returns share, 0 to 1
 * @throws {RangeError} when a share is outside 0 to 1
 * @source Cornell University, Safe Sports Fields, "Seeding rates"; LSU AgCenter, "Pure live seed calculation"
 */
export function pureLiveFraction({
  purityFraction,
  germinationFraction,
}: {
  readonly purityFraction: number;
  readonly germinationFraction: number;
}): number {
  requireFraction('purityFraction', purityFraction);
  requireFraction('germinationFraction', germinationFraction);
  return purityFraction * germinationFraction;
}

/** What stands between the seed a rate means and what is in the bag; each share is 1 when left out. */
export interface SeedQuality {
  /** Give it only when the rate is meant as pure live seed. Above 0, at most 1. */
  readonly pureLiveFraction?: number | undefined;
  /**
   * Coating ÷ coated mass, 0 or more and under 1. Leave it out when the label counts the coating
   * as inert matter: then the purity has it already.
   */
  readonly coatingFraction?: number | undefined;
}

/**
 * Seed mass for an area.
 *
 *   seedMassG = areaM2 × rateGPerM2 ÷ pureLiveFraction ÷ (1 − coatingFraction)
 *
 * @param areaM2 m², above 0
 * @param rateGPerM2 g/m², 0 or more
 * @returns g, unrounded
 * @throws {RangeError} when an argument is outside its range
 * @source LSU AgCenter, "Pure live seed calculation", steps 1 to 5; LSU AgCenter, "Best buy on grass seed", for coating
 */
export function seedMassG({
  areaM2,
  rateGPerM2,
  ...quality
}: { readonly areaM2: number; readonly rateGPerM2: number } & SeedQuality): number {
  requireAbove('areaM2', areaM2, 0);
  requireAtLeast('rateGPerM2', rateGPerM2, 0);
  return finiteResult('seedMassG', (areaM2 * rateGPerM2) / usableFraction(quality));
}

/**
 * Smallest and largest seed mass for an area from a band of rates.
 *
 *   each end: as seedMassG, × rateShareFraction
 *
 * @param rateGPerM2 the band, g/m², each 0 or more
 * @param rateShareFraction share of the new-lawn rate that is sown: 1 on bare soil, less into living grass
 * @returns g, both ends
 * @throws {RangeError} when an argument is outside its range
 */
export function seedMassRangeG({
  areaM2,
  rateGPerM2,
  rateShareFraction = 1,
  ...quality
}: {
  readonly areaM2: number;
  readonly rateGPerM2: NumberRange;
  readonly rateShareFraction?: number | undefined;
} & SeedQuality): NumberRange {
  requireRange('rateGPerM2', rateGPerM2, 0);
  requireFraction('rateShareFraction', rateShareFraction);
  const massG = (rate: number) => seedMassG({ areaM2, rateGPerM2: rate * rateShareFraction, ...quality });
  return { min: massG(rateGPerM2.min), max: massG(rateGPerM2.max) };
}

/**
 * Seed mass for a lawn that is partly bare: the whole is oversown, bare ground gets the new-lawn rate.
 *
 *   seedMassG = areaM2 × (overseedRate + bareFraction × (newRate − overseedRate))
 *
 * @param bareFraction share of the area without grass, 0 to 1
 * @param overseedRateGPerM2 rate into living grass, g/m², 0 or more
 * @param newRateGPerM2 rate on bare soil, g/m², at least the overseeding rate
 * @returns g
 * @throws {RangeError} when an argument is outside its range
 */
export function patchySeedMassG({
  areaM2,
  bareFraction,
  overseedRateGPerM2,
  newRateGPerM2,
  ...quality
}: {
  readonly areaM2: number;
  readonly bareFraction: number;
  readonly overseedRateGPerM2: number;
  readonly newRateGPerM2: number;
} & SeedQuality): number {
  requireFraction('bareFraction', bareFraction);
  requireAtLeast('overseedRateGPerM2', overseedRateGPerM2, 0);
  requireAtLeast(
    'newRateGPerM2',
    newRateGPerM2,
    overseedRateGPerM2,
    'Bare soil takes no less than living grass.',
  );
  const rateGPerM2 = overseedRateGPerM2 + bareFraction * (newRateGPerM2 - overseedRateGPerM2);
  return seedMassG({ areaM2, rateGPerM2, ...quality });
}

/**
 * How much more to buy than the same mass of pure live seed.
 *
 *   extraFraction = 1 ÷ pureLiveFraction − 1, which is more than 1 − pureLiveFraction
 *
 * @param pureLiveFraction above 0, at most 1
 * @returns share of the wanted mass, 0 or more
 * @throws {RangeError} when the share is outside its range
 */
export function extraSeedFraction({ pureLiveFraction }: { readonly pureLiveFraction: number }): number {
  requireFractionAboveZero('pureLiveFraction', pureLiveFraction);
  return finiteResult('extraFraction', 1 / pureLiveFraction - 1);
}

/**
 * Seeds on each square metre at a rate.
 *
 *   seedsPerM2 = rateGPerM2 × seedsPerG × pureLiveFraction
 *
 * @param seedsPerG seeds in a gram of pure seed, above 0
 * @param pureLiveFraction give it to count only seeds that can grow; 1 when left out
 * @returns seeds per m², 0 or more
 * @throws {RangeError} when an argument is outside its range
 */
export function seedsPerM2({
  rateGPerM2,
  seedsPerG,
  pureLiveFraction = 1,
}: {
  readonly rateGPerM2: number;
  readonly seedsPerG: number;
  readonly pureLiveFraction?: number | undefined;
}): number {
  requireAtLeast('rateGPerM2', rateGPerM2, 0);
  requireAbove('seedsPerG', seedsPerG, 0);
  requireFraction('pureLiveFraction', pureLiveFraction);
  return finiteResult('seedsPerM2', rateGPerM2 * seedsPerG * pureLiveFraction);
}

function usableFraction({ pureLiveFraction = 1, coatingFraction = 0 }: SeedQuality): number {
  requireFractionAboveZero('pureLiveFraction', pureLiveFraction);
  requireFraction('coatingFraction', coatingFraction);
  if (coatingFraction === 1) refuse('coatingFraction', 'must be under 1', coatingFraction);
  return pureLiveFraction * (1 - coatingFraction);
}
