/** The last day on which a step may begin, where it says something that the season of the work does not say already. */
import type { IsoDate } from '../base/dates.js';
import type { PlanStep } from '../planner/plan.js';

/**
 * The latest start of a step with a season of its own, or of one that must begin before any such step has to.
 * What is done on the way to the sowing shares its latest day, and need not say it again.
 */
export function latestStart(step: PlanStep, steps: readonly PlanStep[]): IsoDate | undefined {
  const { latestOn, window, workHours } = step;
  // A wait is over when it is over: no latest day hurries it.
  if (latestOn === null || (window === null && workHours === 0)) return undefined;
  const isSaid = steps.some((each) => each.window !== null && each.latestOn === latestOn);
  return window === null && isSaid ? undefined : latestOn;
}
