/** The two scopes that a plan needs: what is known for certain, and what may be assumed besides. */
import type { IsoDate } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import { type Answers, type AnswerValue, UNKNOWN } from '../interview/answers.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { isAsked, makeScope } from '../rules/scope.js';
import { computedFacts, NO_TIMING, type Timing } from './computed-facts.js';

export interface ScopeChoice {
  readonly pack: Pack;
  readonly answers: Answers;
  readonly today: IsoDate;
  /** `nothing`: only what was answered; `said`: questions answered "unknown" too; `all`: whatever is open. */
  readonly assume: 'nothing' | 'said' | 'all';
  /** What the dates have told already; `open`: nothing is dated yet, and no answer alone would settle it. */
  readonly timing?: Timing | 'open';
  /** Those of the reader, in which the area is printed. */
  readonly units?: Units | undefined;
}

export function scopeFor({ pack, answers, today, assume, timing = NO_TIMING, units }: ScopeChoice): Scope {
  const given = withImplied(pack, answers);
  return makeScope({
    pack,
    answerOf: (id) => (Object.hasOwn(given, id) && given[id] !== UNKNOWN ? given[id] : undefined),
    mayAssume: (id) => {
      if (assume === 'all') return true;
      if (assume === 'nothing') return pack.questionById.get(id)?.optional === true;
      return given[id] === UNKNOWN || pack.questionById.get(id)?.optional === true;
    },
    computed: computedFacts(pack, today, timing, units),
  });
}

/** Scopes that differ only in what the dates have told; the same one where the rules are told the same. */
export function scopesByTiming(choice: Omit<ScopeChoice, 'timing'>): (timing: Timing) => Scope {
  const kept = new Map<string, Scope>();
  return (timing) => {
    const { seasonWaitDays, parting } = timing;
    const told = [seasonWaitDays, parting.parts, parting.people].join();
    const scope = kept.get(told) ?? scopeFor({ ...choice, timing });
    kept.set(told, scope);
    return scope;
  };
}

/**
 * The answers that count. One whose question does not arise, by the other answers and by what is assumed for them,
 * is left out, so that no rule and no sum sees it.
 */
export function answersInUse(choice: ScopeChoice): Answers {
  const scope = scopeFor(choice);
  const counts = (id: string): boolean => {
    const question = choice.pack.questionById.get(id);
    // Parts are never asked for by themselves: they are another way to give the area.
    return question === undefined || question.kind === 'parts' || isAsked(question, scope) !== false;
  };
  return Object.fromEntries(Object.entries(choice.answers).filter(([id]) => counts(id)));
}

/** Words as they were answered; null when they were not, or said to be unknown. */
export const said = (value: AnswerValue | undefined): string | null =>
  typeof value === 'string' && value !== UNKNOWN ? value : null;

/** Adds the answers that others imply: a rate in g/m2 means a dry product, "don't know" whether it was done leaves open when. */
export function withImplied(pack: Pack, answers: Answers): Answers {
  const implied = pack.questions.flatMap((question) => {
    if (Object.hasOwn(answers, question.id)) return [];
    const found = question.impliedBy?.find(
      ({ answered, as }) =>
        Object.hasOwn(answers, answered) && (answers[answered] === UNKNOWN) === (as === UNKNOWN),
    );
    return found === undefined ? [] : [[question.id, found.value] as const];
  });
  return implied.length === 0 ? answers : { ...answers, ...Object.fromEntries(implied) };
}
