/** The list against the budget, or what it comes to where no budget was given. */
import type { RootContent } from 'mdast';
import type { Plan, PlanBudget } from '../planner/plan.js';
import { heading, numbered, paragraph, strong } from './nodes.js';
import { counted, sentence } from './words.js';

/** Water is paid elsewhere, so it is told apart and set against no budget. */
export function budgetNodes(plan: Pick<Plan, 'budget' | 'shopping' | 'water'>): RootContent[] {
  const says = plan.water?.costSays ?? null;
  const shop = shopNodes(plan);
  return shop.length === 0 || says === null ? shop : [...shop, paragraph(says)];
}

function shopNodes({ budget, shopping }: Pick<Plan, 'budget' | 'shopping'>): RootContent[] {
  const priced = shopping.filter(({ cost }) => cost !== null);
  if (budget === null) {
    if (priced.length === 0) return [];
    const total = priced.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
    const unpriced = shopping.filter(({ kind, cost }) => kind !== 'tool' && cost === null).length;
    return [paragraph(`What has a price comes to ${money(total)}${withoutPrice(unpriced)}.`)];
  }
  return [heading(3, 'The budget'), ...againstBudget(budget)];
}

function againstBudget({ limit, total, over, unpriced, leaveOut, otherwise }: PlanBudget): RootContent[] {
  if (total === null || over === null) {
    return [
      paragraph(
        `Nothing on the list has a price, so it cannot be set against your ${money(limit)}. Give your shop's prices with --prices and have the plan made again.`,
      ),
    ];
  }
  const sum = `The list comes to ${money(total)}${withoutPrice(unpriced.length)}; your budget is ${money(limit)}.`;
  if (over === 0) return [paragraph(sum, unpriced.length === 0 ? 'It fits.' : 'So far it fits.')];
  const saved = leaveOut.reduce((all, { saves }) => all + saves, 0);
  const left = Math.round((over - saved) * 100) / 100;
  return [
    paragraph(sum, strong(`It is ${money(over)} over.`)),
    ...(leaveOut.length === 0
      ? [paragraph(sentence(otherwise ?? ''))]
      : [
          paragraph('Leave out first:'),
          numbered(
            leaveOut.map(({ title, saves, loses }) => [
              sentence(`${title}, which saves ${money(saves)}`),
              sentence(loses),
            ]),
          ),
          paragraph(left > 0 ? `That still leaves it ${money(left)} over.` : 'Then it fits.'),
        ]),
  ];
}

const money = (amount: number): string => amount.toFixed(2);

const withoutPrice = (count: number): string =>
  count === 0 ? '' : `, with ${counted(count, 'thing')} that ${count === 1 ? 'has' : 'have'} no price`;
