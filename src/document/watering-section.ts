/** How much water, how often, from when to when. */
import type { RootContent } from 'mdast';
import { plainNumber, quantity } from '../base/quantity-words.js';
import type { Plan, PlanWatering } from '../planner/plan.js';
import { spanWords } from './date-words.js';
import { heading, paragraph, table } from './nodes.js';
import type { References } from './references.js';
import { said } from './words.js';

export function wateringSection({ watering, steps }: Plan, references: References): RootContent[] {
  if (watering.length === 0) return [];
  const hasMeans = watering.some(({ means }) => means !== null);
  const head = [
    'Weeks',
    'Days',
    'How often',
    'Water a day',
    ...(hasMeans ? ['With what you have'] : []),
    'Aim',
  ];
  const rows = watering.map((period) => [
    said(period.weeks),
    spanWords({ from: period.fromOn, until: period.untilOn }, references.year),
    timesWords(period.turnsPerDay),
    waterWords(period),
    ...(hasMeans ? [said(period.means ?? '')] : []),
    said(period.aim),
  ]);
  return [
    heading(2, 'Watering'),
    paragraph('1 mm of water is 1 L on each m².', eachPartFromItsSowing(steps)),
    table(head, rows),
  ];
}

/** What the days and litres mean where the lawn is sown part by part; nothing for one go. */
function eachPartFromItsSowing(steps: Plan['steps']): string {
  const parts = steps.find(({ id }) => id === 'sow')?.parts.length ?? 1;
  return parts < 2
    ? ''
    : `The days are those of part 1; count the weeks of each part from its own sowing. The litres are for the whole lawn: each of the ${parts} parts gets its share.`;
}

function waterWords({ mmPerDay, litresPerDay }: PlanWatering): string {
  return `${plainNumber(Math.round(mmPerDay * 10) / 10)} mm, ${quantity(litresPerDay, 'L')}`;
}

/** `once a day`, `3 times a day`, `every 2 days`; an odd share of a day as it comes. */
function timesWords(turnsPerDay: number): string {
  if (turnsPerDay <= 0) return 'only if dry';
  if (turnsPerDay < 1) return `every ${plainNumber(1 / turnsPerDay)} days`;
  if (turnsPerDay === 1) return 'once a day';
  return turnsPerDay === 2 ? 'twice a day' : `${plainNumber(turnsPerDay)} times a day`;
}
