/**
 * What a conclusion rests on: the fewest answers that lead to it by themselves, and how far each could differ.
 *
 * Knowing less can only lose a result. So answers are taken away one at a time, and whatever the conclusion survives
 * without was no reason for it: what is left is enough, and no part of it is.
 */
import type { Answers, AnswerValue } from '../interview/answers.js';
import { namesIn } from '../rules/call.js';
import type { Thresholds } from '../rules/cells.js';
import { TooManyCells } from '../rules/diagram.js';
import { evaluate, type Scope, type Value } from '../rules/evaluate.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Expression } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import { openUnfolding, unfolder } from '../rules/unfold.js';

/** What a plan knew, and how it would look with other answers at the same dates. */
export interface Knowledge {
  readonly pack: Pack;
  readonly thresholds: Thresholds;
  readonly scope: Scope;
  /** The scope in which these answers are known and nothing is assumed. */
  readonly knowing: (answers: Answers) => Scope;
  /** The same, with every other question at its assumption. */
  readonly supposing: (answers: Answers) => Scope;
}

/** Always known: without a day and a place there is no plan to explain. */
const GIVEN = ['startOn', 'place', 'workDays', 'lawnParts'];

/** Every question that arises and has a value here, answered or assumed, with that value. */
export function allAnswers({ pack, scope }: Knowledge): Answers {
  const known = pack.questions.flatMap((question): [string, AnswerValue][] => {
    const outcome = scope(question.id);
    return outcome.known && isAsked(question, scope) === true ? [[question.id, outcome.value]] : [];
  });
  return Object.fromEntries(known);
}

export interface Proof {
  readonly value: Value;
  /** Question ids, in the pack's order. */
  readonly rests: readonly string[];
  /** Their values, and the day and place. */
  readonly answers: Answers;
}

/**
 * The fewest answers from which the outcome follows; undefined while it is open.
 *
 * @param isWeaker whether an answer is the one to do without where either would do, such as an assumption
 */
export function proofOf(
  expression: Expression,
  knowledge: Knowledge,
  isWeaker: (questionId: string) => boolean = () => false,
): Proof | undefined {
  const outcome = evaluate(expression, knowledge.scope);
  if (!outcome.known) return undefined;
  const behind = everythingBehind(namesIn(expression), readsByName(knowledge.pack));
  let answers: Answers = Object.fromEntries(
    Object.entries(allAnswers(knowledge)).filter(([id]) => behind.has(id) || GIVEN.includes(id)),
  );
  const follows = (from: Answers): boolean => settledValue(expression, knowledge, from) === outcome.value;
  const droppable = Object.keys(answers).filter((id) => !GIVEN.includes(id));
  // Of several ways to the same end, the one that the rule itself took is told.
  const unused = droppable.filter((id) => !outcome.used.includes(id));
  for (const id of [...unused, ...droppable.filter(isWeaker), ...droppable.reverse()]) {
    const { [id]: _, ...fewer } = answers;
    if (follows(fewer)) answers = fewer;
  }
  const rests = Object.keys(answers).filter((id) => !GIVEN.includes(id));
  return { value: outcome.value, rests, answers };
}

/** Diagrams after which an outcome counts as open. */
const MOST_DIAGRAMS = 10 * 1000;

/** What the expression comes to whatever the other answers may be; undefined when they could change it. */
export function settledValue(
  expression: Expression,
  { pack, thresholds, knowing }: Knowledge,
  answers: Answers,
): Value | undefined {
  const scope = knowing(answers);
  const outcome = evaluate(expression, scope);
  if (outcome.known) return outcome.value;
  try {
    const { term } = unfolder(openUnfolding(pack, thresholds, MOST_DIAGRAMS), scope)(expression);
    return term?.kind === 'value' ? term.value : undefined;
  } catch (error) {
    if (error instanceof TooManyCells) return undefined;
    throw error;
  }
}
