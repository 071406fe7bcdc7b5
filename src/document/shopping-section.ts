/** What to buy, with packs and what to look for; what to hire; which tools to have ready. */
import type { List, RootContent } from 'mdast';
import { plainNumber, quantity, roughQuantity } from '../base/quantity-words.js';
import { measureOf, type Units } from '../base/us-units.js';
import { amountWords } from '../planner/amount-words.js';
import type { Plan, PlanShoppingLine } from '../planner/plan.js';
import { budgetNodes } from './budget-nodes.js';
import { bullets, heading, type Part, paragraph, strong, table } from './nodes.js';
import { type References, stepsInWords } from './references.js';
import { inWords, midSentence, said, sentence } from './words.js';

export function shoppingSection(
  { shopping, haul, budget, water }: Plan,
  references: References,
): RootContent[] {
  if (shopping.length === 0) return [];
  return [
    heading(2, 'Shopping list'),
    ...buySection(ofKind(shopping, 'buy'), haul, references),
    ...listUnder('To hire', ofKind(shopping, 'hire'), references),
    ...listUnder('Tools', ofKind(shopping, 'tool'), references),
    ...budgetNodes({ budget, shopping, water }),
  ];
}

/** `924 mL`, as at the step that takes it; the label decides where the plan has no amount. */
export function needWords({ need, loose }: PlanShoppingLine, units: Units): string {
  return need === null ? 'read it off the label' : amountWords({ ...need, loose }, need.amount, units);
}

function buySection(
  lines: readonly PlanShoppingLine[],
  haul: Plan['haul'],
  references: References,
): RootContent[] {
  if (lines.length === 0) return [];
  const hasCost = lines.some(({ cost }) => cost !== null);
  const hasPacks = lines.some(({ packs }) => packs.length > 0);
  const hasShed = lines.some(({ have }) => have !== null);
  const head = [
    'What',
    'How much',
    ...(hasShed ? ['In the shed'] : []),
    ...(hasPacks ? ['Packs'] : []),
    'For',
    ...(hasCost ? ['Cost'] : []),
  ];
  const rows = lines.map((line) => [
    said(line.title),
    needWords(line, references.units),
    ...(hasShed ? [line.have === null ? '' : shedWords(line, line.have, references.units)] : []),
    ...(hasPacks ? [packWords(line, references.units)] : []),
    stepsInWords(line.forSteps, references),
    ...(hasCost ? [line.cost === null ? 'no price' : line.cost.toFixed(2)] : []),
  ]);
  return [
    heading(3, 'To buy'),
    table(head, rows),
    ...[howChosen(lines), (haul?.says ?? []).map(sentence)]
      .filter((words) => words.some((sentence) => sentence !== ''))
      .map((words) => paragraph(...words)),
    ...noteList(lines),
    ...lookForList(lines),
  ];
}

/** What the amounts allow for, and whose packs they are. */
function howChosen(lines: readonly PlanShoppingLine[]): string[] {
  const are = (whose: PlanShoppingLine['packsAre']): boolean =>
    lines.some(({ packs, packsAre }) => packs.length > 0 && packsAre === whose);
  return [
    are('typical')
      ? `${are('yours') ? 'Packs without a price' : 'The packs'} are common sizes (common practice, no source; your shop may have others), few of them and with little left over.`
      : '',
    are('yours') ? 'Packs from your price list are taken at the least cost, then in the fewest packs.' : '',
  ];
}

const shedWords = ({ need, loose }: PlanShoppingLine, amount: number, units: Units): string =>
  quantity(amount, measureOf({ unit: need?.unit ?? '', loose }), units);

/** Packs too heavy to lift and stocks that fall short, where they cannot be missed. */
function noteList(lines: readonly PlanShoppingLine[]): RootContent[] {
  const notes = [...new Set(lines.flatMap(({ note }) => note ?? []))];
  if (notes.length === 0) return [];
  const titlesOf = (note: string): string[] =>
    lines
      .filter((line) => line.note === note)
      .map(({ title }, at) => (at === 0 ? said(title) : midSentence(title)));
  return [bullets(notes.map((note) => [strong(sentence(inWords(titlesOf(note)))), sentence(note)]))];
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
      : `, ${roughQuantity(leftOver, measureOf({ unit: need.unit, loose: line.loose }), units)} left over`;
  return `${inWords(bought)}${rest}`;
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
    sentence(line.note ?? ''),
    line.cost === null || line.note !== null ? '' : `Cost ${line.cost.toFixed(2)}.`,
  ];
}

function ofKind(lines: readonly PlanShoppingLine[], kind: PlanShoppingLine['kind']): PlanShoppingLine[] {
  return lines.filter((line) => line.kind === kind);
}
