/** The dates and amounts of a plan as a table for a spreadsheet: a row for each amount, or for a step without any. */
import type { Plan, PlanAmount, PlanStep } from '../planner/plan.js';
import { oneLine } from './one-line.js';

type Cell = string | number | null;

const COLUMNS: readonly (readonly [string, (row: Row) => Cell])[] = [
  ['lawn', ({ plan }) => plan.name],
  ['stepNumber', ({ number }) => number],
  ['stepId', ({ step }) => step.id],
  ['step', ({ step }) => step.title],
  ['startOn', ({ step }) => step.startOn],
  ['endOn', ({ step }) => step.endOn],
  ['latestOn', ({ step }) => step.latestOn],
  ['workHours', ({ step }) => step.workHours],
  ['material', ({ amount }) => amount?.title ?? null],
  ['amount', ({ amount }) => amount?.amount ?? null],
  ['unit', ({ amount }) => amount?.unit ?? null],
  ['atLeast', ({ amount }) => amount?.range?.min ?? null],
  ['atMost', ({ amount }) => amount?.range?.max ?? null],
  ['note', ({ amount }) => noteOf(amount)],
];

interface Row {
  readonly plan: Plan;
  readonly step: PlanStep;
  readonly number: number;
  readonly amount: PlanAmount | undefined;
}

/**
 * The table with a line of names first.
 *
 * @source rfc-4180, section 2: lines end in CR LF; a cell with a comma, quote or line break stands in quotes, a quote is doubled
 */
export function csvOf(plan: Plan): string {
  const rows = plan.steps.flatMap((step, index): Row[] => {
    const row = { plan, step, number: index + 1 };
    return step.amounts.length === 0
      ? [{ ...row, amount: undefined }]
      : step.amounts.map((amount) => ({ ...row, amount }));
  });
  const lines = [
    COLUMNS.map(([name]) => name),
    ...rows.map((row) => COLUMNS.map(([, cellOf]) => cellText(cellOf(row)))),
  ];
  return lines.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

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
