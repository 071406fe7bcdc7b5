/** Names every assumption that the plan stands on: said "don't know", or left out and allowed to be assumed. */
import type { Units } from '../base/us-units.js';
import { type Answers, UNKNOWN } from '../interview/answers.js';
import { openQuestions } from '../interview/open-questions.js';
import { showAnswer } from '../interview/show-answer.js';
import { wordedFor } from '../interview/worded.js';
import { namesIn } from '../rules/call.js';
import type { Scope } from '../rules/evaluate.js';
import { expressionsOf } from '../rules/expressions.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Question, Step } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import type { PlanAssumption } from './plan.js';
import type { Say } from './texts.js';
import { type ScopeChoice, scopeFor } from './working-scope.js';

export interface AssumptionsInput {
  readonly pack: Pack;
  readonly answers: Answers;
  /** What the plan was made in. */
  readonly scope: Scope;
  /** Question ids that were not answered although an answer could have changed the plan. */
  readonly leftOut: ReadonlySet<string>;
  readonly active: readonly Step[];
  readonly say: Say;
  readonly units: Units;
}

/** What was said to be unknown and was read; what was not answered only where an answer could still change the plan. */
export function assumptionsOf(input: AssumptionsInput): PlanAssumption[] {
  const { pack, answers, scope, leftOut, active, say, units } = input;
  const matters = questionsThatMatter(pack, active);
  return pack.questions
    .filter(({ id }) => matters.has(id) && (answers[id] === UNKNOWN || leftOut.has(id)))
    .filter((question) => isAssumed(question, answers, scope))
    .map((question) => wordedFor(question, units))
    .map((question) => ({
      questionId: question.id,
      label: question.label,
      assumed: assumedWords(question, scope, units),
      says: question.dontKnow.says === undefined ? null : say(question.dontKnow.says),
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

function isAssumed(question: Question, answers: Answers, scope: Scope): boolean {
  const given = Object.hasOwn(answers, question.id) ? answers[question.id] : undefined;
  if (given !== undefined && given !== UNKNOWN) return false;
  // Measured parts are the other way to give the area.
  if (question.kind === 'area' && Array.isArray(answers.lawnParts)) return false;
  return isAsked(question, scope) !== false;
}

function assumedWords(question: Question, scope: Scope, units: Units | undefined): string {
  if (question.dontKnow.assume === null) return 'left open';
  const outcome = scope(question.id);
  return outcome.known ? showAnswer(question, outcome.value, units) : 'left open';
}

/** Questions behind anything that decides, and behind the amounts and hours of the steps that are in. */
function questionsThatMatter(pack: Pack, active: readonly Step[]): ReadonlySet<string> {
  const activeIds = new Set(active.map(({ id }) => id));
  const decisive = expressionsOf(pack).filter(
    ({ kindOfRecord, id, decides, pointer }) =>
      (decides &&
        kindOfRecord !== 'notDone' &&
        (kindOfRecord !== 'step' || pointer === '/when' || activeIds.has(id))) ||
      (kindOfRecord === 'step' && activeIds.has(id)),
  );
  const names = decisive.flatMap(({ expression }) => namesIn(expression));
  return new Set(
    [...everythingBehind(names, readsByName(pack))].filter((name) => pack.questionById.has(name)),
  );
}
