/**
 * Unfolds an expression into its decision diagram: its outcome over every way the open questions could be answered.
 *
 * Exact for conditions on single questions. A comparison that joins several open numbers (moss, weeds and bare ground
 * together) is settled by their bounds where that is enough and is otherwise a variable of its own, free of the rest:
 * that can make an outcome look open which is not, never the other way round.
 */
import { type Call, callOf } from './call.js';
import { numbersOf, type Thresholds } from './cells.js';
import { type Diagram, type DiagramStore, openDiagramStore, type Term } from './diagram.js';
import { applyOperator, type Known, type Scope, type Value } from './evaluate.js';
import { boundsOfResult } from './interval.js';
import type { Pack } from './pack.js';
import type { Expression, Question } from './schema.js';
import { isAsked } from './scope.js';

/** Diagrams and variables of one look at a pack. */
export interface Unfolding {
  readonly pack: Pack;
  readonly store: DiagramStore;
  readonly thresholds: Thresholds;
  /** What a variable reads, by rank: questions first, in the pack's order, then joint comparisons as they turn up. */
  readonly reads: (readonly string[])[];
  readonly ranks: Map<string, number>;
}

/** @param most diagrams after which `TooManyCells` is thrown */
export function openUnfolding(pack: Pack, thresholds: Thresholds, most: number): Unfolding {
  return {
    pack,
    store: openDiagramStore(most),
    thresholds,
    reads: pack.questions.map(({ id }) => [id]),
    ranks: new Map(pack.questions.map(({ id }, index) => [id, index])),
  };
}

const nothing: Term = { kind: 'nothing', key: '' };
const valueTerm = (value: Value, key = JSON.stringify(value)): Term => ({ kind: 'value', key, value });

/** A number is the same only with the same spread and the same figures behind it: the plan shows them. */
const knownTerm = ({ value, least = value as number, most = value as number, from }: Known): Term =>
  valueTerm(value, typeof value === 'number' ? JSON.stringify([value, least, most, from]) : undefined);

