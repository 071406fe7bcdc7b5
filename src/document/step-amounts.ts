/** How much a step takes, with the working in one line, and the spray loads as a table. */
import type { RootContent, Table } from 'mdast';
import { bothUnits, quantity, rangeUnlessSame, roughRange } from '../base/quantity-words.js';
import { measureOf, type Units } from '../base/us-units.js';
import { amountWords } from '../planner/amount-words.js';
import type { PlanAmount } from '../planner/plan.js';
import { inArea } from './in-areas.js';
import { bullets, type Part, paragraph, strong, table } from './nodes.js';
import { markOf, type References } from './references.js';
import { counted, markedSentence, said, sentence } from './words.js';

type Load = PlanAmount['loads'][number];

export function amountNodes(amounts: readonly PlanAmount[], references: References): RootContent[] {
  const [first] = amounts;
  if (first === undefined) return [];
  const lines =
    amounts.length === 1
      ? [paragraph(strong('How much.'), ...amountParts(first, references))]
      : [
          paragraph(strong('How much.')),
          bullets([
            ...amounts.map((amount) => amountParts(amount, references)),
            ...totalsOf(amounts, references.units),
          ]),
        ];
  return [...lines, ...amounts.flatMap((amount) => loadNodes(amount, references.units))];
}

function amountParts(amount: PlanAmount, references: References): Part[] {
  const citations = amount.figures.flatMap((id) => references.figureSources.get(id) ?? []);
  const mark = markOf(amount.basis, citations, references);
  const howMuch =
    amount.amount === null
      ? offTheLabel(amount, mark, references.units)
      : measured(amount, amount.amount, { mark, units: references.units });
  return [howMuch, sentence(amount.note ?? '')];
}

/** What all areas take together, where more than one takes it. */
function totalsOf(amounts: readonly PlanAmount[], units: Units): Part[][] {
  const ids = new Set(amounts.flatMap(({ id, area }) => (area === undefined ? [] : [id])));
  return [...ids].flatMap((id) => {
    const same = amounts.filter((amount) => amount.id === id);
    const [first] = same;
    if (first === undefined || same.length < 2 || same.some(({ amount }) => amount === null)) return [];
    const total = same.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
    return [[sentence(`${said(first.title)}, together: ${amountWords(first, total, units)}`)]];
  });
}

/** The mark goes with the working, which is where the figures are. */
function measured(
  amount: PlanAmount,
  value: number,
  { mark, units }: { readonly mark: string; readonly units: Units },
): string {
  const unit = measureOf(amount);
  // A label dose is what the label says for this area: no range that could be read as leave to use more.
  const range = amount.basis === 'label' ? '' : rangeUnlessSame(value, amount.range, unit, units);
  const total = `${titleOf(amount)}: ${amountWords(amount, value, units)}${range === '' ? '' : ` (${range})`}`;
  const working = said(amount.working);
  return working === '' ? markedSentence(total, mark) : `${sentence(total)} ${markedSentence(working, mark)}`;
}

const titleOf = ({ title, area }: PlanAmount): string => inArea(said(title), area);

/** No dose is given: the label has it. The range, if any, is for the purse only. */
function offTheLabel(amount: PlanAmount, mark: string, units: Units): string {
  const lead = sentence(`${titleOf(amount)}: read it off the label`);
  if (amount.range === null) return lead;
  const budget = `For budgeting only, never as a dose: ${roughRange(amount.range, amount.unit, units)}`;
  return `${lead} ${markedSentence(budget, mark)}`;
}

function loadNodes(amount: PlanAmount, units: Units): RootContent[] {
  const { loads } = amount;
  if (loads.length === 0) return [];
  const total = loads.reduce((sum, { count }) => sum + count, 0);
  return [paragraph(`${titleOf(amount)} in ${counted(total, 'load')}:`), loadTable(loads, units)];
}

/** Equal loads share a row: `1 to 4`. Each is for ground of its own, so that everybody knows where it ends. */
export function loadRows(loads: readonly Load[], units: Units): string[][] {
  let last = 0;
  return loads.map(({ count, areaM2, waterL, product, unit }) => {
    const first = last + 1;
    last += count;
    const numbers = first === last ? `${first}` : `${first} ${last === first + 1 ? 'and' : 'to'} ${last}`;
    const ground = quantity(areaM2, 'm2', units, DIGITS[units]);
    return [
      numbers,
      count === 1 ? ground : `${ground} each`,
      bothUnits(quantity(waterL, 'L', 'metric', DIGITS[units]), waterL, 'L', units),
      bothUnits(quantity(product, unit, 'metric', DIGITS.metric), product, unit, units),
    ];
  });
}

const loadTable = (loads: readonly Load[], units: Units): Table =>
  table(['Load', 'For', 'Water', 'Product'], loadRows(loads, units));

/** What is measured out is told as it was reckoned, so that the loads add up to the whole; in feet it is round about. */
const DIGITS: Readonly<Record<Units, number>> = { metric: 5, us: 3 };
