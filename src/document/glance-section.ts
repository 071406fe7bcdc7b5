/** The whole job as a line for each step across the weeks, then as a table: step, days, latest start, work. */
import type { RootContent } from 'mdast';
import { type IsoDate, yearOf } from '../base/dates.js';
import { aboutHours, distance } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Plan, PlanStep } from '../planner/plan.js';
import { type DateStyle, dayWords, MONTHS_ONLY, spanWords } from './date-words.js';
import { latestStart } from './latest-start.js';
import { heading, paragraph, table } from './nodes.js';
import { oneLine } from './one-line.js';
import type { References } from './references.js';
import { timelineOf } from './timeline.js';
import { counted, said } from './words.js';

export function glanceSection(
  { steps, madeOn, place, climate, datesKnownTo }: Plan,
  references: References,
): RootContent[] {
  if (steps.length === 0) return [];
  const hasLatest = steps.some((step) => latestStart(step, steps) !== undefined);
  const head = ['Step', 'When', ...(hasLatest ? ['Start at the latest'] : []), 'Work'];
  const latestOf = (step: PlanStep): string[] => {
    const latest = latestStart(step, steps);
    return hasLatest ? [latest === undefined ? '' : dayWords(latest, references)] : [];
  };
  const rows = steps.map((step, index) => row(step, index + 1, latestOf(step), references));
  return [
    heading(2, 'The whole job at a glance'),
    paragraph(
      hoursOf(steps) > 0
        ? `${counted(steps.length, 'step')}, ${totalWork(steps)} in all.`
        : `${counted(steps.length, 'step')}.`,
      isInOneYear(steps, madeOn)
        ? ''
        : `${datesKnownTo === 'day' ? 'Days' : 'Months'} without a year are in ${references.year}.`,
      seasonWords({ climate, place, datesKnownTo }, references.units),
    ),
    ...timelineOf(steps, datesKnownTo),
    table(head, rows),
  ];
}

/** Where the seasons come from, and how far the dates can be trusted. */
function seasonWords(
  { climate, place, datesKnownTo }: Pick<Plan, 'climate' | 'place' | 'datesKnownTo'>,
  units: Units,
): string {
  if (climate === null) {
    const known = datesKnownTo === 'month' ? MONTHS_ONLY : '';
    const more = place === null ? 'A place, or a climate file of your own' : 'A climate file of your own';
    return `The seasons are the published months. ${known} A cold or high garden is later in spring and earlier in autumn. ${more} brings days.`.replace(
      '  ',
      ' ',
    );
  }
  const { station, km, neighbours, period, hasWaterUse } = climate;
  if (station === null || km === null) {
    const lacks =
      place === null
        ? 'Without a place it gives no length of the day, so what the grass drinks is an average; two numbers for the place would mend that.'
        : 'It has no least and greatest temperature, so what the grass drinks is an average.';
    return `The seasons follow your own climate file: ${oneLine(period)}.${hasWaterUse ? '' : ` ${lacks}`}`;
  }
  if (neighbours.length > 0) {
    const names = neighbours.map((each) => `${each.name}, ${distance(each.km, units)} away`);
    return `No weather station in the table is near. The seasons follow the coldest of the nearest, by the monthly means of ${period}: ${names.join('; ')}. A sheltered garden may be earlier.`;
  }
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

function row(step: PlanStep, number: number, latest: readonly string[], style: DateStyle): string[] {
  const isDone = step.doneOn !== null;
  return [
    `${number}. ${said(step.title)}`,
    spanWords(
      { from: step.startOn, until: step.endOn },
      step.doneOn === null ? style : { ...style, datesKnownTo: 'day' },
    ),
    ...latest,
    isDone ? 'done' : step.workHours > 0 ? aboutHours(step.workHours) : '',
  ];
}
