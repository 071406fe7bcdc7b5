/**
 * Makes the scope that conditions read from: answers, figures, facts and findings, each worked out once.
 * A dormant answer (its question's askWhen is false) is invisible; its question then stands at its assumption.
 */
import { once } from '../base/once.js';
import { evaluate, type Known, type Outcome, RuleFault, type Scope } from './evaluate.js';
import type { Pack } from './pack.js';
import type { Fact, Figure, Question } from './schema.js';

/** A value of an answer that conditions can compare; lists of lawn parts only reach computed facts. */
export type AnswerLookup = (questionId: string) => unknown;

/** Works out a fact that no condition can: area from parts, month from a date. Undefined: not to be known. */
export type ComputedFact = (
  read: (name: string) => Outcome,
  raw: AnswerLookup,
  /** Names that the fact says it reads, in its order. */
  reads: readonly string[],
) => Outcome;

export interface ScopeInput {
  readonly pack: Pack;
  /** The given value, or undefined where there is none or it was said to be unknown. */
  readonly answerOf: AnswerLookup;
  /** Whether an assumption may stand for this unanswered question. */
  readonly mayAssume: (questionId: string) => boolean;
  readonly computed: Readonly<Record<string, ComputedFact>>;
}

const open = (...names: string[]): Outcome => ({ known: false, open: names });

/** The scope; it keeps every outcome, so make a new one whenever an answer changes. */
export function makeScope(input: ScopeInput): Scope {
  const kept = new Map<string, Outcome>();
  const beingWorkedOut = new Set<string>();
  const scope: Scope = (name) => {
    const before = kept.get(name);
    if (before !== undefined) return before;
    if (beingWorkedOut.has(name)) throw new RuleFault(`"${name}" depends on itself`);
    beingWorkedOut.add(name);
    const outcome = workOut(input, name, scope);
    beingWorkedOut.delete(name);
    kept.set(name, outcome);
    return outcome;
  };
  return scope;
}

function workOut(input: ScopeInput, name: string, scope: Scope): Outcome {
  const { pack } = input;
  if (name.startsWith('figures.')) {
    const figure = pack.figureById.get(name.slice('figures.'.length));
    if (figure !== undefined) return figureOutcome(figure);
  } else if (name.startsWith('facts.')) {
    const fact = pack.factById.get(name.slice('facts.'.length));
    if (fact !== undefined) return factOutcome(input, fact, scope);
  } else if (name.startsWith('findings.')) {
    const finding = pack.findingById.get(name.slice('findings.'.length));
    if (finding !== undefined) return evaluate(finding.when, scope);
  } else {
    const question = pack.questionById.get(name);
    if (question !== undefined) return questionOutcome(input, question, scope);
  }
  throw new RuleFault(`nothing is called "${name}"`);
}

/** The same whatever the answers. */
const figureOutcome = once(({ id, typical, range }: Figure): Known => {
  const names = [`figures.${id}`];
  return { known: true, value: typical, least: range.min, most: range.max, used: names, from: names };
});

function factOutcome(input: ScopeInput, fact: Fact, scope: Scope): Outcome {
  if (fact.value !== undefined) return evaluate(fact.value, scope);
  const work = input.computed[fact.computedBy as string];
  if (work === undefined)
    throw new RuleFault(`fact "${fact.id}" wants "${fact.computedBy}", which is not to be had here`);
  return work(scope, input.answerOf, fact.reads ?? []);
}

function questionOutcome(input: ScopeInput, question: Question, scope: Scope): Outcome {
  const asked = isAsked(question, scope);
  const value = asked === false ? undefined : input.answerOf(question.id);
  if (typeof value === 'number' || typeof value === 'boolean' || typeof value === 'string') {
    return { known: true, value, used: [question.id], from: [question.id] };
  }
  if (asked === false || input.mayAssume(question.id)) {
    const { assume } = question.dontKnow;
    const assumed = assume === null ? open() : evaluate(assume, scope);
    if (!assumed.known) return assumed;
    return { ...assumed, used: [question.id, ...assumed.used], from: [question.id, ...assumed.from] };
  }
  return open(question.id);
}

/** True, false, or undefined while that itself depends on open answers. */
export function isAsked(question: Question, scope: Scope): boolean | undefined {
  if (question.askWhen === undefined) return true;
  const outcome = evaluate(question.askWhen, scope);
  return outcome.known ? outcome.value === true : undefined;
}
