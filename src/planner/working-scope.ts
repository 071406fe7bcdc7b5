/** The two scopes that a plan needs: what is known for certain, and what may be assumed besides. */
import type { IsoDate } from '../base/dates.js';
import { type Answers, UNKNOWN } from '../interview/answers.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { makeScope } from '../rules/scope.js';
import { computedFacts, NO_TIMING, type Timing } from './computed-facts.js';

export interface ScopeChoice {
  readonly pack: Pack;
  readonly answers: Answers;
  readonly today: IsoDate;
  /** `nothing`: only what was answered; `said`: questions answered "unknown" too; `all`: whatever is open. */
  readonly assume: 'nothing' | 'said' | 'all';
  /** What the dates have told already; `open`: nothing is dated yet, and no answer alone would settle it. */
  readonly timing?: Timing | 'open';
}

export function scopeFor({ pack, answers, today, assume, timing = NO_TIMING }: ScopeChoice): Scope {
  const given = withImplied(pack, answers);
  return makeScope({
    pack,
    answerOf: (id) => (Object.hasOwn(given, id) && given[id] !== UNKNOWN ? given[id] : undefined),
    mayAssume: (id) => {
      if (assume === 'all') return true;
      if (assume === 'nothing') return pack.questionById.get(id)?.optional === true;
      return given[id] === UNKNOWN || pack.questionById.get(id)?.optional === true;
    },
    computed: computedFacts(today, timing),
  });
}

/** Adds the answers that others imply: a rate in g/m2 means a dry product. */
export function withImplied(pack: Pack, answers: Answers): Answers {
  const implied = pack.questions.flatMap((question) => {
    if (Object.hasOwn(answers, question.id)) return [];
    const found = question.impliedBy?.find(
      ({ answered }) => Object.hasOwn(answers, answered) && answers[answered] !== UNKNOWN,
    );
    return found === undefined ? [] : [[question.id, found.value] as const];
  });
  return implied.length === 0 ? answers : { ...answers, ...Object.fromEntries(implied) };
}
