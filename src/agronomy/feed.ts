/** Fertiliser: from a wanted dose of nitrogen to product, and from a bag's three numbers to nutrients. */
import {
  finiteResult,
  refuse,
  requireAbove,
  requireAtLeast,
  requireBetween,
  requireFraction,
  requireFractionAboveZero,
} from '../base/refuse.js';
import { elementFraction } from './atomic-weights.js';

/** Mass of phosphorus in a unit mass of P₂O₅, about 0.436, from atomic weights. */
export const P_PER_P2O5 = elementFraction({ P: 2, O: 5 }, 'P');

/** Mass of potassium in a unit mass of K₂O, about 0.830, from atomic weights. */
export const K_PER_K2O = elementFraction({ K: 2, O: 1 }, 'K');

/**
 * Product mass that carries a wanted dose of nitrogen.
 *
 *   productMassG = areaM2 × nitrogenGPerM2 ÷ nitrogenFraction
 *
 * @param areaM2 fed area, m², above 0
 * @param nitrogenGPerM2 wanted nitrogen, g of N per m², 0 or more
 * @param nitrogenFraction nitrogen in the product by mass: the first number on the bag ÷ 100
 * @returns g of product, unrounded
 * @throws {RangeError} when an argument is outside its range
 * @source University of Georgia, "Lawn fertilizer calculations" (Waltz): five worked products
 */
export function nitrogenProductG({
  areaM2,
  nitrogenGPerM2,
  nitrogenFraction,
}: {
  readonly areaM2: number;
  readonly nitrogenGPerM2: number;
  readonly nitrogenFraction: number;
}): number {
  requireAbove('areaM2', areaM2, 0);
  requireAtLeast('nitrogenGPerM2', nitrogenGPerM2, 0);
  requireFractionAboveZero('nitrogenFraction', nitrogenFraction);
  return finiteResult('productMassG', (areaM2 * nitrogenGPerM2) / nitrogenFraction);
}

/**
 * Dose of a nutrient from a mass of product spread over an area.
 *
 *   doseGPerM2 = massG × nutrientFraction ÷ areaM2
 *
 * @param massG product, g, 0 or more
 * @param nutrientFraction nutrient in the product by mass, 0 to 1
 * @returns g of nutrient per m²
 * @throws {RangeError} when an argument is outside its range
 */
export function nutrientDoseGPerM2({
  areaM2,
  massG,
  nutrientFraction,
}: {
  readonly areaM2: number;
  readonly massG: number;
  readonly nutrientFraction: number;
}): number {
  requireAbove('areaM2', areaM2, 0);
  requireAtLeast('massG', massG, 0);
  requireFraction('nutrientFraction', nutrientFraction);
  return finiteResult('doseGPerM2', (massG * nutrientFraction) / areaM2);
}

/** The three numbers on a bag: percent by mass of N, P₂O₅ and K₂O, in that order. */
export interface LabelNumbers {
  readonly n: number;
  readonly p2o5: number;
  readonly k2o: number;
}

export interface LabelNutrients {
  readonly nG: number;
  readonly p2o5G: number;
  readonly k2oG: number;
  /** Phosphorus as the element, which is what a soil report may ask for. */
  readonly pG: number;
  /** Potassium as the element. */
  readonly kG: number;
}

/**
 * Nutrients in a mass of product, as the label counts them and as elements.
 *
 *   nG = massG × n ÷ 100, p2o5G and k2oG alike; pG = 0.436 × p2o5G; kG = 0.830 × k2oG
 *
 * @param massG product, g, 0 or more
 * @param label the three numbers, each 0 to 100, together at most 100
 * @returns g each
 * @throws {RangeError} when a number is outside its range
 * @source Purdue University AY-22 (what the numbers mean); Penn State, "How much fertilizer" (oxide to element)
 */
export function labelNutrients({
  massG,
  label,
}: {
  readonly massG: number;
  readonly label: LabelNumbers;
}): LabelNutrients {
  requireAtLeast('massG', massG, 0);
  for (const name of ['n', 'p2o5', 'k2o'] as const) requireBetween(name, label[name], { min: 0, max: 100 });
  const sum = label.n + label.p2o5 + label.k2o;
  if (sum > 100) refuse('n + p2o5 + k2o', 'must be 100 or less: they are percentages of one bag', sum);
  const p2o5G = (massG * label.p2o5) / 100;
  const k2oG = (massG * label.k2o) / 100;
  return { nG: (massG * label.n) / 100, p2o5G, k2oG, pG: P_PER_P2O5 * p2o5G, kG: K_PER_K2O * k2oG };
}
