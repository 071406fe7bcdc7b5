/** Area of a lawn described as a list of parts, with beds taken away. */
import { finiteResult, refuse, requireCount } from '../base/refuse.js';
import { circleM2, ellipseM2, rectangleM2, triangleM2 } from './area.js';
import { equalOffsetsArea } from './area-offsets.js';
import { outlineM2, type PointM } from './outline.js';

interface MayBeTakenAway {
  /** True for a bed, a pond or a tree ring inside the lawn. */
  readonly minus?: boolean | undefined;
}

export type LawnPart = MayBeTakenAway &
  (
    | { readonly shape: 'rectangle'; readonly lengthM: number; readonly widthM: number }
    | { readonly shape: 'triangle'; readonly sidesM: readonly [number, number, number] }
    | { readonly shape: 'circle'; readonly diameterM: number }
    | { readonly shape: 'ellipse'; readonly lengthM: number; readonly widthM: number }
    | { readonly shape: 'offsets'; readonly spacingM: number; readonly offsetsM: readonly number[] }
    | { readonly shape: 'outline'; readonly pointsM: readonly PointM[] }
  );

export interface LawnArea {
  readonly areaM2: number;
  /** One per part, same order; a part that is taken away is below 0. */
  readonly partsM2: readonly number[];
}

/**
 * Area of one part, not yet signed. Offsets are taken by Simpson's rule.
 *
 * @throws {RangeError} when the part cannot exist
 */
export function lawnPartM2(part: LawnPart): number {
  switch (part.shape) {
    case 'rectangle':
      return rectangleM2(part);
    case 'triangle':
      return triangleM2(part);
    case 'circle':
      return circleM2(part);
    case 'ellipse':
      return ellipseM2(part);
    case 'offsets':
      return equalOffsetsArea({ ...part, rule: 'simpson' }).areaM2;
    case 'outline':
      return outlineM2(part);
    default:
      return part satisfies never;
  }
}

/**
 * Area of all parts together.
 *
 *   areaM2 = Σ lawn parts − Σ parts taken away
 *
 * Parts are taken not to overlap: measured ground is counted once only if it was measured once.
 *
 * @param lawnParts one or more parts, at least one of them lawn
 * @throws {RangeError} when a part cannot exist (the message counts from 1), or nothing is left
 */
export function lawnPartsArea({ lawnParts }: { readonly lawnParts: readonly LawnPart[] }): LawnArea {
  requireCount('lawnParts', lawnParts, 1);
  const partsM2 = lawnParts.map((part, index) => {
    const sizeM2 = namingThePart(index, part);
    return part.minus === true ? -sizeM2 : sizeM2;
  });
  const areaM2 = finiteResult(
    'areaM2',
    partsM2.reduce((sum, partM2) => sum + partM2, 0),
  );
  if (areaM2 <= 0) {
    const hint = 'The beds taken away are as large as the lawn, or larger.';
    refuse('lawnParts', 'must leave an area above 0 m2', Number(areaM2.toPrecision(6)), hint);
  }
  return { areaM2, partsM2 };
}

function namingThePart(index: number, part: LawnPart): number {
  try {
    return lawnPartM2(part);
  } catch (error) {
    if (error instanceof RangeError)
      throw new RangeError(`Part ${index + 1} (${part.shape}): ${error.message}`);
    throw error;
  }
}
