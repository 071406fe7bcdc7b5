/** A plan taken apart into single things that can differ from another plan: a verdict, a step, its days, an amount. */
import { aboutHours } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import { amountWords } from './amount-words.js';
import { rounded } from './amounts.js';
import type { Plan, PlanAmount, PlanShoppingLine, PlanStep } from './plan.js';

export type FeatureKind =
  | 'verdict'
  | 'finding'
  | 'step'
  | 'days'
  | 'amount'
  | 'hours'
  | 'buy'
  | 'cost'
  | 'caution'
  | 'left-out';

export interface Feature {
  readonly kind: FeatureKind;
  /** The step, material or caution that it is about. */
  readonly id: string;
  readonly title: string;
  /** What two plans are compared by. */
  readonly value: string;
  /** The same in words. */
  readonly shown: string;
  /** Where the value comes from, such as the working of an amount; empty where it speaks for itself. */
  readonly from: string;
}

/** Every feature by its key; two plans differ in a feature when its value differs or one of them lacks it. */
export function featuresOf(plan: Plan): Map<string, Feature> {
  const { verdict, units } = plan;
  const features: Feature[] = [
    feature('verdict', verdict.id, '', verdict.title, { value: `${verdict.id} ${verdict.title}` }),
    ...plan.findings
      .filter((finding) => finding.verdict === 'found')
      .map(({ id, title }) => feature('finding', id, title, '')),
    ...plan.steps.flatMap((step) => ofStep(step, units)),
    ...plan.shopping.map((line) => ofShopping(line, units)),
    ...plan.cautions.map(({ id, line }) => feature('caution', id, line, '')),
    ...plan.notDone.map(({ id, says }) => feature('left-out', id, says, '')),
  ];
  const cost = plan.shopping.reduce((sum, line) => sum + (line.cost ?? 0), 0);
  if (plan.shopping.some((line) => line.cost !== null))
    features.push(feature('cost', 'all', 'Cost of the shopping', cost.toFixed(2)));
  if (plan.water !== null && plan.water.cost !== null)
    features.push(feature('cost', 'water', 'Cost of the water', plan.water.cost.toFixed(2)));
  if (plan.budget !== null && plan.budget.over !== null)
    features.push(feature('cost', 'budget', 'Against the budget', budgetWords(plan.budget.over)));
  return new Map(features.map((each) => [keyOf(each), each]));
}

const budgetWords = (over: number): string => (over === 0 ? 'fits' : `${over.toFixed(2)} over`);

/** A verdict is one thing whichever it is. */
const keyOf = ({ kind, id }: Feature): string => (kind === 'verdict' ? kind : `${kind} ${id}`);

function feature(
  kind: FeatureKind,
  id: string,
  title: string,
  shown: string,
  { value = shown, from = '' }: { readonly value?: string; readonly from?: string } = {},
): Feature {
  return { kind, id, title, value, shown, from };
}

function ofStep(step: PlanStep, units: Units): Feature[] {
  const { id, title, startOn, endOn, workHours } = step;
  const days = startOn === endOn ? startOn : `${startOn} to ${endOn}`;
  return [
    feature('step', id, title, days, { value: 'in the plan', from: step.because }),
    feature('days', id, title, days),
    ...(workHours > 0 ? [feature('hours', id, title, aboutHours(workHours), { value: `${workHours}` })] : []),
    ...step.amounts.map((amount) => ofAmount(step, amount, units)),
  ];
}

function ofAmount({ id, title }: PlanStep, amount: PlanAmount, units: Units): Feature {
  const { amount: value } = amount;
  const shown = value === null ? 'by the label' : amountWords(amount, value, units);
  return feature('amount', `${id}/${amount.id}`, `${title}, ${amount.title}`, shown, {
    // A plan worded in US units holds exact numbers: what is lost in rounding is no difference.
    value: `${amount.materialId} ${value === null ? value : rounded(value)}`,
    from: amount.working,
  });
}

function ofShopping({ materialId, title, need, cost, loose }: PlanShoppingLine, units: Units): Feature {
  const amount = need === null ? 'on the list' : amountWords({ ...need, loose }, need.amount, units);
  return feature('buy', materialId, title, cost === null ? amount : `${amount}, ${cost.toFixed(2)}`);
}
