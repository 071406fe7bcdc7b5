/**
 * Area between a straight line and a curved edge, from offsets measured square to the line.
 *
 * Trapezoid rule: each strip has a straight edge. Simpson's rule: a parabola through each three
 * neighbouring offsets, which suits a smoothly curving edge. Both for equal and unequal spacing.
 */
import { finiteResult, refuse, requireAbove, requireAtLeast, requireCount } from '../base/refuse.js';

export type OffsetRule = 'simpson' | 'trapezoid';

export interface OffsetsArea {
  readonly areaM2: number;
  readonly rule: OffsetRule;
  /** Strips taken as trapezia, counted from 1 at the first offset; all of them under the trapezoid rule. */
  readonly trapeziumStrips: readonly number[];
}

/**
 * Area from offsets at equal steps along the line.
 *
 *   trapezoid: h × ((y0 + yn) ÷ 2 + the offsets between)
 *   simpson:   h ÷ 3 × (y0 + 4 × the odd ones + 2 × the even ones + yn)
 *
 * Simpson's rule needs an even number of strips. With an odd number it is used on all strips but
 * the last, and the last one is taken as a trapezium; `trapeziumStrips` says so.
 *
 * @param spacingM step along the line, h, m, above 0
 * @param offsetsM offsets, m, each 0 or more, not all 0, two or more, in order along the line
 * @param rule `simpson` or `trapezoid`
 * @throws {RangeError} when an argument is outside the ranges above
 */
export function equalOffsetsArea({
  spacingM,
  offsetsM,
  rule,
}: {
  readonly spacingM: number;
  readonly offsetsM: readonly number[];
  readonly rule: OffsetRule;
}): OffsetsArea {
  requireAbove('spacingM', spacingM, 0);
  const distancesM = offsetsM.map((_, index) => index * spacingM);
  return unequalOffsetsArea({ distancesM, offsetsM, rule });
}

/**
 * Area from offsets at any distances along the line.
 *
 *   trapezoid, each strip:     h × (y0 + y1) ÷ 2
 *   simpson, each two strips:  (h0+h1) ÷ 6 × ((2 − h1÷h0) y0 + (h0+h1)² ÷ (h0 h1) y1 + (2 − h0÷h1) y2)
 *
 * The second line is the exact area under the parabola through the three points. Where one of the two
 * strips is more than twice as wide as the other, that parabola would count an outer offset as less than
 * nothing, so the pair is taken as two trapezia. An odd last strip is a trapezium too.
 *
 * @param distancesM places of the offsets along the line, m, rising, one per offset, same order
 * @param offsetsM as for equal steps
 * @param rule `simpson` or `trapezoid`
 * @throws {RangeError} when an argument is outside the ranges above
 */
export function unequalOffsetsArea({
  distancesM,
  offsetsM,
  rule,
}: {
  readonly distancesM: readonly number[];
  readonly offsetsM: readonly number[];
  readonly rule: OffsetRule;
}): OffsetsArea {
  requireOffsets(offsetsM);
  const stripsM = stripWidthsM(distancesM, offsetsM.length);
  let areaM2 = 0;
  const trapeziumStrips: number[] = [];
  for (let strip = 0; strip < stripsM.length; strip += 1) {
    const pairM2 = rule === 'simpson' ? parabolaM2(stripsM, offsetsM, strip) : undefined;
    if (pairM2 === undefined) {
      areaM2 += ((stripsM[strip] as number) * (at(offsetsM, strip) + at(offsetsM, strip + 1))) / 2;
      trapeziumStrips.push(strip + 1);
    } else {
      areaM2 += pairM2;
      strip += 1;
    }
  }
  return { areaM2: finiteResult('areaM2', areaM2), rule, trapeziumStrips };
}

/** Area of the two strips from `strip` on under a parabola, or nothing where a parabola does not serve. */
function parabolaM2(
  stripsM: readonly number[],
  offsetsM: readonly number[],
  strip: number,
): number | undefined {
  const h0 = stripsM[strip];
  const h1 = stripsM[strip + 1];
  if (h0 === undefined || h1 === undefined) return undefined;
  const ratio = h1 / h0;
  // A hair over two is still two: distances such as 0.1 + 0.2 are not exact in binary.
  if (Math.max(ratio, 1 / ratio) > 2 * (1 + 1e-9)) return undefined;
  const outer =
    Math.max(0, 2 - ratio) * at(offsetsM, strip) + Math.max(0, 2 - 1 / ratio) * at(offsetsM, strip + 2);
  const middle = (((h0 + h1) / h0) * (h0 + h1) * at(offsetsM, strip + 1)) / h1;
  return ((h0 + h1) / 6) * (outer + middle);
}

function requireOffsets(offsetsM: readonly number[]): void {
  requireCount('offsetsM', offsetsM, 2);
  for (const offsetM of offsetsM) requireAtLeast('offsetsM', offsetM, 0);
  if (offsetsM.every((offsetM) => offsetM === 0))
    refuse('offsetsM', 'must not all be 0', offsetsM.join(', '));
}

function stripWidthsM(distancesM: readonly number[], offsetCount: number): number[] {
  if (distancesM.length !== offsetCount) {
    refuse('distancesM', `must have one entry for each of the ${offsetCount} offsets`, distancesM.length);
  }
  return distancesM.slice(1).map((distanceM, index) => {
    requireAbove('distancesM', distanceM, at(distancesM, index), 'They must rise along the line.');
    return distanceM - at(distancesM, index);
  });
}

/** An entry whose index the loops above keep inside the list. */
function at(list: readonly number[], index: number): number {
  return list[index] as number;
}
