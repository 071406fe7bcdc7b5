/** How much water, how often, from when to when. */
import type { RootContent } from 'mdast';
import { plainNumber, quantity, roughQuantity } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Plan, PlanWatering, PlanWorking } from '../planner/plan.js';
import { spanWords } from './date-words.js';
import { inArea } from './in-areas.js';
import { heading, paragraph, table } from './nodes.js';
import { markOfWorking, type References } from './references.js';
import { said, sentence } from './words.js';

const DAYS_PER_WEEK = 7;

export function wateringSection({ watering, water }: Plan, references: References): RootContent[] {
  if (watering.length === 0) return [];
  const hasMeans = watering.some(({ means }) => means !== null);
  const hasRain = watering.some(({ rainMmPerDay }) => rainMmPerDay !== null);
  const head = [
    'Weeks',
    'Days',
    'How often',
    'Each time',
    ...(hasMeans ? ['With what you have'] : []),
    ...(hasRain ? ['Normal rain'] : []),
    'Aim',
  ];
  const rows = watering.map((period) => [
    inArea(said(period.weeks), period.area),
    spanWords({ from: period.fromOn, until: period.untilOn }, references),
    timesWords(period.turnsPerDay),
    waterWords(period, references.units),
    ...(hasMeans ? [said(period.means ?? '')] : []),
    ...(hasRain ? [rainWords(period, references.units)] : []),
    said(period.aim),
  ]);
  const mark = markOfWorking(together(watering), references);
  return [
    heading(2, 'Watering'),
    paragraph(...(water?.says ?? []), sentence(mark.replace(/^\(|\)$/g, ''))),
    table(head, rows),
  ];
}

/** All that the table was worked out from, by its weakest figure. */
function together(watering: readonly PlanWatering[]): PlanWorking {
  const [first] = watering as [PlanWatering];
  const weakest = WEAKEST_FIRST.find((basis) => watering.some(({ from }) => from.basis === basis));
  const figures = [...new Set(watering.flatMap(({ from }) => from.figures))];
  return { ...first.from, figures, basis: weakest ?? first.from.basis };
}

const WEAKEST_FIRST: readonly PlanWorking['basis'][] = ['assumption', 'common-practice', 'published'];

/** In full, since whoever multiplies it by the area must come to the litres. */
const depthWords = (mm: number, units: Units): string => quantity(mm, 'mm', units);

function waterWords({ mmPerTurn, litresPerTurn }: PlanWatering, units: Units): string {
  return `${depthWords(mmPerTurn, units)}, ${quantity(litresPerTurn, 'L', units)}`;
}

function rainWords({ rainMmPerDay }: PlanWatering, units: Units): string {
  return rainMmPerDay === null ? '' : `${roughQuantity(rainMmPerDay, 'mm', units)} a day`;
}

/** `once a day`, `3 times a day`, `twice a week`, `every 2 days`; an odd share of a day as it comes. */
export function timesWords(turnsPerDay: number): string {
  if (turnsPerDay <= 0) return 'only if dry';
  const perWeek = turnsPerDay * DAYS_PER_WEEK;
  if (turnsPerDay < 1 && Number.isInteger(perWeek))
    return perWeek === 2 ? 'twice a week' : `${perWeek} times a week`;
  if (turnsPerDay < 1) return `every ${plainNumber(1 / turnsPerDay)} days`;
  if (turnsPerDay === 1) return 'once a day';
  return turnsPerDay === 2 ? 'twice a day' : `${plainNumber(turnsPerDay)} times a day`;
}
