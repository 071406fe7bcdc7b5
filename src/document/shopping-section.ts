/** What to buy, with packs and what to look for; what to hire; which tools to have ready. */
import type { List, RootContent } from 'mdast';
import { plainNumber, quantity, quantityToBuy, roughMost } from '../base/quantity-words.js';
import { measureOf, type Units } from '../base/us-units.js';
import type { Plan, PlanShoppingLine } from '../planner/plan.js';
import { bullets, heading, type Part, paragraph, strong, table } from './nodes.js';
import { type References, stepsInWords } from './references.js';
import { said, sentence } from './words.js';

export function shoppingSection({ shopping }: Plan, references: References): RootContent[] {
  if (shopping.length === 0) return [];
  return [
    heading(2, 'Shopping list'),
    ...buySection(ofKind(shopping, 'buy'), references),
    ...listUnder('To hire', ofKind(shopping, 'hire'), references),
    ...listUnder('Tools', ofKind(shopping, 'tool'), references),
  ];
}

/** `840 mL, at most 900 mL`; the label decides where the plan has no amount. */
export function needWords(line: PlanShoppingLine, units: Units): string {
  if (line.need === null) return 'read it off the label';
  const { amount: need, most: upTo, unit } = line.need;
  const measure = measureOf({ unit, loose: line.loose });
  const amount = quantityToBuy(need, measure, units);
  const most = roughMost({ min: need, max: upTo }, measure, units);
  return amount === most ? amount : `${amount}, at most ${most}`;
}

function buySection(lines: readonly PlanShoppingLine[], references: References): RootContent[] {
  if (lines.length === 0) return [];
  const hasCost = lines.some(({ cost }) => cost !== null);
  const hasPacks = lines.some(({ packs }) => packs.length > 0);
  const head = ['What', 'How much', ...(hasPacks ? ['Packs'] : []), 'For', ...(hasCost ? ['Cost'] : [])];
  const rows = lines.map((line) => [
    said(line.title),
    needWords(line, references.units),
    ...(hasPacks ? [packWords(line, references.units)] : []),
    stepsInWords(line.forSteps, references),
    ...(hasCost ? [line.cost === null ? 'no price' : line.cost.toFixed(2)] : []),
  ]);
  return [heading(3, 'To buy'), table(head, rows), ...lookForList(lines)];
}

/** Long advice would make the table unreadable as plain text, so it stands under it. */
function lookForList(lines: readonly PlanShoppingLine[]): RootContent[] {
  const advised = lines.filter(({ lookFor }) => said(lookFor) !== '');
  if (advised.length === 0) return [];
  const items = advised.map((line) => [strong(sentence(line.title)), sentence(line.lookFor)]);
  return [paragraph('What to look for:'), bullets(items)];
}

function packWords(line: PlanShoppingLine, units: Units): string {
  const { packs, leftOver, need } = line;
  const bought = packs.map(({ count, size, unit, price }) => {
    const each = price === null ? '' : ` at ${price.toFixed(2)}`;
    return `${plainNumber(count, 'each')} × ${quantity(size, measureOf({ unit, loose: line.loose }), units)}${each}`;
  });
  if (bought.length === 0) return '';
  const rest =
    leftOver === null || need === null || leftOver <= 0
      ? ''
      : `, ${quantity(leftOver, measureOf({ unit: need.unit, loose: line.loose }), units)} left over`;
  return `${bought.join(' and ')}${rest}`;
}

function listUnder(
  title: string,
  lines: readonly PlanShoppingLine[],
  references: References,
): [] | [RootContent, List] {
  if (lines.length === 0) return [];
  return [heading(3, title), bullets(lines.map((line) => listItem(line, references)))];
}

function listItem(line: PlanShoppingLine, references: References): Part[] {
  const steps = stepsInWords(line.forSteps, references);
  const time = line.need === null ? '' : `, ${needWords(line, references.units)}`;
  return [
    sentence(`${said(line.title)}${time}${steps === '' ? '' : `, for ${steps}`}`),
    sentence(line.lookFor),
    line.cost === null ? '' : `Cost ${line.cost.toFixed(2)}.`,
  ];
}

function ofKind(lines: readonly PlanShoppingLine[], kind: PlanShoppingLine['kind']): PlanShoppingLine[] {
  return lines.filter((line) => line.kind === kind);
}
