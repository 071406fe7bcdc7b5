/** Ground round a tree that must not be cored, forked deep or rotavated. */

import { finiteResult, requireAbove } from '../base/refuse.js';
import { circleM2 } from './area.js';

export interface RootZone {
  readonly radiusM: number;
  readonly areaM2: number;
}

/**
 * Circle round a tree to keep deep work out of.
 *
 *   radiusM = multiple × stemDiameterM, kept to the circle whose area is the cap
 *
 * @param stemDiameterM stem at 1.5 m above ground, m, above 0
 * @param multiple radius ÷ stem diameter, above 0
 * @param capM2 largest circle asked for, m², above 0; no cap when left out
 * @throws {RangeError} when an argument is not above 0
 * @source BS 5837:2012, annex D, as quoted second-hand: 12 × the diameter, at most 707 m²
 */
export function rootZone({
  stemDiameterM,
  multiple,
  capM2,
}: {
  readonly stemDiameterM: number;
  readonly multiple: number;
  readonly capM2?: number | undefined;
}): RootZone {
  requireAbove('stemDiameterM', stemDiameterM, 0);
  requireAbove('multiple', multiple, 0);
  if (capM2 !== undefined) requireAbove('capM2', capM2, 0);
  const radiusM = finiteResult('radiusM', multiple * stemDiameterM);
  const areaM2 = circleM2({ diameterM: 2 * radiusM });
  if (capM2 === undefined || areaM2 <= capM2) return { radiusM, areaM2 };
  return { radiusM: Math.sqrt(capM2 / Math.PI), areaM2: capM2 };
}
