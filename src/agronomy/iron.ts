/**
 * Iron in iron(II) sulphate: the three salts sold under the one name hold very different shares of iron.
 *
 * For checking what a label says. How much of a moss treatment to use is the label's business.
 */
import { finiteResult, requireAtLeast } from '../base/refuse.js';
import { elementFraction, type Formula } from './atomic-weights.js';

const SALTS = {
  heptahydrate: { Fe: 1, S: 1, O: 11, H: 14 },
  monohydrate: { Fe: 1, S: 1, O: 5, H: 2 },
  anhydrous: { Fe: 1, S: 1, O: 4 },
} as const satisfies Record<string, Formula>;

export type IronSalt = keyof typeof SALTS;

/** The names of the salts, the commonest first. */
export const IRON_SALTS = ['heptahydrate', 'monohydrate', 'anhydrous'] as const satisfies readonly IronSalt[];

/**
 * Share of a salt's mass that is iron, from atomic weights.
 *
 *   ironFraction = Fe ÷ (FeSO₄ + its water)
 *
 * @param salt heptahydrate (7 water), monohydrate (1 water) or anhydrous (none)
 * @returns share, 0 to 1
 */
export function ironFraction(salt: IronSalt): number {
  return elementFraction(SALTS[salt], 'Fe');
}

/**
 * Salt that carries a dose of iron.
 *
 *   productGPerM2 = ironGPerM2 ÷ ironFraction
 *
 * @param ironGPerM2 g of iron per m², 0 or more
 * @returns g of salt per m²
 * @throws {RangeError} when the dose is below 0
 */
export function ironProductGPerM2({
  ironGPerM2,
  salt,
}: {
  readonly ironGPerM2: number;
  readonly salt: IronSalt;
}): number {
  requireAtLeast('ironGPerM2', ironGPerM2, 0);
  return finiteResult('productGPerM2', ironGPerM2 / ironFraction(salt));
}

/**
 * Iron in a dose of salt: the way back.
 *
 *   ironGPerM2 = productGPerM2 × ironFraction
 *
 * @param productGPerM2 g of salt per m², 0 or more
 * @returns g of iron per m²
 * @throws {RangeError} when the dose is below 0
 */
export function ironGPerM2({
  productGPerM2,
  salt,
}: {
  readonly productGPerM2: number;
  readonly salt: IronSalt;
}): number {
  requireAtLeast('productGPerM2', productGPerM2, 0);
  return productGPerM2 * ironFraction(salt);
}
