/** Areas of the plain shapes a lawn or a flower bed can be measured as. */
import { finiteResult, refuse, requireAbove } from '../base/refuse.js';

/**
 * Area of a rectangle.
 *
 *   areaM2 = lengthM × widthM
 *
 * @param lengthM m, above 0
 * @param widthM m, above 0; measured square to the length
 * @returns m²
 * @throws {RangeError} when a side is not above 0
 */
export function rectangleM2({
  lengthM,
  widthM,
}: {
  readonly lengthM: number;
  readonly widthM: number;
}): number {
  requireAbove('lengthM', lengthM, 0);
  requireAbove('widthM', widthM, 0);
  return finiteResult('areaM2', lengthM * widthM);
}

/**
 * Area of a triangle from its three sides, so that no square corner has to be found on the ground.
 *
 *   areaM2 = ¼ √((a+(b+c)) (c−(a−b)) (c+(a−b)) (a+(b−c))), with a ≥ b ≥ c
 *
 * This is Heron's formula in Kahan's order of terms, which stays exact for long thin triangles.
 *
 * @param sidesM the three sides, m, each above 0, in any order
 * @returns m²
 * @throws {RangeError} when a side is not above 0 or the sides cannot close
 * @source W. Kahan, "Miscalculating area and angles of a needle-like triangle", 1986 (from memory)
 */
export function triangleM2({ sidesM }: { readonly sidesM: readonly [number, number, number] }): number {
  for (const sideM of sidesM) requireAbove('sidesM', sideM, 0);
  const [a, b, c] = [...sidesM].sort((x, y) => y - x) as [number, number, number];
  if (c <= a - b) {
    const hint = 'The longest must be shorter than the other two together. Measure them again.';
    refuse('sidesM', 'must close to a triangle', sidesM.join(', '), hint);
  }
  const product = (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c));
  return finiteResult('areaM2', Math.sqrt(product) / 4);
}

/**
 * Area of a circle.
 *
 *   areaM2 = π ÷ 4 × diameterM²
 *
 * @param diameterM m, above 0; straight across through the middle
 * @returns m²
 * @throws {RangeError} when the diameter is not above 0
 */
export function circleM2({ diameterM }: { readonly diameterM: number }): number {
  requireAbove('diameterM', diameterM, 0);
  return finiteResult('areaM2', (Math.PI / 4) * diameterM ** 2);
}

/**
 * Area of an ellipse (an oval with two equal halves each way).
 *
 *   areaM2 = π ÷ 4 × lengthM × widthM
 *
 * @param lengthM longest line across, m, above 0
 * @param widthM line across at right angles to it, m, above 0
 * @returns m²
 * @throws {RangeError} when a line is not above 0
 */
export function ellipseM2({
  lengthM,
  widthM,
}: {
  readonly lengthM: number;
  readonly widthM: number;
}): number {
  requireAbove('lengthM', lengthM, 0);
  requireAbove('widthM', widthM, 0);
  return finiteResult('areaM2', (Math.PI / 4) * lengthM * widthM);
}
