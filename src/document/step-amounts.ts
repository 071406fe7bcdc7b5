/** How much a step takes, with the working in one line, and the spray loads as a table. */
import type { RootContent, Table } from 'mdast';
import { quantity, quantityRange, rangeUnlessSame } from '../base/quantity-words.js';
import type { PlanAmount } from '../planner/plan.js';
import { bullets, type Part, paragraph, strong, table } from './nodes.js';
import { markOf, type References } from './references.js';
import { counted, markedSentence, outward, said, sentence } from './words.js';

type Load = PlanAmount['loads'][number];

export function amountNodes(amounts: readonly PlanAmount[], references: References): RootContent[] {
  const [first] = amounts;
  if (first === undefined) return [];
  const lines =
    amounts.length === 1
      ? [paragraph(strong('How much.'), ...amountParts(first, references))]
      : [paragraph(strong('How much.')), bullets(amounts.map((amount) => amountParts(amount, references)))];
  return [...lines, ...amounts.flatMap(loadNodes)];
}

function amountParts(amount: PlanAmount, references: References): Part[] {
  const citations = amount.figures.flatMap((id) => references.figureSources.get(id) ?? []);
  const mark = markOf(amount.basis, citations, references);
  const howMuch = amount.amount === null ? offTheLabel(amount, mark) : measured(amount, amount.amount, mark);
  return [howMuch, sentence(amount.note ?? '')];
}

/** The mark goes with the working, which is where the figures are. */
function measured(amount: PlanAmount, value: number, mark: string): string {
  // A label dose is what the label says for this area: no range that could be read as leave to use more.
  const range =
    amount.basis === 'label'
      ? ''
      : rangeUnlessSame(value, amount.range && outward(amount.range), amount.unit);
  const total = `${said(amount.title)}: ${quantity(value, amount.unit)}${range === '' ? '' : ` (${range})`}`;
  const working = said(amount.working);
  return working === '' ? markedSentence(total, mark) : `${sentence(total)} ${markedSentence(working, mark)}`;
}

/** No dose is given: the label has it. The range, if any, is for the purse only. */
function offTheLabel(amount: PlanAmount, mark: string): string {
  const lead = sentence(`${said(amount.title)}: read it off the label`);
  if (amount.range === null) return lead;
  const budget = `For budgeting only, never as a dose: ${quantityRange(outward(amount.range), amount.unit)}`;
  return `${lead} ${markedSentence(budget, mark)}`;
}

function loadNodes({ title, loads }: PlanAmount): RootContent[] {
  if (loads.length === 0) return [];
  const total = loads.reduce((sum, { count }) => sum + count, 0);
  return [paragraph(`${said(title)} in ${counted(total, 'load')}:`), loadTable(loads)];
}

/** Equal loads share a row: `1 to 4`. */
function loadTable(loads: readonly Load[]): Table {
  let last = 0;
  const rows = loads.map(({ count, waterL, product, unit }) => {
    const first = last + 1;
    last += count;
    const numbers = first === last ? `${first}` : `${first} to ${last}`;
    return [numbers, quantity(waterL, 'L'), quantity(product, unit)];
  });
  return table(['Load', 'Water', 'Product'], rows);
}
