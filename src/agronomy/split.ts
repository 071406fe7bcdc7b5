/** Splitting a total into equal goes so that none is over a cap: feeds, lime doses, top-dressings, lifts. */
import { finiteResult, requireAbove, requireAtLeast } from '../base/refuse.js';

export interface Split {
  readonly count: number;
  readonly each: number;
}

/**
 * Fewest equal goes that keep each at or under a cap.
 *
 *   count = ⌈total ÷ cap⌉, each = total ÷ count; a total of 0 takes no go at all
 *
 * @param total in any unit, 0 or more
 * @param cap most for one go, same unit, above 0
 * @throws {RangeError} when an argument is outside its range
 */
export function splitUnderCap({ total, cap }: { readonly total: number; readonly cap: number }): Split {
  requireAtLeast('total', total, 0);
  requireAbove('cap', cap, 0);
  if (total === 0) return { count: 0, each: 0 };
  // Four feeds of 4.9 must stay four although 4 × 4.9 is a hair over 19.6 in binary.
  const count = Math.max(1, Math.ceil(finiteResult('count', total / cap) * (1 - 1e-12)));
  return { count, each: total / count };
}
