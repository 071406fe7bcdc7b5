/** Sprayer loads for an area, from the two rates on a product's label and what the tank holds to its top mark. */
import { doseDown } from '../base/quantity-words.js';
import { finiteResult, refuse, requireAbove, requireAtLeast } from '../base/refuse.js';

/** One filling: the water, the product in it, and the piece of ground that it is for. */
export interface TankLoad {
  readonly areaM2: number;
  readonly waterL: number;
  readonly productMl: number;
}

export interface TankLoads {
  /** In the order in which they are sprayed, the fuller ones first. */
  readonly loads: readonly TankLoad[];
  readonly total: TankLoad;
}

const ML_PER_L = 1000;
/** Water is measured to so much; finer only where the tank itself is hardly larger. */
const STEP_L = 0.1;
/** More fillings than anybody makes: the tank or the rate is a slip of the pen. */
const MOST_LOADS = 100_000;

/**
 * As few loads as fit under the top mark, alike to the last 0.1 L, and together exactly the whole.
 *
 *   total water = areaM2 × waterLPerM2;  total product = areaM2 × rateMlPerM2, rounded down to four digits
 *   loads = ⌈(total water + total product) ÷ tankL⌉, and one more where the 0.1 L would pass the mark
 *   a load's ground = its water ÷ waterLPerM2;  a load's product = its ground × rateMlPerM2
 *
 * Product takes room in the tank too, one litre for a litre; a gram of what is dissolved is counted as a millilitre,
 * which leaves room. The product is told to 1 mL (0.1 mL under 100 mL a load), the ground to 0.1 m²; what the rounding
 * leaves is in the last load, so that the sums come out.
 *
 * @param areaM2 m², above 0
 * @param waterLPerM2 water the label asks for, L/m², above 0
 * @param tankL what the tank holds to its top mark, water and product together, L, above 0
 * @param rateMlPerM2 product the label asks for, mL/m² (or g/m²), 0 or more; read off the label, never a typical value
 * @throws {RangeError} when an argument is outside its range, or no sensible number of loads would do
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
  const waterL = finiteResult('waterL', areaM2 * waterLPerM2);
  const product = doseDown(finiteResult('productMl', areaM2 * rateMlPerM2));
  const mixPerWater = 1 + rateMlPerM2 / ML_PER_L / waterLPerM2;
  const fewest = Math.max(1, Math.ceil(((waterL * mixPerWater) / tankL) * (1 - DUST)));
  if (fewest > MOST_LOADS)
    refuse('tankL', `must be large enough to do with ${MOST_LOADS} loads`, tankL, 'Is it in litres?');
  for (let count = fewest; ; count++) {
    const waters = shared(waterL, Array(count).fill(1), stepBelow(STEP_L, waterL / count));
    const products = shared(product, waters, productStep(product / count));
    const isWithin = waters.every(
      (water, load) => water + (products[load] as number) / ML_PER_L <= tankL * (1 + DUST),
    );
    if (!isWithin) continue;
    const areas = shared(areaM2, waters, stepBelow(STEP_M2, areaM2 / count));
    const loads = waters.map((water, load) => ({
      areaM2: areas[load] as number,
      waterL: water,
      productMl: products[load] as number,
    }));
    return { loads, total: { areaM2, waterL, productMl: product } };
  }
}

const DUST = 1e-9;
const STEP_M2 = 0.1;

/** The step, or a tenth of it and so on, until a share holds five of them. */
function stepBelow(step: number, share: number): number {
  return share >= 5 * step || share <= 0 ? step : stepBelow(step / 10, share);
}

const productStep = (shareMl: number): number => (shareMl >= 100 ? 1 : stepBelow(0.1, shareMl));

/**
 * A total shared out by weight in whole steps, by largest remainder; what is less than a step goes to the last share,
 * so that the shares add up to the total.
 */
function shared(total: number, weights: readonly number[], step: number): number[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const steps = Math.floor(dustless(total / step));
  const exact = weights.map((weight) => (steps * weight) / all);
  const whole = exact.map((share) => Math.floor(dustless(share)));
  const missing = steps - whole.reduce((sum, share) => sum + share, 0);
  const larger = new Set(
    exact
      .map((share, index) => ({ index, rest: dustless(share - (whole[index] as number)) }))
      .sort((a, b) => b.rest - a.rest || a.index - b.index)
      .slice(0, missing)
      .map(({ index }) => index),
  );
  const rest = total - steps * step;
  const last = weights.length - 1;
  return whole.map((share, index) =>
    dustless((share + (larger.has(index) ? 1 : 0)) * step + (index === last ? rest : 0)),
  );
}

const dustless = (value: number): number => Number(value.toPrecision(12));

/** Loads that are alike and follow one another, told as one: numbers from and to, counted from 1. */
export function groupsOf(
  loads: readonly TankLoad[],
): { readonly from: number; readonly to: number; readonly load: TankLoad }[] {
  const groups: { from: number; to: number; load: TankLoad }[] = [];
  for (const [index, load] of loads.entries()) {
    const last = groups.at(-1);
    const isAlike = (['areaM2', 'waterL', 'productMl'] as const).every(
      (key) => last?.load[key] === load[key],
    );
    if (last !== undefined && isAlike) last.to = index + 1;
    else groups.push({ from: index + 1, to: index + 1, load });
  }
  return groups;
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
