/** Names every assumption that the plan stands on: said "don't know", or left out and allowed to be assumed. */
import type { Units } from '../base/us-units.js';
import { type Answers, UNKNOWN } from '../interview/answers.js';
import type { View } from '../interview/reasons.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Scope } from '../rules/evaluate.js';
import type { Question } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import type { PlanAssumption } from './plan.js';
import type { Say } from './texts.js';

/** @param matters question ids that the plan read; others are not worth a line */
export function assumptionsOf(
  { pack, scope, units, say }: View & { readonly say: Say },
  answers: Answers,
  matters: ReadonlySet<string>,
): PlanAssumption[] {
  return pack.questions
    .filter((question) => matters.has(question.id) && isAssumed(question, answers, scope))
    .map((question) => ({
      questionId: question.id,
      label: question.label,
      assumed: assumedWords(question, scope, units),
      effect: say(question.dontKnow.effect),
      handTest: question.dontKnow.handTest === undefined ? null : say(question.dontKnow.handTest),
      saidUnknown: answers[question.id] === UNKNOWN,
    }));
}

function isAssumed(question: Question, answers: Answers, scope: Scope): boolean {
  const given = Object.hasOwn(answers, question.id) ? answers[question.id] : undefined;
  if (given !== undefined && given !== UNKNOWN) return false;
  // Measured parts are the other way to give the area.
  if (question.kind === 'area' && Array.isArray(answers.lawnParts)) return false;
  if (given === undefined && question.optional === true) return false;
  return isAsked(question, scope) !== false;
}

function assumedWords(question: Question, scope: Scope, units: Units | undefined): string {
  if (question.dontKnow.assume === null) return 'left open';
  const outcome = scope(question.id);
  return outcome.known ? showAnswer(question, outcome.value, units) : 'left open';
}
