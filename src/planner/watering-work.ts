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
}

/** Beside the hours of the steps: the longest day, all of it, and a warning where it does not fit. */
export function wateringWorkSays({ pack, scope, watering }: WorkInput): string[] {
  const minutes = watering.map(({ workMinPerDay }) => workMinPerDay);
  const mostH = longestDay(watering, minutes) / MINUTES_PER_HOUR;
  const totalH =
    watering.reduce(
      (sum, { fromOn, untilOn }, index) =>
        sum + (minutes[index] as number) * (daysBetween(fromOn, untilOn) + 1),
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
