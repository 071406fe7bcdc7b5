/** Sprayer loads for an area, from the two rates on a product's label and the size of the tank. */
import { finiteResult, requireAbove, requireAtLeast } from '../base/refuse.js';

export interface TankLoad {
  readonly waterL: number;
  readonly productMl: number;
}

export interface TankLoads {
  /** Filled tanks and the part-filled last one together. */
  readonly loadCount: number;
  readonly fullCount: number;
  /** What goes into each full tank; present even if none is needed full. */
  readonly full: TankLoad;
  /** The part-filled last load, or null when the full ones come out even. */
  readonly last: TankLoad | null;
  readonly total: TankLoad;
}

/**
 * Full loads, the last load apart, and the product in each.
 *
 *   total water = areaM2 × waterLPerM2;  full loads = ⌊total water ÷ tankL⌋;  last load = the rest
 *   product in a load = its water ÷ waterLPerM2 × rateMlPerM2
 *
 * The last load gets product for its own water, not for a whole tank. `tankL` is the water put in,
 * so it should leave room for the product.
 *
 * @param areaM2 m², above 0
 * @param waterLPerM2 water the label asks for, L/m², above 0
 * @param tankL water in one fill, L, above 0
 * @param rateMlPerM2 product the label asks for, mL/m², 0 or more; read off the label, never a typical value
 * @throws {RangeError} when an argument is outside its range
 */
export function tankLoads({
  areaM2,
  waterLPerM2,
  tankL,
  rateMlPerM2,
}: {
  readonly areaM2: number;
  readonly waterLPerM2: number;
  readonly tankL: number;
  readonly rateMlPerM2: number;
}): TankLoads {
  requireAbove('areaM2', areaM2, 0);
  requireAbove('waterLPerM2', waterLPerM2, 0);
  requireAbove('tankL', tankL, 0);
  requireAtLeast('rateMlPerM2', rateMlPerM2, 0);
  const load = (waterL: number): TankLoad => ({
    waterL,
    productMl: productMl({ waterL, waterLPerM2, rateMlPerM2 }),
  });
  const totalWaterL = finiteResult('waterL', areaM2 * waterLPerM2);
  const fills = finiteResult('loadCount', totalWaterL / tankL);
  // A rest under a millionth of a tank is rounding in binary, not water.
  const fullCount = Math.floor(fills + 1e-6);
  const restL = totalWaterL - fullCount * tankL;
  const last = restL > 1e-6 * tankL ? load(restL) : null;
  return {
    loadCount: fullCount + (last === null ? 0 : 1),
    fullCount,
    full: load(tankL),
    last,
    total: load(totalWaterL),
  };
}

/**
 * Product for an amount of water, so that both land on the ground at the label's rates.
 *
 *   productMl = waterL ÷ waterLPerM2 × rateMlPerM2
 *
 * @param waterL water in the tank, L, 0 or more
 * @param waterLPerM2 water on the ground, L/m², above 0: the label's figure or the sprayer's own from a catch test
 * @param rateMlPerM2 product the label asks for, mL/m², 0 or more
 * @returns mL
 * @throws {RangeError} when an argument is outside its range
 */
export function productMl({
  waterL,
  waterLPerM2,
  rateMlPerM2,
}: {
  readonly waterL: number;
  readonly waterLPerM2: number;
  readonly rateMlPerM2: number;
}): number {
  requireAtLeast('waterL', waterL, 0);
  requireAbove('waterLPerM2', waterLPerM2, 0);
  requireAtLeast('rateMlPerM2', rateMlPerM2, 0);
  return finiteResult('productMl', (waterL / waterLPerM2) * rateMlPerM2);
}
