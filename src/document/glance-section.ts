/** The whole job as a line for each step across the weeks, then as a table: step, days, latest start, work. */
import type { RootContent } from 'mdast';
import { yearOf } from '../base/dates.js';
import { aboutHours, plainNumber } from '../base/quantity-words.js';
import type { Plan, PlanStep } from '../planner/plan.js';
import { dayWords, spanWords } from './date-words.js';
import { heading, paragraph, table } from './nodes.js';
import type { References } from './references.js';
import { timelineOf } from './timeline.js';
import { counted, said } from './words.js';

export function glanceSection({ steps, madeOn, climate }: Plan, references: References): RootContent[] {
  if (steps.length === 0) return [];
  const hasLatest = steps.some(({ latestOn }) => latestOn !== null);
  const head = ['Step', 'When', ...(hasLatest ? ['Start at the latest'] : []), 'Work'];
  const rows = steps.map((step, index) => row(step, index + 1, { hasLatest, year: references.year }));
  return [
    heading(2, 'The whole job at a glance'),
    paragraph(
      hoursOf(steps) > 0
        ? `${counted(steps.length, 'step')}, ${totalWork(steps)} in all.`
        : `${counted(steps.length, 'step')}.`,
      references.year === yearOf(madeOn) ? '' : `Days without a year are in ${references.year}.`,
      seasonWords(climate),
    ),
    ...timelineOf(steps),
    table(head, rows),
  ];
}

/** Where the seasons come from. */
function seasonWords(climate: Plan['climate']): string {
  if (climate === null)
    return 'No weather station in the table is near, so the seasons are the published months. A cold or high garden is later in spring and earlier in autumn.';
  const { station, km, period } = climate;
  const where = km < 1 ? `at ${station}` : `at ${station}, ${plainNumber(Math.round(km))} km away`;
  return `The seasons follow the monthly means of ${period} ${where}.`;
}

/** `about 14 h of work`, over every step. */
export function totalWork(steps: readonly PlanStep[]): string {
  const totalHours = hoursOf(steps);
  return totalHours > 0 ? `${aboutHours(totalHours)} of work` : 'no work';
}

const hoursOf = (steps: readonly PlanStep[]): number =>
  steps.reduce((sum, { workHours, doneOn }) => sum + (doneOn === null ? workHours : 0), 0);

function row(
  step: PlanStep,
  number: number,
  { hasLatest, year }: { readonly hasLatest: boolean; readonly year: number },
): string[] {
  const isDone = step.doneOn !== null;
  const latest = isDone ? 'done' : step.latestOn === null ? 'no fixed day' : dayWords(step.latestOn, year);
  return [
    `${number}. ${said(step.title)}`,
    spanWords({ from: step.startOn, until: step.endOn }, year),
    ...(hasLatest ? [latest] : []),
    isDone ? 'done' : step.workHours > 0 ? aboutHours(step.workHours) : '',
  ];
}
