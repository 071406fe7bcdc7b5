/** How much water, how often, from when to when. */
import type { RootContent } from 'mdast';
import { daysBetween } from '../base/dates.js';
import { plainNumber, quantity } from '../base/quantity-words.js';
import { convert, LENGTH_IN_M } from '../base/units.js';
import type { Units } from '../base/us-units.js';
import type { Plan, PlanWatering } from '../planner/plan.js';
import { spanWords } from './date-words.js';
import { countedFromSowing, inArea } from './in-areas.js';
import { heading, paragraph, table } from './nodes.js';
import type { References } from './references.js';
import { said } from './words.js';

const DAYS_PER_WEEK = 7;

export function wateringSection({ watering, steps }: Plan, references: References): RootContent[] {
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
    spanWords({ from: period.fromOn, until: period.untilOn }, references.year),
    timesWords(period.turnsPerDay),
    waterWords(period, references.units),
    ...(hasMeans ? [said(period.means ?? '')] : []),
    ...(hasRain ? [rainWords(period, references.units)] : []),
    said(period.aim),
  ]);
  return [
    heading(2, 'Watering'),
    paragraph(
      DEPTH_NOTE[references.units],
      'These are dry days: leave out a watering whenever rain has done it.',
      totalWords(watering, references.units),
      countedFromSowing(steps),
    ),
    table(head, rows),
  ];
}

const DEPTH_NOTE: Readonly<Record<Units, string>> = {
  metric: '1 mm of water is 1 L on each m².',
  us: `1 in of water is ${quantity(convert(LENGTH_IN_M, 1, { from: 'in', to: 'mm' }), 'L/m2', 'us')}.`,
};

const depthWords = (mm: number, units: Units): string =>
  units === 'metric'
    ? `${plainNumber(roundTo(mm, 10))} mm`
    : `${plainNumber(roundTo(convert(LENGTH_IN_M, mm, { from: 'mm', to: 'in' }), 100))} in`;

/** To as many parts of the unit as a rain gauge shows. */
const roundTo = (value: number, parts: number): number => Math.round(value * parts) / parts;

function waterWords({ mmPerTurn, litresPerTurn }: PlanWatering, units: Units): string {
  return `${depthWords(mmPerTurn, units)}, ${quantity(litresPerTurn, 'L', units)}`;
}

function rainWords({ rainMmPerDay }: PlanWatering, units: Units): string {
  return rainMmPerDay === null ? '' : `${depthWords(rainMmPerDay, units)} a day`;
}

/** All the water of the table: without a drop of rain, and with the rain of a normal year. */
function totalWords(watering: readonly PlanWatering[], units: Units): string {
  const total = (litresOf: (period: PlanWatering) => number): number =>
    watering.reduce((sum, period) => sum + litresOf(period) * daysOf(period), 0);
  const dry = total(({ litresPerDay }) => litresPerDay);
  const withRain = total(({ litresPerDay, mmPerDay, rainMmPerDay }) =>
    Math.max(0, litresPerDay * (1 - (rainMmPerDay ?? 0) / mmPerDay)),
  );
  const normal =
    withRain < dry ? `, about ${quantity(withRain, 'L', units)} with the rain of a normal year` : '';
  return `In all that is ${quantity(dry, 'L', units)} without rain${normal}.`;
}

const daysOf = ({ fromOn, untilOn }: PlanWatering): number => daysBetween(fromOn, untilOn) + 1;

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
