/** Cover of grass, moss or weed from points looked at one by one, with how sure that makes us. */
import { refuse, requireWhole } from '../base/refuse.js';

/** 97.5 % point of the normal curve: leaves 2.5 % on each side. */
const Z_95 = 1.959963984540054;

export interface PointCover {
  readonly fraction: number;
  /** Ends of the 95 % interval. */
  readonly lowFraction: number;
  readonly highFraction: number;
}

/**
 * Cover from point hits with its 95 % Wilson interval.
 *
 *   fraction = hits ÷ points;  ends = (p + z²÷2n ± z √(p(1−p)÷n + z²÷4n²)) ÷ (1 + z²÷n)
 *
 * The interval takes the points as independent, so they should be well apart. It never leaves 0 to 1 and
 * has width even when nothing, or everything, was hit.
 *
 * @param hits points on the plant in question, whole number, 0 to points
 * @param points all points looked at, whole number, 1 or more
 * @throws {RangeError} when a count is not whole or there are more hits than points
 * @source University of Idaho, Module 8 (hits ÷ points); E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209–212
 *   (interval, from memory)
 */
export function pointCover({ hits, points }: { readonly hits: number; readonly points: number }): PointCover {
  requireWhole('points', points, 1);
  requireWhole('hits', hits, 0);
  if (hits > points) refuse('hits', `must not be more than the ${points} points`, hits);
  const fraction = hits / points;
  const zz = Z_95 ** 2 / points;
  const middle = (fraction + zz / 2) / (1 + zz);
  const half = Math.sqrt(zz * (fraction * (1 - fraction) + zz / 4)) / (1 + zz);
  return {
    fraction,
    // With no hit the lower end is exactly 0, and with all hit the upper end exactly 1; binary rounding is not.
    lowFraction: hits === 0 ? 0 : Math.max(0, middle - half),
    highFraction: hits === points ? 1 : Math.min(1, middle + half),
  };
}
