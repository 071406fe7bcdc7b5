/** The list against the money there is: how far over it goes, what to leave out first, and what that costs the lawn. */
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { worded } from './explain-words.js';
import type { PlanBudget, PlanShoppingLine, PlanStep } from './plan.js';
import type { Say } from './texts.js';

export interface BudgetInput {
  readonly pack: Pack;
  readonly scope: Scope;
  readonly steps: readonly PlanStep[];
  readonly shopping: readonly PlanShoppingLine[];
  readonly say: Say;
}

/** Null where no budget was given. Without a price nothing is added up, and nothing is said to fit. */
export function budgetOf({ pack, scope, steps, shopping, say }: BudgetInput): PlanBudget | null {
  const limit = scope('budget');
  if (!limit.known || typeof limit.value !== 'number') return null;
  const bought = shopping.filter(({ kind, cost }) => kind !== 'tool' || cost !== null);
  const priced = bought.filter(({ cost }) => cost !== null);
  const total = sumOf(priced);
  const over = Math.max(0, inHundredths(total - limit.value));
  const leaveOut = over > 0 ? savings({ pack, steps, shopping, say }, over) : [];
  return {
    limit: limit.value,
    total: priced.length === 0 ? null : total,
    unpriced: bought.filter(({ cost }) => cost === null).map(({ materialId }) => materialId),
    over: priced.length === 0 ? null : over,
    leaveOut,
    otherwise: over > 0 && leaveOut.length === 0 ? worded(pack, 'buyInStages') : null,
  };
}

/** Steps that a lawn can do without, the least missed first, until the list fits or nothing is left to leave out. */
function savings(
  { pack, steps, shopping, say }: Omit<BudgetInput, 'scope'>,
  over: number,
): PlanBudget['leaveOut'] {
  const spare = steps
    .flatMap(({ id, title }) => {
      const rule = pack.stepById.get(id)?.leaveOut;
      return rule === undefined ? [] : [{ id, title, rule }];
    })
    .sort((a, b) => a.rule.order - b.rule.order);
  const out: string[] = [];
  const found: { stepId: string; title: string; saves: number; loses: string }[] = [];
  let left = over;
  for (const { id, title, rule } of spare) {
    if (left <= 0) break;
    const before = sumOf(onlyFor(shopping, out));
    out.push(id);
    const saves = inHundredths(sumOf(onlyFor(shopping, out)) - before);
    if (saves <= 0) continue;
    found.push({ stepId: id, title, saves, loses: say(rule.loses) });
    left = inHundredths(left - saves);
  }
  return found;
}

/** Lines that no step needs but those left out: what is shared is still bought whole. */
const onlyFor = (shopping: readonly PlanShoppingLine[], stepIds: readonly string[]): PlanShoppingLine[] =>
  shopping.filter(({ forSteps }) => forSteps.length > 0 && forSteps.every((id) => stepIds.includes(id)));

const sumOf = (lines: readonly PlanShoppingLine[]): number =>
  inHundredths(lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0));

/** Money without the dust of binary fractions. */
const inHundredths = (amount: number): number => Math.round(amount * 100) / 100;
