/** The days that a step takes as far as they are known: its own, or the whole months that they lie in. */
import { type IsoDate, type KnownTo, monthAround } from '../base/dates.js';
import type { PlanStep } from '../planner/plan.js';

export interface Span {
  readonly from: IsoDate;
  /** The last day itself. */
  readonly until: IsoDate;
}

/** What is done has its real days, whatever is known of the rest. */
export const isKnownToDay = ({ doneOn }: Pick<PlanStep, 'doneOn'>, knownTo: KnownTo): boolean =>
  knownTo === 'day' || doneOn !== null;

export function knownSpan(step: Pick<PlanStep, 'startOn' | 'endOn' | 'doneOn'>, knownTo: KnownTo): Span {
  return spanKnown({ from: step.startOn, until: step.endOn }, isKnownToDay(step, knownTo) ? 'day' : 'month');
}

export const spanKnown = (span: Span, knownTo: KnownTo): Span =>
  knownTo === 'day' ? span : { from: monthAround(span.from).first, until: monthAround(span.until).last };
