/** Aeration holes: how many to a square metre, and how much of the surface they open. */
import { finiteResult, refuse, requireAbove, requireAtLeast } from '../base/refuse.js';

/**
 * Holes on each square metre of a regular grid.
 *
 *   holesPerM2 = 1,000,000 ÷ (spacingMm × rowSpacingMm)
 *
 * @param spacingMm from hole to hole in a row, mm, above 0
 * @param rowSpacingMm from row to row, mm, above 0; the same as in the row when left out
 * @returns holes per m²
 * @throws {RangeError} when a spacing is not above 0
 */
export function holesPerM2({
  spacingMm,
  rowSpacingMm = spacingMm,
}: {
  readonly spacingMm: number;
  readonly rowSpacingMm?: number | undefined;
}): number {
  requireAbove('spacingMm', spacingMm, 0);
  requireAbove('rowSpacingMm', rowSpacingMm, 0);
  return finiteResult('holesPerM2', 1e6 / (spacingMm * rowSpacingMm));
}

/**
 * Share of the surface that is hole.
 *
 *   openFraction = holesPerM2 × π ÷ 4 × (diameterMm ÷ 1,000)²
 *
 * @param holesPerM2 holes per m², 0 or more
 * @param diameterMm width of a hole, mm, above 0; the inside of the tine for the cores taken out
 * @returns share, 0 to 1
 * @throws {RangeError} when an argument is outside its range, or the holes would cover more than all the ground
 */
export function openSurfaceFraction({
  holesPerM2: holes,
  diameterMm,
}: {
  readonly holesPerM2: number;
  readonly diameterMm: number;
}): number {
  requireAtLeast('holesPerM2', holes, 0);
  requireAbove('diameterMm', diameterMm, 0);
  const fraction = holes * (Math.PI / 4) * (diameterMm / 1000) ** 2;
  if (!(fraction <= 1))
    refuse('openFraction', 'must be 1 or less: so many holes so wide do not fit', fraction);
  return fraction;
}
