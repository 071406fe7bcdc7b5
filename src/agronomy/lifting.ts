/** Loads: a guide weight made less by twisting and repeating, and how many goes a heap takes. */
import { requireAbove, requireFraction } from '../base/refuse.js';
import { type Split, splitUnderCap } from './split.js';

/**
 * Guide weight after all reductions that apply.
 *
 *   guideKg = baseKg × Π (1 − reduction)
 *
 * The guide lists each reduction alone. Multiplying them is this project's choice: it never gives a
 * heavier guide than the largest reduction by itself.
 *
 * @param baseKg guide weight for the posture, kg, above 0
 * @param reductions each 0 to 1, in any order; none gives the base
 * @returns kg, 0 or more
 * @throws {RangeError} when an argument is outside its range
 * @source HSE (UK) INDG143, manual handling: the single reductions
 */
export function guideWeightKg({
  baseKg,
  reductions,
}: {
  readonly baseKg: number;
  readonly reductions: readonly number[];
}): number {
  requireAbove('baseKg', baseKg, 0);
  return reductions.reduce((weightKg, reduction) => {
    requireFraction('reductions', reduction);
    return weightKg * (1 - reduction);
  }, baseKg);
}

/**
 * Fewest equal lifts that move a mass, none over what the person can lift. `each` is in kg.
 *
 * @param massKg what has to be moved, kg, 0 or more
 * @param maxLiftKg most for one lift, kg, above 0
 * @throws {RangeError} when an argument is outside its range
 */
export function liftsNeeded({
  massKg,
  maxLiftKg,
}: {
  readonly massKg: number;
  readonly maxLiftKg: number;
}): Split {
  requireAbove('maxLiftKg', maxLiftKg, 0);
  return splitUnderCap({ total: massKg, cap: maxLiftKg });
}
