/**
 * Seed mixes by mass and by number of seeds, and the arithmetic of a seed label.
 *
 * A label gives shares by mass. A small seed counts for far more plants in the same mass, so a mix that
 * is mostly one grass by mass can be mostly another by number.
 */
import {
  finiteResult,
  refuse,
  requireAbove,
  requireAtLeast,
  requireCount,
  requireFraction,
} from '../base/refuse.js';

/**
 * Share of each part by number of seeds, from parts by mass.
 *
 *   share[i] = mass[i] × seedsPerG[i] ÷ Σ mass × seedsPerG
 *
 * @param parts mass in any unit (percentages serve), 0 or more; seedsPerG above 0; at least one mass above 0
 * @returns one share per part, same order, together 1
 * @throws {RangeError} when a part is outside its range
 */
export function sharesByNumber({
  parts,
}: {
  readonly parts: readonly { readonly mass: number; readonly seedsPerG: number }[];
}): number[] {
  return shares(
    parts.map(({ mass, seedsPerG }) => {
      requireAtLeast('mass', mass, 0);
      requireAbove('seedsPerG', seedsPerG, 0);
      return mass * seedsPerG;
    }),
  );
}

/**
 * Share of each part by mass, from parts by number of seeds.
 *
 *   share[i] = (number[i] ÷ seedsPerG[i]) ÷ Σ number ÷ seedsPerG
 *
 * @param parts number in any unit (percentages serve), 0 or more; seedsPerG above 0; at least one above 0
 * @returns one share per part, same order, together 1
 * @throws {RangeError} when a part is outside its range
 */
export function sharesByMass({
  parts,
}: {
  readonly parts: readonly { readonly number: number; readonly seedsPerG: number }[];
}): number[] {
  return shares(
    parts.map(({ number, seedsPerG }) => {
      requireAtLeast('number', number, 0);
      requireAbove('seedsPerG', seedsPerG, 0);
      return number / seedsPerG;
    }),
  );
}

/**
 * Pure live seed of a whole bag.
 *
 *   pureLiveFraction = Σ massFraction × germinationFraction
 *
 * @param kinds each wanted grass on the label: its share of the bag's mass and its germination, both 0 to 1;
 *   the shares together at most 1, the rest being inert matter, weed and other crop seed
 * @returns share of the bag, 0 to 1
 * @throws {RangeError} when a share is outside its range
 */
export function mixPureLiveFraction({
  kinds,
}: {
  readonly kinds: readonly { readonly massFraction: number; readonly germinationFraction: number }[];
}): number {
  requireCount('kinds', kinds, 1);
  let pure = 0;
  let live = 0;
  for (const { massFraction, germinationFraction } of kinds) {
    requireFraction('massFraction', massFraction);
    requireFraction('germinationFraction', germinationFraction);
    pure += massFraction;
    live += massFraction * germinationFraction;
  }
  // Shares such as 0.7 + 0.2 + 0.1 add to a hair off 1 in binary.
  if (pure > 1 + 1e-9) refuse('kinds', 'must not add up to more than the whole bag', pure);
  return Math.min(1, live);
}

export interface LabelSum {
  readonly sumFraction: number;
  readonly isWhole: boolean;
}

/**
 * Sum of the shares on a label, which must come to the whole bag.
 *
 * @param fractions every line of the label: each grass, other crop, weed, inert matter; 0 to 1
 * @param toleranceFraction how far off 1 still counts as whole, because labels are rounded; 0 to 1
 * @throws {RangeError} when the list is empty or a share is outside 0 to 1
 */
export function labelSum({
  fractions,
  toleranceFraction,
}: {
  readonly fractions: readonly number[];
  readonly toleranceFraction: number;
}): LabelSum {
  requireCount('fractions', fractions, 1);
  for (const fraction of fractions) requireFraction('fractions', fraction);
  requireFraction('toleranceFraction', toleranceFraction);
  const sumFraction = fractions.reduce((sum, fraction) => sum + fraction, 0);
  return { sumFraction, isWhole: Math.abs(sumFraction - 1) <= toleranceFraction + 1e-9 };
}

function shares(amounts: readonly number[]): number[] {
  requireCount('parts', amounts, 1);
  const total = finiteResult(
    'parts',
    amounts.reduce((sum, amount) => sum + amount, 0),
  );
  if (!(total > 0)) refuse('parts', 'must hold some seed', total);
  return amounts.map((amount) => amount / total);
}
