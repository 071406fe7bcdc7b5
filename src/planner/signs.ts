/**
 * Accounts for every symptom that was told: by a finding, by a harmless reason, or not at all.
 * What is not accounted for, and what cannot all be true, is printed as such with what it may be and the next look.
 */
import { type IsoDate, monthOf } from '../base/dates.js';
import type { View } from '../interview/reasons.js';
import { showAnswer } from '../interview/show-answer.js';
import { evaluate } from '../rules/evaluate.js';
import type { SignRule } from '../rules/schema-judgement.js';
import { isAsked } from '../rules/scope.js';
import type { PlanFinding, PlanSign } from './plan.js';
import type { Ledger } from './provenance.js';
import { holds } from './steps.js';
import type { Say } from './texts.js';
import type { Season } from './windows.js';

/** More would be a list to worry over, not the next thing to look for. */
const MOST_MAYBES = 3;
const MONTHS_PER_YEAR = 12;

interface SignsContext {
  readonly today: IsoDate;
  readonly season: Season;
  readonly say: Say;
  readonly ledger: Ledger;
}

/** @param view with the scope in which nothing is assumed */
export function signsOf(view: View, findings: readonly PlanFinding[], context: SignsContext): PlanSign[] {
  return view.pack.signs
    .filter((sign) => isTold(sign, view))
    .map((sign) => signOf(sign, view, findings, context));
}

/** What a question that does not arise is assumed to be tells nothing. */
function isTold({ questions, when }: SignRule, { pack, scope }: View): boolean {
  const isDormant = (id: string): boolean => {
    const question = pack.questionById.get(id);
    return question !== undefined && isAsked(question, scope) === false;
  };
  return !questions.some(isDormant) && holds(when, scope);
}

function signOf(
  sign: SignRule,
  view: View,
  findings: readonly PlanFinding[],
  { today, season, say, ledger }: SignsContext,
): PlanSign {
  const found = findings.filter(
    ({ id, verdict }) => verdict === 'found' && sign.findings?.includes(id) === true,
  );
  const harmless = (sign.harmless ?? []).find(({ when }) => holds(when, view.scope));
  const account = found.length > 0 ? 'finding' : harmless !== undefined ? 'harmless' : 'unexplained';
  const isOpen = account === 'unexplained';
  const month = seasonalMonth(today, season);
  const maybe = sign.maybe
    .filter(({ months }) => months === undefined || months.includes(month))
    .slice(0, MOST_MAYBES);
  const sources = [...sign.sources, ...maybe.flatMap((each) => each.sources ?? [])];
  return {
    id: sign.id,
    questionId: sign.questions[0] as string,
    questionIds: sign.questions,
    answer: answerWords(sign, view),
    says: say(sign.says),
    account,
    by:
      account === 'finding'
        ? found.map(({ title }) => title)
        : harmless && !found.length
          ? [say(harmless.says)]
          : [],
    isClash: sign.findings === undefined && isOpen,
    maybe: isOpen ? maybe.map(({ says }) => say(says)) : [],
    look: isOpen ? say(sign.look) : null,
    basis: sign.basis,
    sources: isOpen ? ledger.cite(sources) : sources,
  };
}

/** The month in the north that has the same season. */
function seasonalMonth(today: IsoDate, { southern }: Season): number {
  const month = monthOf(today);
  return southern ? ((month - 1 + MONTHS_PER_YEAR / 2) % MONTHS_PER_YEAR) + 1 : month;
}

function answerWords({ questions }: SignRule, { pack, scope, units }: View): string {
  return questions
    .flatMap((id) => {
      const question = pack.questionById.get(id);
      const outcome = evaluate({ var: id }, scope);
      return question === undefined || !outcome.known
        ? []
        : [`${question.label}: ${showAnswer(question, outcome.value, units)}`];
    })
    .join('; ');
}
