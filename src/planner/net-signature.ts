/** What the dates and the verdict of a plan are worked out from, as one text: where it is the same, so are they. */
import { once } from '../base/once.js';
import { verdictChoice } from '../interview/plan-pieces.js';
import { namesIn } from '../rules/call.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Step } from '../rules/schema.js';
import { likelyHoursOf } from './amounts.js';
import { ASKED_BY_PROGRAM } from './asked-by-program.js';
import type { PlanInput } from './assemble-plan.js';
import { NO_TIMING, type Timing } from './computed-facts.js';
import { seasonOf } from './step-net.js';
import { activeSteps, answered } from './steps.js';
import { scopesByTiming } from './working-scope.js';

/**
 * @param timing what the dates of the plan itself have told: the rules are read before it and with it, as the dating does
 */
export function netSignature({ pack, answers, today, progress }: PlanInput, timing: Timing): string {
  const scopeOf = scopesByTiming({ pack, answers, today, assume: 'all' });
  const readIn = (scope: Scope): unknown[] => {
    const active = activeSteps(pack, scope, progress?.leftOut);
    return [
      ASKED_BY_PROGRAM.map((id) => answered(scope, id)),
      seasonOf(pack, scope, today),
      outcomeOf(verdictChoice(pack), scope),
      active.map((step) => [
        step.id,
        likelyHoursOf(step, scope),
        ...readByDates(step).map((each) => outcomeOf(each, scope)),
      ]),
    ];
  };
  // Often the dates tell the rules nothing, and the two are one.
  return JSON.stringify([...new Set([NO_TIMING, timing].map(scopeOf))].map(readIn));
}

/** Names that the days or the verdict of a plan are worked out from. */
export interface Behind {
  readonly verdict: ReadonlySet<string>;
  readonly dates: ReadonlySet<string>;
}

export const behindOf = once((pack: Pack): Behind => {
  const reads = readsByName(pack);
  const behind = (expressions: readonly Expression[]): Set<string> =>
    everythingBehind(expressions.flatMap(namesIn), reads);
  const ofSteps = pack.steps.flatMap((step) => [
    step.when,
    ...Object.values(step.labour?.inputs ?? {}),
    ...readByDates(step),
  ]);
  return { verdict: behind([verdictChoice(pack)]), dates: behind([...ofSteps, ...SEASON_READS]) };
});

/** What the seasons are worked out from besides the questions that the program itself asks. */
const SEASON_READS: readonly Expression[] = [...ASKED_BY_PROGRAM, 'grassType'].map((id) => ({ var: id }));

/** Everything of the step that its days are worked out from, but for its hours and whether it is in the plan. */
function readByDates({ window, lastsDays, after, notBefore = [] }: Step): Expression[] {
  const seasons = [...(window?.between ?? []), ...(window?.warmSeason ?? [])];
  return [
    ...seasons.flatMap(({ opensAtC, closes }) => [opensAtC, closes?.belowC, closes?.daysLeft]),
    lastsDays,
    ...after.flatMap(({ minDays, maxDays }) => [minDays, maxDays]),
    ...notBefore.flatMap(({ when, date, plusDays }) => [when, date, plusDays]),
  ].filter((expression) => expression !== undefined);
}

function outcomeOf(expression: Expression, scope: Scope): unknown {
  const outcome = evaluate(expression, scope);
  return outcome.known ? outcome.value : null;
}
