/**
 * The dates and amounts of a plan as a table for a spreadsheet: a row for each amount, or for a step without any;
 * the packs stand beside the first amount of their material.
 */
import type { IsoDate } from '../base/dates.js';
import { clean } from '../base/quantity/show.js';
import { doseDown, quantity, scaleFor } from '../base/quantity-words.js';
import { measureOf, type Scale } from '../base/us-units.js';
import type { Plan, PlanAmount, PlanShoppingLine, PlanStep } from '../planner/plan.js';
import { isKnownToDay } from './known-span.js';
import { oneLine } from './one-line.js';

type Cell = string | number | null;

const COLUMNS: readonly (readonly [string, (row: Row) => Cell])[] = [
  ['lawn', ({ plan }) => plan.name],
  ['stepNumber', ({ number }) => number],
  ['stepId', ({ step }) => step.id],
  ['step', ({ step }) => step.title],
  ['startOn', ({ step, plan }) => dateCell(step.startOn, step, plan)],
  ['endOn', ({ step, plan }) => dateCell(step.endOn, step, plan)],
  ['latestOn', ({ step, plan }) => dateCell(step.latestOn, step, plan)],
  ['workHours', ({ step }) => step.workHours],
  ['material', ({ amount }) => amount?.title ?? null],
  ['area', ({ amount }) => amount?.area ?? null],
  ['amount', ({ amount, plan }) => (amount === undefined ? null : doseOf(amount, plan))],
  ['unit', ({ amount, plan }) => (amount === undefined ? null : unitOf(amount, plan))],
  ['note', ({ amount }) => noteOf(amount)],
  ['packs', ({ bought, plan }) => (bought === undefined ? null : packWords(bought, plan))],
  [
    'leftOver',
    ({ amount, bought, plan }) =>
      amount === undefined ? null : numberOf(amount, bought?.leftOver ?? null, plan),
  ],
  ['cost', ({ bought }) => bought?.cost ?? null],
];

interface Row {
  readonly plan: Plan;
  readonly step: PlanStep;
  readonly number: number;
  readonly amount: PlanAmount | undefined;
  /** On the first row of a material: all that is bought of it. */
  readonly bought: PlanShoppingLine | undefined;
}

/**
 * The table with a line of names first.
 *
 * @source rfc-4180, section 2: lines end in CR LF; a cell with a comma, quote or line break stands in quotes, a quote is doubled
 */
export function csvOf(plan: Plan): string {
  const told = new Set<string>();
  const boughtFor = ({ materialId }: PlanAmount): PlanShoppingLine | undefined => {
    if (told.has(materialId)) return undefined;
    told.add(materialId);
    return plan.shopping.find((line) => line.materialId === materialId);
  };
  const rows = plan.steps.flatMap((step, index): Row[] => {
    const row = { plan, step, number: index + 1 };
    return step.amounts.length === 0
      ? [{ ...row, amount: undefined, bought: undefined }]
      : step.amounts.map((amount) => ({ ...row, amount, bought: boughtFor(amount) }));
  });
  const lines = [
    COLUMNS.map(([name]) => name),
    ...rows.map((row) => COLUMNS.map(([, cellOf]) => cellText(cellOf(row)))),
  ];
  return lines.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

/**
 * A day, or the month with a question mark where no more is known.
 *
 * @source iso-8601-2, extended format level 1: `2028-04?` is a month that is uncertain; from memory
 */
const dateCell = (date: IsoDate | null, step: PlanStep, { datesKnownTo }: Plan): Cell =>
  date === null || isKnownToDay(step, datesKnownTo) ? date : `${date.slice(0, 'yyyy-mm'.length)}?`;

/** The metric base unit of the data; for US readers the unit in which the rest of the plan says the amount. */
const scaleOf = (amount: PlanAmount, { units }: Plan): Scale =>
  units === 'metric'
    ? { unit: amount.unit, of: (value) => value }
    : scaleFor(amount.amount ?? 0, measureOf(amount), units);

const unitOf = (amount: PlanAmount, plan: Plan): string => scaleOf(amount, plan).unit || amount.unit;

/** In the unit of the amount, to as many digits as the rest of the plan says it with. */
function numberOf(amount: PlanAmount, value: number | null, plan: Plan): number | null {
  if (value === null || plan.units === 'metric') return value;
  return Number(scaleOf(amount, plan).of(value).toPrecision(DIGITS));
}

/** What a label allows is never rounded up. */
const doseOf = (amount: PlanAmount, plan: Plan): number | null =>
  amount.basis === 'label' && amount.amount !== null
    ? doseDown(scaleOf(amount, plan).of(amount.amount))
    : numberOf(amount, amount.amount, plan);

const DIGITS = 3;

/** `2 x 1000 g + 1 x 500 g`, in the unit of the amount; `1 x 5 lb` for US readers. */
const packWords = ({ packs, loose }: PlanShoppingLine, { units }: Plan): string =>
  packs
    .map(({ size, unit, count }) =>
      units === 'metric'
        ? `${count} x ${clean(size)} ${unit}`
        : `${count} x ${quantity(size, measureOf({ unit, loose }), units)}`,
    )
    .join(' + ');

/** An amount that the label alone may give must not look forgotten. */
function noteOf(amount: PlanAmount | undefined): string | null {
  if (amount === undefined) return null;
  return amount.amount === null ? 'read it off the label' : amount.working;
}

/** Spreadsheets run a cell that begins like this as a formula; an apostrophe before it makes it plain text. */
const FORMULA = /^[=+\-@\t\r]/;

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = oneLine(cell);
  return FORMULA.test(text) ? `'${text}` : text;
}

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
