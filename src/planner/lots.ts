/** What is weighed out for each pass over the lawn, and for bare places besides: lots that add up to the amount. */
import { asShown, quantity } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Pack } from '../rules/pack.js';
import { worded } from './explain-words.js';

/** Digits of a lot, and one more where the half of an amount, or what is left of it, must be told in full. */
const DIGITS = 3;
const FULL_DIGITS = 4;

/**
 * Empty where it goes on in one go.
 *
 * @param amount as it is printed, in the unit
 * @param everywhere what of it is spread over the whole, in the unit; the rest is for bare ground
 */
export function lotsWords(
  pack: Pack,
  {
    amount,
    everywhere,
    passes,
  }: { readonly amount: number; readonly everywhere: number; readonly passes: number },
  { unit, units }: { readonly unit: string; readonly units: Units },
): string {
  if (passes < 2) return '';
  const isAll = everywhere >= amount * (1 - NEARLY_ALL);
  const count = String(passes);
  if (isAll)
    return worded(pack, 'lotsEven', { count, lot: quantity(amount / passes, unit, units, FULL_DIGITS) });
  const each = asShown(everywhere / passes, unit, units, DIGITS);
  return worded(pack, 'lotsAndBare', {
    count,
    lot: quantity(each, unit, units, DIGITS),
    rest: quantity(amount - passes * each, unit, units, FULL_DIGITS),
  });
}

/** A rest that is no more than rounding is no lot of its own. */
const NEARLY_ALL = 0.01;
