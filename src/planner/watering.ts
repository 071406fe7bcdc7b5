/** The watering table of a new seedbed: how much, how often, with what, and what the rain of the place brings. */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';
import { asShown, plainNumber, quantity } from '../base/quantity-words.js';
import type { View } from '../interview/reasons.js';
import { evaluate } from '../rules/evaluate.js';
import type { Expression } from '../rules/schema.js';
import type { WateringRule } from '../rules/schema-pack.js';
import { roundedFor, weakestBasis } from './amounts.js';
import type { LocalClimate } from './climate.js';
import { wordedInside } from './explain-words.js';
import type { PlanWatering } from './plan.js';
import type { PlanPart } from './plan-area.js';
import { runWords } from './run-words.js';
import { answered } from './steps.js';

const DAYS_PER_WEEK = 7;
/** What the lawn is watered with: a hose that is forbidden is none. */
const WATER_BY = 'facts.waterBy';

interface WateringInput extends View {
  readonly climate: LocalClimate | undefined;
  readonly sowOn: IsoDate | undefined;
  readonly note: (figureId: string) => void;
}

/** Empty where nothing is sown, or rain has to water it; the plan says that among what it leaves out. */
export function wateringOf(input: WateringInput): PlanWatering[] {
  const { pack, scope, sowOn } = input;
  const area = scope('facts.areaM2');
  if (sowOn === undefined || !area.known || answered(scope, 'facts.keepsWet') !== true) return [];
  return pack.watering.map((rule) => periodOf(rule, sowOn, area.value as number, input));
}

function periodOf(rule: WateringRule, sowOn: IsoDate, areaM2: number, given: WateringInput): PlanWatering {
  const used = new Set<string>();
  const behind = new Set<string>();
  const note = (figureId: string): void => {
    used.add(figureId);
    given.note(figureId);
  };
  const input = { ...given, note };
  const { climate, scope, units = 'metric' } = input;
  const rounded = (value: number): number => roundedFor(units, value);
  const shown = (value: number, unit: string): number => asShown(value, unit, units);
  const fromOn = addDays(sowOn, (rule.fromWeek - 1) * DAYS_PER_WEEK);
  const untilOn = addDays(sowOn, rule.toWeek * DAYS_PER_WEEK - 1);
  const numberOf = (expression: Expression, noteFigure = note): number => {
    const outcome = evaluate(expression, scope);
    if (!outcome.known) return 0;
    for (const name of outcome.from)
      if (name.startsWith('figures.')) noteFigure(name.slice('figures.'.length));
    if (noteFigure === note) for (const name of outcome.used) if (!name.includes('.')) behind.add(name);
    return outcome.value as number;
  };
  const waterUseMm = climate?.waterUseMmOn(midway(fromOn, untilOn));
  const rainMm = climate?.rainMmOn(midway(fromOn, untilOn));
  const mmPerDay =
    waterUseMm === undefined ? numberOf(rule.mmPerDay) : numberOf(rule.timesWaterUse) * waterUseMm;
  const turnsPerDay = numberOf(rule.turnsPerDay);
  // All from the depth as it is printed, so that depth times area is the litres beside it, and those the minutes.
  const mmPerTurn = shown(mmPerDay / turnsPerDay, 'mm');
  const litresPerTurn = shown(areaM2 * mmPerTurn, 'L');
  const means = meansOf(input, litresPerTurn);
  // The water itself rests on none of these figures.
  const workMinPerTurn =
    numberOf(rule.workMinPerTurn, given.note) + numberOf(rule.workMinPerL, given.note) * litresPerTurn;
  const figures = [...used];
  return {
    fromOn,
    untilOn,
    weeks:
      rule.fromWeek === rule.toWeek ? `week ${rule.fromWeek}` : `weeks ${rule.fromWeek} to ${rule.toWeek}`,
    turnsPerDay,
    mmPerDay: rounded(mmPerTurn * turnsPerDay),
    litresPerDay: rounded(litresPerTurn * turnsPerDay),
    mmPerTurn,
    litresPerTurn,
    workMinPerDay: rounded(turnsPerDay * workMinPerTurn),
    rainMmPerDay: rainMm === undefined ? null : rounded(rainMm),
    means,
    from: {
      formula: FORMULA,
      figures,
      answers: [...new Set([...answersBehind(input), ...behind])],
      basis: weakestBasis(figures, input.pack),
    },
    aim: rule.aim,
  };
}

/** The last day of all watering: the table counts from the first sowing, and each later part is as much later. */
export function lastWateredOn(
  watering: readonly PlanWatering[],
  sown: readonly PlanPart[],
): IsoDate | undefined {
  const untilOn = watering.at(-1)?.untilOn;
  const [first, last] = [sown[0], sown.at(-1)];
  if (untilOn === undefined || first === undefined || last === undefined) return untilOn;
  return addDays(untilOn, daysBetween(first.startOn, last.startOn));
}

/** Depth a day ÷ turns × area; what the days use comes from the climate where it is known. */
const FORMULA = 'seedbed-water';

/** The answers that the water and its means rest on. */
function answersBehind({ scope }: WateringInput): string[] {
  const area = scope('facts.areaM2');
  const by = scope(WATER_BY);
  const read = [...(by.known ? by.used : []), 'hoseLPerMin', 'place'].filter((id) => scope(id).known);
  return [...new Set([...(area.known ? area.from.filter((name) => !name.includes('.')) : []), ...read])];
}

const midway = (from: IsoDate, until: IsoDate): IsoDate =>
  addDays(from, Math.floor(daysBetween(from, until) / 2));

/** How long or how many cans one watering is, by the means at hand. */
function meansOf(
  { pack, scope, note, units = 'metric' }: WateringInput,
  litresPerTurn: number,
): string | null {
  const watering = answered(scope, WATER_BY);
  if (watering === 'can') {
    const can = scope('figures.water-can-l');
    if (!can.known) return null;
    note('water-can-l');
    const count = Math.ceil(Number((litresPerTurn / (can.value as number)).toPrecision(10)));
    const size = quantity(can.value as number, 'L', units);
    return wordedInside(pack, count === 1 ? 'oneCan' : 'manyCans', {
      count: plainNumber(count, 'each'),
      size,
    });
  }
  const flow = scope('hoseLPerMin');
  if ((watering !== 'hose' && watering !== 'sprinkler') || !flow.known) return null;
  const drawnL = litresPerTurn / sprinklerShare({ scope, note });
  const time = runWords(pack, drawnL / (flow.value as number));
  const drawn = quantity(drawnL, 'L', units);
  return wordedInside(pack, drawnL > litresPerTurn ? 'sprinklerRuns' : 'runsFor', {
    time,
    means: watering,
    drawn,
  });
}

/** The share of the water that reaches the ground: all of it from a can or hose, less from a sprinkler. */
export function sprinklerShare({ scope, note }: Pick<WateringInput, 'scope' | 'note'>): number {
  const isSprinkled = answered(scope, WATER_BY) === 'sprinkler';
  const efficiency = isSprinkled ? scope('figures.sprinkler-efficiency') : undefined;
  if (efficiency?.known !== true) return 1;
  note('sprinkler-efficiency');
  return efficiency.value as number;
}
