/** What of a plan belongs to one area or part of the lawn. */
import type { IsoDate } from '../base/dates.js';
import type { Answers } from '../interview/answers.js';
import type { Plan, PlanFinding, PlanSign } from './plan.js';

export interface PlanPart {
  readonly startOn: IsoDate;
  readonly endOn: IsoDate;
  /** Absent: all areas, or a part of a lawn that is planned as one. */
  readonly area?: string;
}

/** One of several areas that are planned together: what holds for it alone. */
export interface PlanArea {
  readonly name: string;
  readonly lawn: Plan['lawn'];
  readonly verdict: Plan['verdict'];
  readonly findings: readonly PlanFinding[];
  readonly signs: readonly PlanSign[];
  /** Its own answers, over those for the whole lawn. */
  readonly answers: Answers;
}
