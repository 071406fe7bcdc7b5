/** Watering as work: the minutes that somebody stands there, and whether the hours and the free days hold them. */
import { daysBetween, type IsoDate } from '../base/dates.js';
import { hours as hoursWords } from '../base/quantity-words.js';
import type { View } from '../interview/reasons.js';
import { worded } from './explain-words.js';
import type { PlanWatering } from './plan.js';
import { answered } from './steps.js';

const MINUTES_PER_HOUR = 60;

interface WorkInput extends View {
  readonly watering: readonly PlanWatering[];
  readonly note: (figureId: string) => void;
}

/** Beside the hours of the steps: the longest day, all of it, and a warning where it does not fit. */
export function wateringWorkSays(input: WorkInput): string[] {
  const { pack, scope, watering } = input;
  const minutes = watering.map((period) => minutesPerDay(period, input));
  if (minutes.includes(undefined)) return [];
  const known = minutes as number[];
  const mostH = longestDay(watering, known) / MINUTES_PER_HOUR;
  const totalH =
    watering.reduce(
      (sum, { fromOn, untilOn }, index) =>
        sum + (known[index] as number) * (daysBetween(fromOn, untilOn) + 1),
      0,
    ) / MINUTES_PER_HOUR;
  const dayH = answered(scope, 'hoursPerDay');
  return [
    worded(pack, 'wateringWork', { most: hoursWords(mostH), total: hoursWords(totalH) }),
    ...(typeof dayH === 'number' && mostH > dayH
      ? [worded(pack, 'wateringTooLong', { hours: hoursWords(dayH) })]
      : []),
    ...(answered(scope, 'workDays') === 'weekends' ? [worded(pack, 'wateringWeekdays')] : []),
  ];
}

/** Rows of several areas fall on the same days. */
function longestDay(watering: readonly PlanWatering[], minutes: readonly number[]): number {
  const on = (day: IsoDate): number =>
    watering.reduce(
      (sum, { fromOn, untilOn }, index) =>
        fromOn <= day && day <= untilOn ? sum + (minutes[index] as number) : sum,
      0,
    );
  return Math.max(0, ...watering.map(({ fromOn }) => on(fromOn)));
}

/** Of work on a dry day, averaged over days without a turn; undefined while the means are open. */
function minutesPerDay(
  { turnsPerDay, litresPerTurn, litresPerDay, mmPerDay }: PlanWatering,
  { scope, note }: WorkInput,
): number | undefined {
  const figure = (id: string): number => {
    const outcome = scope(`figures.${id}`);
    if (!outcome.known) return 0;
    note(id);
    return outcome.value as number;
  };
  const by = answered(scope, 'facts.waterBy');
  if (by === 'can')
    return turnsPerDay * Math.ceil(litresPerTurn / figure('water-can-l')) * figure('can-minutes');
  if (by === 'sprinkler') {
    const areaM2 = mmPerDay > 0 ? litresPerDay / mmPerDay : 0;
    return turnsPerDay * Math.ceil(areaM2 / figure('sprinkler-place-m2')) * figure('sprinkler-move-minutes');
  }
  const flow = scope('hoseLPerMin');
  if (by !== 'hose' || !flow.known) return undefined;
  return turnsPerDay * (litresPerTurn / (flow.value as number) + figure('hose-turn-minutes'));
}
