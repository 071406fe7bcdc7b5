/**
 * Which questions can still change the plan: those for which two ways of answering the rest, alike but for the one
 * answer, lead to different plans.
 *
 * Two looks. The quick one goes by strong Kleene and names whatever an undecided rule mentions: never one too few,
 * often one too many. The thorough one unfolds what is undecided over all answers still possible and keeps the
 * questions on which the outcome depends. Where that would take too long, the quick look stands.
 */
import { type Thresholds, thresholdsOf } from '../rules/cells.js';
import { TooManyCells } from '../rules/diagram.js';
import { evaluate, type Outcome, type Scope } from '../rules/evaluate.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Question } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import { openUnfolding, supportOf, type Unfolding, unfolder } from '../rules/unfold.js';
import { type PlanPiece, planPieces } from './plan-pieces.js';

export interface OpenQuestions {
  /** In the pack's order. */
  readonly questions: readonly Question[];
  /** Those that can still be asked: the open ones, and what the assumption in place of one may rest on. */
  readonly mayCome: readonly Question[];
  /** By question id, how many undecided pieces of the plan name it. */
  readonly hanging: ReadonlyMap<string, number>;
}

/** Open questions above which the quick look stands: with so many, nearly all matter and the look is long. */
const MOST_OPEN = 40;
/** Diagrams in one look after which the quick look stands. */
const MOST_DIAGRAMS = 20_000;

interface Prepared {
  readonly pieces: readonly PlanPiece[];
  readonly reads: ReadonlyMap<string, readonly string[]>;
  /** Made when they are first wanted. */
  thresholds?: Thresholds;
}
const preparedFor = new WeakMap<Pack, Prepared>();

function prepared(pack: Pack): Prepared {
  const before = preparedFor.get(pack);
  if (before !== undefined) return before;
  const made = { pieces: planPieces(pack), reads: readsByName(pack) };
  preparedFor.set(pack, made);
  return made;
}

/** The questions that are open, in the pack's order. */
export function openQuestions(pack: Pack, scope: Scope): Question[] {
  return [...lookForOpen(pack, scope).questions];
}

export function lookForOpen(pack: Pack, scope: Scope): OpenQuestions {
  const kept = prepared(pack);
  const { reads } = kept;
  const open = undecided(kept.pieces, scope);
  const named = new Set(open.flatMap(({ names }) => [...names]));
  const isThorough = named.size > 0 && named.size <= MOST_OPEN;
  const wanted = isThorough ? dependedOn(open, unfoldingOf(pack, kept), scope) : named;
  const questions = withParents(pack, scope, wanted);
  return { questions, mayCome: mayCome(pack, questions, scope, reads), hanging: hangingOn(open) };
}

function unfoldingOf(pack: Pack, kept: Prepared): Unfolding {
  kept.thresholds ??= thresholdsOf(pack);
  return openUnfolding(pack, kept.thresholds, MOST_DIAGRAMS);
}

interface Undecided {
  readonly piece: PlanPiece;
  readonly names: ReadonlySet<string>;
}

/** Pieces that strong Kleene leaves open, with every question it names for them. */
function undecided(pieces: readonly PlanPiece[], scope: Scope): Undecided[] {
  const outcomes = new Map<Expression, Outcome>();
  const look = (expression: Expression): Outcome => {
    const before = outcomes.get(expression);
    if (before !== undefined) return before;
    const outcome = evaluate(expression, scope);
    outcomes.set(expression, outcome);
    return outcome;
  };
  return pieces.flatMap((piece) => {
    const guards = piece.guards.map(look);
    if (guards.some((outcome) => outcome.known && outcome.value === false)) return [];
    const names = [...guards, look(piece.shows)].flatMap((outcome) => (outcome.known ? [] : outcome.open));
    return names.length === 0 ? [] : [{ piece, names: new Set(names) }];
  });
}

/** The questions on which the pieces depend. A piece whose questions are all found already tells nothing new. */
function dependedOn(open: readonly Undecided[], unfolding: Unfolding, scope: Scope): ReadonlySet<string> {
  const found = new Set<string>();
  const unfold = unfolder(unfolding, scope);
  let isWorthIt = true;
  for (const { piece, names } of [...open].sort((a, b) => a.names.size - b.names.size)) {
    if ([...names].every((name) => found.has(name))) continue;
    try {
      const depends = isWorthIt ? supportOf(unfold(piece.whole), unfolding) : names;
      for (const name of depends) found.add(name);
    } catch (error) {
      if (!(error instanceof TooManyCells)) throw error;
      isWorthIt = false;
      for (const name of names) found.add(name);
    }
  }
  return found;
}

function hangingOn(open: readonly Undecided[]): ReadonlyMap<string, number> {
  const hanging = new Map<string, number>();
  for (const { names } of open) for (const id of names) hanging.set(id, (hanging.get(id) ?? 0) + 1);
  return hanging;
}

/** A question whose askWhen is open waits for the questions that decide it; a dormant one is dropped. */
function withParents(pack: Pack, scope: Scope, open: ReadonlySet<string>): Question[] {
  const wanted = new Set(open);
  for (const id of wanted) {
    const question = pack.questionById.get(id);
    if (question?.askWhen === undefined) continue;
    const asked = evaluate(question.askWhen, scope);
    if (!asked.known) for (const parent of asked.open) wanted.add(parent);
  }
  return pack.questions.filter((question) => wanted.has(question.id) && isAsked(question, scope) !== false);
}

function mayCome(
  pack: Pack,
  questions: readonly Question[],
  scope: Scope,
  reads: ReadonlyMap<string, readonly string[]>,
): Question[] {
  const names = everythingBehind(
    questions.map(({ id }) => id),
    reads,
  );
  return pack.questions.filter((question) => names.has(question.id) && isAsked(question, scope) !== false);
}

/** The open questions that can be put now: their own condition is settled. */
export function readyQuestions(questions: readonly Question[], scope: Scope): Question[] {
  return questions.filter((question) => isAsked(question, scope) === true);
}
