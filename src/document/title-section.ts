/** The head of the plan: whose lawn, which year, where, how large, made on which day. */
import type { RootContent } from 'mdast';
import { formatDay, yearOf } from '../base/dates.js';
import { capital } from '../base/joined-words.js';
import { quantity, quantityRange, ROUGH_DIGITS, roughArea } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Plan } from '../planner/plan.js';
import { bullets, heading, paragraph } from './nodes.js';
import { oneLine } from './one-line.js';
import { said } from './words.js';

const MEASURED: Readonly<Record<string, string>> = {
  tape: 'measured with a tape',
  paces: 'paced out',
  plan: 'taken from a plan',
};

export function titleSection(plan: Plan): RootContent[] {
  const place = oneLine(plan.place ?? '');
  return [
    heading(1, `${titleOf(plan)}, ${yearsOf(plan)}`),
    paragraph(
      `Made on ${formatDay(plan.madeOn)}${place === '' ? '' : ` for ${place}`}.`,
      sizeOf('The lawn', headSize(plan), plan.units),
      ...plan.lawn.says,
      US_NOTE[plan.units],
    ),
    ...areaList(plan),
  ];
}

/** How it was measured is told of each area by itself. */
const headSize = ({ lawn, areas }: Plan): Plan['lawn'] =>
  areas.length === 0 ? lawn : { ...lawn, measuredBy: '' };

function areaList({ areas, units }: Plan): RootContent[] {
  if (areas.length === 0) return [];
  return [bullets(areas.map(({ name, lawn }) => [sizeOf(capital(oneLine(name)), lawn, units)]))];
}

/** `Lawn plan for Mill End, back`, or `Lawn plan` where no name was typed. */
export function titleOf(plan: Plan): string {
  const name = oneLine(plan.name ?? '');
  return name === '' ? 'Lawn plan' : `Lawn plan for ${name}`;
}

/** `2027`, or `2026 to 2027` when the work runs over the new year. */
function yearsOf(plan: Plan): string {
  const years = plan.steps.flatMap((step) => [yearOf(step.startOn), yearOf(step.endOn)]);
  const first = Math.min(...years, years.length === 0 ? yearOf(plan.madeOn) : Number.POSITIVE_INFINITY);
  const last = Math.max(first, ...years);
  return first === last ? String(first) : `${first} to ${last}`;
}

const US_NOTE: Readonly<Record<Units, string>> = {
  metric: '',
  us: 'Measures are US ones: a gallon is 128 fluid ounces, and a fluid ounce is no weight.',
};

function sizeOf(
  what: string,
  { areaM2, areaUncertaintyM2, areaAssumed, measuredBy }: Plan['lawn'],
  units: Units,
): string {
  if (areaAssumed) return `${what} is taken as ${quantity(areaM2, 'm2', units)}: an assumption, see below.`;
  const how = MEASURED[measuredBy] ?? said(measuredBy);
  const size = `${what} is ${quantity(areaM2, 'm2', units)}${how === '' ? '' : `, ${how}`}`;
  const between = { min: Math.max(0, areaM2 - areaUncertaintyM2), max: areaM2 + areaUncertaintyM2 };
  const [least, most] = [between.min, between.max].map((end) => roughArea(end, units));
  const range = quantityRange(between, 'm2', units, ROUGH_DIGITS);
  return least === most ? `${size}.` : `${size}, so somewhere from ${range}.`;
}
