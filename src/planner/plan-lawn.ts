/**
 * A lawn of several areas, such as front and back: one plan, one calendar, one shopping list.
 *
 * Each area is judged and dated by its own answers over those for the whole lawn, one after the other: a day that the
 * first has filled has no hours left for the second. Then the plans are put together (`merge-areas.ts`).
 */
import { type Area, answersOn } from '../interview/areas.js';
import { assemblePlan, datedChoice, type PlanInput, planOn } from './assemble-plan.js';
import { type AreaPlan, mergedPlan } from './merge-areas.js';
import type { Plan } from './plan.js';
import { ScheduleClash } from './schedule-clash.js';
import type { HoursOnDays } from './step-net.js';

export interface LawnInput extends PlanInput {
  /** Absent or empty: the lawn is planned as one. */
  readonly areas?: readonly Area[] | undefined;
}

/** @throws {ScheduleClash} when no dates hold, with the area for which they do not */
export function planLawn({ areas = [], ...input }: LawnInput): Plan {
  if (areas.length === 0) return assemblePlan(input);
  let taken: HoursOnDays | undefined;
  const plans = areas.map((area): AreaPlan => {
    const own = { ...input, answers: answersOn(area, input.answers), taken };
    const dated = datedFor(area.name, own);
    taken = dated.hours;
    return { area, plan: planOn(dated, own), scope: dated.scope };
  });
  return mergedPlan(plans, input);
}

function datedFor(area: string, own: PlanInput): ReturnType<typeof datedChoice> {
  try {
    return datedChoice(own);
  } catch (error) {
    throw error instanceof ScheduleClash ? error.on(area) : error;
  }
}
