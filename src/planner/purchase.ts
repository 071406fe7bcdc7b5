/** The trip to the shop: what to buy, what it weighs, and how it stands against the money there is. */
import { budgetOf } from './budget.js';
import { haulOf } from './haul.js';
import type { Plan, PlanStep } from './plan.js';
import { type ShoppingInput, shoppingOf } from './shopping.js';
import type { Say } from './texts.js';

export function purchaseOf(
  steps: readonly PlanStep[],
  input: ShoppingInput & { readonly say: Say },
): Pick<Plan, 'shopping' | 'haul' | 'budget'> {
  const shopping = shoppingOf(steps, input);
  return {
    shopping,
    haul: haulOf(shopping, input),
    budget: budgetOf({ ...input, steps, shopping }),
  };
}
