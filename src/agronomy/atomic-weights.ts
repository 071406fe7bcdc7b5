/**
 * Atomic weights of the elements in lawn feeds and moss treatments, g/mol.
 *
 * @source IUPAC Commission on Isotopic Abundances and Atomic Weights, abridged standard atomic weights
 */
export const ATOMIC_WEIGHT = {
  H: 1.008,
  O: 15.999,
  P: 30.974,
  S: 32.06,
  K: 39.098,
  Fe: 55.845,
} as const;

export type Formula = Readonly<Partial<Record<keyof typeof ATOMIC_WEIGHT, number>>>;

/**
 * Molar mass of a formula.
 *
 * @param formula atoms of each element, for example `{ P: 2, O: 5 }`
 * @returns g/mol
 */
export function molarMassGPerMol(formula: Formula): number {
  return Object.entries(formula).reduce(
    (sum, [element, count]) => sum + ATOMIC_WEIGHT[element as keyof typeof ATOMIC_WEIGHT] * count,
    0,
  );
}

/** Share of a formula's mass that is one element, 0 to 1. */
export function elementFraction(formula: Formula, element: keyof typeof ATOMIC_WEIGHT): number {
  return ((formula[element] ?? 0) * ATOMIC_WEIGHT[element]) / molarMassGPerMol(formula);
}
