/** One way to say an amount, for every place that says it: the same amount is the same number everywhere. */
import { doseQuantity, quantity } from '../base/quantity-words.js';
import { measureOf, type Units } from '../base/us-units.js';
import type { PlanAmount } from './plan.js';

type Measured = Pick<PlanAmount, 'unit' | 'loose'> & { readonly basis: string };

/** `840 mL`, `26.2 ft³`; what a label allows is never rounded up, and stays readable in the label's own units. */
export function amountWords(amount: Measured, value: number, units: Units): string {
  if (amount.basis !== 'label') return quantity(value, measureOf(amount), units);
  const asPrinted = doseQuantity(value, measureOf(amount));
  return units === 'metric' ? asPrinted : `${doseQuantity(value, measureOf(amount), units)} (${asPrinted})`;
}