/** A function that unfolds expressions under the answers that the scope knows. */
export function unfolder(unfolding: Unfolding, scope: Scope): (expression: Expression) => Diagram {
  const { pack, store } = unfolding;
  const names = new Map<string, Diagram>();
  const done = new Map<Expression, Diagram>();
  const unfold = (expression: Expression): Diagram => {
    const call = callOf(expression);
    if (call === undefined) return store.leaf(valueTerm(expression as Value));
    const before = done.get(expression);
    if (before !== undefined) return before;
    const made = unfoldCall(call);
    done.set(expression, made);
    return made;
  };

  const unfoldCall = ({ operator, operands }: Call): Diagram => {
    if (operator === 'var') return named(String(operands[0]));
    if (operator === 'and' || operator === 'or') return junction(operator === 'or', operands.map(unfold));
    if (operator === 'if') return chain(operands);
    if (operator === 'in')
      return membership(unfold(operands[0] as Expression), operands[1] as readonly Value[]);
    const unfolded = operands.map(unfold);
    const [first, second, third] = unfolded as [Diagram, Diagram, Diagram | undefined];
    // a < b < c is two comparisons.
    if (third !== undefined && (operator === '<' || operator === '<='))
      return junction(false, [computed(operator, [first, second]), computed(operator, [second, third])]);
    return computed(operator, unfolded);
  };

  const named = (name: string): Diagram => {
    const before = names.get(name);
    if (before !== undefined) return before;
    const made = behind(name);
    names.set(name, made);
    return made;
  };

  const behind = (name: string): Diagram => {
    const outcome = scope(name);
    if (outcome.known) return store.leaf(knownTerm(outcome));
    const finding = pack.findingById.get(name.replace(/^findings\./, ''));
    if (finding !== undefined && name.startsWith('findings.')) return unfold(finding.when);
    const fact = pack.factById.get(name.replace(/^facts\./, ''));
    if (fact?.value !== undefined && name.startsWith('facts.')) return unfold(fact.value);
    const question = pack.questionById.get(name);
    if (question === undefined) return store.leaf(some(name, outcome.open));
    const isOwn = outcome.open.includes(name);
    const assumed = (): Diagram =>
      question.dontKnow.assume === null ? store.leaf(nothing) : unfold(question.dontKnow.assume);
    const asked = isAsked(question, scope);
    if (asked === false || !isOwn) return assumed();
    const answered = plainAnswer(question, unfolding);
    return asked === true ? answered : either(unfold(question.askWhen as Expression), answered, assumed());
  };

  const junction = (settling: boolean, operands: readonly Diagram[]): Diagram =>
    operands.reduce((left, right) => {
      for (const [one, other] of [
        [left, right],
        [right, left],
      ] as const) {
        if (one.term?.kind === 'value') return one.term.value === settling ? one : other;
      }
      return store.combine(settling ? 'or' : 'and', [left, right], ([a, b]) => {
        const terms = [a, b] as readonly Term[];
        if (terms.some((term) => term.kind === 'value' && term.value === settling))
          return store.leaf(valueTerm(settling));
        return store.leaf(terms.some((term) => term.kind !== 'value') ? nothing : valueTerm(!settling));
      });
    });

  const either = (test: Diagram, then: Diagram, otherwise: Diagram): Diagram => {
    if (test.term?.kind === 'value') return test.term.value === true ? then : otherwise;
    return store.combine('if', [test, then, otherwise], ([verdict, one, two]) => {
      if (verdict?.kind === 'value') return store.leaf((verdict.value === true ? one : two) as Term);
      return store.leaf(one?.key === two?.key ? (one as Term) : nothing);
    });
  };

  const chain = (operands: readonly Expression[]): Diagram => {
    const [test, then, ...rest] = operands as [Expression, Expression, ...Expression[]];
    const verdict = unfold(test);
    const otherwise = (): Diagram => (rest.length > 1 ? chain(rest) : unfold(rest[0] as Expression));
    if (verdict.term?.kind === 'value') return verdict.term.value === true ? unfold(then) : otherwise();
    return either(verdict, unfold(then), otherwise());
  };

  const membership = (operand: Diagram, list: readonly Value[]): Diagram =>
    store.combine(`in ${JSON.stringify(list)}`, [operand], ([term]) => {
      if (term?.kind === 'value') return store.leaf(valueTerm(list.includes(term.value)));
      return term?.kind === 'some' ? joint('in', [term], unfolding) : store.leaf(nothing);
    });

  const computed = (operator: string, operands: readonly Diagram[]): Diagram =>
    store.combine(operator, operands, (terms) => {
      if (terms.some(({ kind }) => kind === 'nothing')) return store.leaf(nothing);
      if (terms.every((term) => term.kind === 'value')) {
        const values = terms.map(({ value }) => value);
        const result = applyOperator(operator, values);
        const isNumber = typeof result === 'number';
        return store.leaf(valueTerm(result, isNumber ? keyOf(operator, terms) : undefined));
      }
      return withSome(operator, terms, unfolding);
    });
  return unfold;
}

const keyOf = (operator: string, terms: readonly Term[]): string =>
  `${operator}(${terms.map(({ key }) => key).join(' ')})`;

const some = (key: string, reads: readonly string[], least = -Infinity, most = Infinity): Term => ({
  kind: 'some',
  key,
  reads,
  least,
  most,
});

/** An operator with an open number in it: by the bounds, by the cells of the one question, or joint. */
function withSome(operator: string, terms: readonly Term[], unfolding: Unfolding): Diagram {
  const { store } = unfolding;
  const spans = terms.map((term) =>
    term.kind === 'some'
      ? { least: term.least, most: term.most }
      : { least: (term as { value: number }).value, most: (term as { value: number }).value },
  );
  const result = boundsOfResult(operator, spans);
  if (typeof result === 'boolean') return store.leaf(valueTerm(result));
  const reads = [...new Set(terms.flatMap((term) => (term.kind === 'some' ? term.reads : [])))];
  if (result !== undefined) {
    const key = keyOf(operator, terms);
    return store.leaf(
      result.least === result.most
        ? valueTerm(result.least, key)
        : some(key, reads, result.least, result.most),
    );
  }
  return byCells(operator, terms, unfolding) ?? joint(operator, terms, unfolding);
}

