/** The whole job as a line for each step across the weeks, then as a table: step, days, latest start, work. */
import type { RootContent } from 'mdast';
import { type IsoDate, yearOf } from '../base/dates.js';
import { aboutHours, distance } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Plan, PlanStep } from '../planner/plan.js';
import { dayWords, spanWords } from './date-words.js';
import { latestStart } from './latest-start.js';
import { heading, paragraph, table } from './nodes.js';
import { oneLine } from './one-line.js';
import type { References } from './references.js';
import { timelineOf } from './timeline.js';
import { counted, said } from './words.js';

export function glanceSection({ steps, madeOn, climate }: Plan, references: References): RootContent[] {
  if (steps.length === 0) return [];
  const hasLatest = steps.some((step) => latestStart(step, steps) !== undefined);
  const head = ['Step', 'When', ...(hasLatest ? ['Start at the latest'] : []), 'Work'];
  const latestOf = (step: PlanStep): string[] => {
    const latest = latestStart(step, steps);
    return hasLatest ? [latest === undefined ? '' : dayWords(latest, references.year)] : [];
  };
  const rows = steps.map((step, index) => row(step, index + 1, latestOf(step), references.year));
  return [
    heading(2, 'The whole job at a glance'),
    paragraph(
      hoursOf(steps) > 0
        ? `${counted(steps.length, 'step')}, ${totalWork(steps)} in all.`
        : `${counted(steps.length, 'step')}.`,
      isInOneYear(steps, madeOn) ? '' : `Days without a year are in ${references.year}.`,
      seasonWords(climate, references.units),
    ),
    ...timelineOf(steps),
    table(head, rows),
  ];
}

/** Where the seasons come from. */
function seasonWords(climate: Plan['climate'], units: Units): string {
  if (climate === null)
    return 'No weather station in the table is near, so the seasons are the published months. A cold or high garden is later in spring and earlier in autumn.';
  const { station, km, period } = climate;
  if (station === null || km === null) return `The seasons follow your own climate file: ${oneLine(period)}.`;
  const where = km < 1 ? `at ${station}` : `at ${station}, ${distance(km, units)} away`;
  return `The seasons follow the monthly means of ${period} ${where}.`;
}

/** `about 14 h of work`, over every step. */
export function totalWork(steps: readonly PlanStep[]): string {
  const totalHours = hoursOf(steps);
  return totalHours > 0 ? `${aboutHours(totalHours)} of work` : 'no work';
}

/** Whether nobody could take a day without a year for another. */
const isInOneYear = (steps: readonly PlanStep[], madeOn: IsoDate): boolean =>
  steps.every(({ startOn, endOn }) => [startOn, endOn].every((day) => yearOf(day) === yearOf(madeOn)));

const hoursOf = (steps: readonly PlanStep[]): number =>
  steps.reduce((sum, { workHours, doneOn }) => sum + (doneOn === null ? workHours : 0), 0);

function row(step: PlanStep, number: number, latest: readonly string[], year: number): string[] {
  const isDone = step.doneOn !== null;
  return [
    `${number}. ${said(step.title)}`,
    spanWords({ from: step.startOn, until: step.endOn }, year),
    ...latest,
    isDone ? 'done' : step.workHours > 0 ? aboutHours(step.workHours) : '',
  ];
}
