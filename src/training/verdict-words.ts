/** Why a verdict is so here, and why another is not: made of what is wrong with this lawn and what that takes. */
import { parseIsoDate } from '../base/dates.js';
import { explainerFor } from '../planner/explain.js';
import type { VerdictId } from '../rules/schema-judgement.js';
import type { WorkedCase } from './worked-case.js';

/**
 * The reason of the verdict, with this lawn's own findings.
 *
 * @param withSteps also what it takes; not while the steps are still to be chosen
 */
export function verdictReason(worked: WorkedCase, withSteps: boolean): string {
  const { lesson, plan, pack, marking } = worked;
  const { takes } = marking.verdictWords;
  const steps = lesson.expected.steps.map((id) => pack.stepById.get(id)?.title ?? id);
  return [
    plan.verdict.because,
    whatIsWrong(worked),
    ...(withSteps ? [takes.replace('{names}', steps.join('; '))] : []),
  ].join(' ');
}

function whatIsWrong({ lesson, pack, marking }: WorkedCase): string {
  const { wrong, nothingWrong } = marking.verdictWords;
  const titles = lesson.expected.findings.map((id) => pack.findingById.get(id)?.title ?? id);
  return titles.length === 0 ? nothingWrong : wrong.replace('{names}', titles.join('; '));
}

/** What is said to those who came to another verdict: the case's own words, or else what the rules themselves say. */
export function wrongVerdictSays(worked: WorkedCase, verdict: VerdictId): string {
  const { lesson, pack, answers, units, marking } = worked;
  const own = lesson.wrongTurns.find((turn) => turn.verdict === verdict)?.says;
  if (own !== undefined) return own;
  const { means, wouldBe } = marking.verdictWords;
  const today = parseIsoDate(lesson.today);
  const changes = explainerFor({ pack, answers, today, assumeAll: true, units }).changesTo(verdict);
  return [
    ...(means[verdict] === undefined ? [] : [means[verdict]]),
    whatIsWrong(worked),
    ...(changes === undefined ? [] : [wouldBe.replace('{changes}', changes)]),
  ].join(' ');
}

/** In which sense a verdict holds as well, beside the one of the case. */
export const alsoRightSays = ({ lesson }: WorkedCase, verdict: string | undefined): string | undefined =>
  lesson.expected.alsoRight?.find((also) => also.verdict === verdict)?.says;