/** A plain answer against a number: decided in each of the question's cells. */
function byCells(operator: string, terms: readonly Term[], unfolding: Unfolding): Diagram | undefined {
  const index = terms.findIndex((term) => term.kind === 'some');
  const { question: id } = terms[index] as { question?: string };
  const other = terms[1 - index];
  const question = id === undefined ? undefined : unfolding.pack.questionById.get(id);
  if (question === undefined || other?.kind !== 'value' || terms.length > 2) return undefined;
  const thresholds = unfolding.thresholds.get(question.id) ?? [];
  if (typeof other.value !== 'number' || !thresholds.includes(other.value)) return undefined;
  const { store, ranks } = unfolding;
  const limit = other.value;
  const branches = numbersOf(question, thresholds).map((number) =>
    store.leaf(valueTerm(applyOperator(operator, index === 0 ? [number, limit] : [limit, number]))),
  );
  return store.choice(ranks.get(question.id) as number, withNothing(question, branches, store));
}

/** Two ways, bound to no other variable. Opposites share one: not below is at or above. */
function joint(operator: string, terms: readonly Term[], { store, ranks, reads }: Unfolding): Diagram {
  const opposite = ({ '<': '>=', '<=': '>', '!==': '===' } as Readonly<Record<string, string>>)[operator];
  const key = keyOf(opposite ?? operator, terms);
  let rank = ranks.get(key);
  if (rank === undefined) {
    rank = reads.length;
    ranks.set(key, rank);
    reads.push([...new Set(terms.flatMap((term) => (term.kind === 'some' ? term.reads : [])))]);
  }
  const isOpposite = opposite !== undefined;
  return store.choice(rank, [store.leaf(valueTerm(!isOpposite)), store.leaf(valueTerm(isOpposite))]);
}

/** The answers of a question that has a list of them. */
function listedAnswers({ kind, options }: Question): readonly Value[] | undefined {
  return kind === 'yes-no' ? [true, false] : options?.map(({ value }) => value);
}

/** The answer to an open question, as it reaches the conditions. */
function plainAnswer(question: Question, { store, ranks, thresholds }: Unfolding): Diagram {
  const rank = ranks.get(question.id) as number;
  const options = listedAnswers(question)?.map((value) => store.leaf(valueTerm(value)));
  if (options !== undefined) return store.choice(rank, withNothing(question, options, store));
  const isNumber = ['number', 'fraction', 'days-ago', 'area'].includes(question.kind);
  const { min = 0, max = 1 } = question.bounds ?? {};
  const term = isNumber
    ? { ...some(question.id, [question.id], min, max), question: question.id }
    : some(question.id, [question.id]);
  const leaf = store.leaf(term);
  if (question.dontKnow.assume !== null || !isNumber) return leaf;
  const cells = numbersOf(question, thresholds.get(question.id) ?? []).map(() => leaf);
  return store.choice(rank, withNothing(question, cells, store));
}

/** Where nothing is assumed, "don't know" is a cell of its own. */
const withNothing = (
  question: Question,
  branches: readonly Diagram[],
  store: DiagramStore,
): readonly Diagram[] => (question.dontKnow.assume === null ? [...branches, store.leaf(nothing)] : branches);

/** The questions on which the outcome depends. */
export function supportOf(piece: Diagram, { reads }: Unfolding): ReadonlySet<string> {
  const names = new Set<string>();
  const seen = new Set<Diagram>();
  const visit = (diagram: Diagram): void => {
    if (seen.has(diagram)) return;
    seen.add(diagram);
    const behind = diagram.term === undefined ? reads[diagram.rank] : undefined;
    for (const name of behind ?? (diagram.term?.kind === 'some' ? diagram.term.reads : [])) names.add(name);
    diagram.branches.forEach(visit);
  };
  visit(piece);
  return names;
}
