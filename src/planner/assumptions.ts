/** Names every assumption that the plan stands on: said "don't know", or left out and allowed to be assumed. */
import { type Answers, UNKNOWN } from '../interview/answers.js';
import { openQuestions } from '../interview/open-questions.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import type { PlanAssumption } from './plan.js';
import type { Say } from './texts.js';
import { type ScopeChoice, scopeFor } from './working-scope.js';

/**
 * @param matters question ids that the plan read; others are not worth a line
 * @param leftOut question ids that were not answered although an answer could have changed the plan
 */
export function assumptionsOf(
  pack: Pack,
  answers: Answers,
  scope: Scope,
  { matters, leftOut }: { readonly matters: ReadonlySet<string>; readonly leftOut: ReadonlySet<string> },
  say: Say,
): PlanAssumption[] {
  return pack.questions
    .filter((question) => matters.has(question.id) && isAssumed(question, answers, leftOut, scope))
    .map((question) => ({
      questionId: question.id,
      label: question.label,
      assumed: assumedWords(question, scope),
      effect: say(question.dontKnow.effect),
      handTest: question.dontKnow.handTest === undefined ? null : say(question.dontKnow.handTest),
      saidUnknown: answers[question.id] === UNKNOWN,
    }));
}

/** Questions that still mattered and were assumed all the same; none after a session, which asks them all. */
export function leftOutOf({ assume, ...choice }: ScopeChoice): ReadonlySet<string> {
  if (assume !== 'all') return new Set();
  const open = openQuestions(choice.pack, scopeFor({ ...choice, assume: 'said', timing: 'open' }));
  return new Set(open.map(({ id }) => id));
}

function isAssumed(
  question: Question,
  answers: Answers,
  leftOut: ReadonlySet<string>,
  scope: Scope,
): boolean {
  const given = Object.hasOwn(answers, question.id) ? answers[question.id] : undefined;
  if (given !== undefined && given !== UNKNOWN) return false;
  // Measured parts are the other way to give the area.
  if (question.kind === 'area' && Array.isArray(answers.lawnParts)) return false;
  if (given === undefined && !leftOut.has(question.id)) return false;
  return isAsked(question, scope) !== false;
}

function assumedWords(question: Question, scope: Scope): string {
  if (question.dontKnow.assume === null) return 'left open';
  const outcome = scope(question.id);
  return outcome.known ? showAnswer(question, outcome.value) : 'left open';
}
