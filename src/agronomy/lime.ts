/** Lime: from the amount a soil test asks for to the amount of the product at hand. */
import { finiteResult, requireAbove, requireAtLeast, requireBetween } from '../base/refuse.js';

// Burnt lime, the strongest sold, neutralises 1.79 times its mass of pure chalk (100.09 ÷ 56.08 g/mol).
const STRONGEST_NEUTRALISING_FRACTION = 2;

/**
 * Lime product for a rate stated as pure calcium carbonate.
 *
 *   productGPerM2 = limeGPerM2 ÷ neutralisingFraction
 *
 * @param limeGPerM2 what the soil test asks for, g of calcium carbonate equivalent per m², 0 or more
 * @param neutralisingFraction the product's neutralising value ÷ 100; above 0, at most 2 (burnt lime passes 1)
 * @returns g of product per m²
 * @throws {RangeError} when an argument is outside its range
 * @source Penn State, Agricultural Analytical Services Laboratory, home lawn report
 */
export function limeProductGPerM2({
  limeGPerM2,
  neutralisingFraction,
}: {
  readonly limeGPerM2: number;
  readonly neutralisingFraction: number;
}): number {
  requireAtLeast('limeGPerM2', limeGPerM2, 0);
  const hint =
    neutralisingFraction > 2
      ? `A neutralising value of ${neutralisingFraction} % is a share of ${neutralisingFraction / 100}.`
      : undefined;
  requireAbove('neutralisingFraction', neutralisingFraction, 0);
  requireBetween(
    'neutralisingFraction',
    neutralisingFraction,
    { min: 0, max: STRONGEST_NEUTRALISING_FRACTION },
    hint,
  );
  return finiteResult('productGPerM2', limeGPerM2 / neutralisingFraction);
}

/**
 * Lime product for an area.
 *
 *   productG = areaM2 × limeGPerM2 ÷ neutralisingFraction
 *
 * @param areaM2 m², above 0
 * @returns g of product
 * @throws {RangeError} when an argument is outside its range
 */
export function limeProductG({
  areaM2,
  ...rate
}: {
  readonly areaM2: number;
  readonly limeGPerM2: number;
  readonly neutralisingFraction: number;
}): number {
  requireAbove('areaM2', areaM2, 0);
  return finiteResult('productG', areaM2 * limeProductGPerM2(rate));
}
