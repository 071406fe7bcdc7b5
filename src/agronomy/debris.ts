/** What raking brings up: its volume as a range, the bags it fills, and the moss that stays behind. */
import {
  finiteResult,
  type NumberRange,
  requireAbove,
  requireAtLeast,
  requireFraction,
  requireRange,
  requireWhole,
} from '../base/refuse.js';
import { splitUnderCap } from './split.js';

/**
 * Loose volume of moss and thatch raked off an area.
 *
 *   volumeL = areaM2 × layerMm × removedFraction × bulkingFactor, at the low ends and at the high ends
 *
 * @param areaM2 raked area, m², above 0
 * @param layerMm depth of the layer as it lies, mm, each 0 or more
 * @param removedFraction share of the layer that comes up, each 0 to 1
 * @param bulkingFactor loose volume ÷ volume as it lay, each 1 or more
 * @returns L, both ends
 * @throws {RangeError} when an argument is outside its range or a range runs backwards
 */
export function debrisRangeL({
  areaM2,
  layerMm,
  removedFraction,
  bulkingFactor,
}: {
  readonly areaM2: number;
  readonly layerMm: NumberRange;
  readonly removedFraction: NumberRange;
  readonly bulkingFactor: NumberRange;
}): NumberRange {
  requireAbove('areaM2', areaM2, 0);
  requireRange('layerMm', layerMm, 0);
  requireRange('removedFraction', removedFraction, 0);
  requireFraction('removedFraction.max', removedFraction.max);
  requireRange('bulkingFactor', bulkingFactor, 1);
  const atEnd = (end: 'min' | 'max') =>
    finiteResult('volumeL', areaM2 * layerMm[end] * removedFraction[end] * bulkingFactor[end]);
  return { min: atEnd('min'), max: atEnd('max') };
}

/**
 * Bags or barrow loads that hold a volume.
 *
 *   bagCount = ⌈volumeL ÷ bagL⌉
 *
 * @param volumeL L, 0 or more
 * @param bagL what one holds, L, above 0
 * @returns whole bags
 * @throws {RangeError} when an argument is outside its range
 */
export function bagCount({ volumeL, bagL }: { readonly volumeL: number; readonly bagL: number }): number {
  requireAtLeast('volumeL', volumeL, 0);
  requireAbove('bagL', bagL, 0);
  return splitUnderCap({ total: volumeL, cap: bagL }).count;
}

/**
 * Share of the lawn still under moss after raking, if nothing else changes.
 *
 *   leftFraction = mossFraction × (1 − removedFraction)^rakingCount
 *
 * @param mossFraction share under moss before, 0 to 1
 * @param removedFraction share of the moss that one raking takes, 0 to 1
 * @param rakingCount whole number, 0 or more; 1 when left out
 * @returns share of the lawn, 0 to 1; the difference to `mossFraction` is newly bare
 * @throws {RangeError} when an argument is outside its range
 */
export function mossLeftFraction({
  mossFraction,
  removedFraction,
  rakingCount = 1,
}: {
  readonly mossFraction: number;
  readonly removedFraction: number;
  readonly rakingCount?: number | undefined;
}): number {
  requireFraction('mossFraction', mossFraction);
  requireFraction('removedFraction', removedFraction);
  requireWhole('rakingCount', rakingCount, 0);
  return mossFraction * (1 - removedFraction) ** rakingCount;
}
