/**
 * Which questions can still change the plan, judged by strong Kleene: never one too few, now and then one too many.
 * A question counts as open while something that decides is undecided and names it.
 */
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Question, Step } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';

/** Ids of the questions that are open, in the pack's order. */
export function openQuestions(pack: Pack, scope: Scope): Question[] {
  const open = new Set<string>();
  const look = (expression: Expression | undefined): boolean | undefined => {
    if (expression === undefined) return true;
    const outcome = evaluate(expression, scope);
    if (!outcome.known) for (const id of outcome.open) open.add(id);
    return outcome.known ? outcome.value !== false : undefined;
  };
  for (const verdict of pack.verdicts) if (look(verdict.when) === true) break;
  for (const step of pack.steps) if (look(step.when) !== false) lookIntoStep(step, pack, look);
  for (const rule of [...pack.notDone, ...pack.outlook]) look(rule.when);
  return withParents(pack, scope, open);
}

function lookIntoStep(
  step: Step,
  pack: Pack,
  look: (expression: Expression | undefined) => boolean | undefined,
): void {
  for (const wait of step.after) for (const days of [wait.minDays, wait.maxDays]) look(days);
  look(step.lastsDays);
  for (const limit of step.notBefore ?? []) {
    if (look(limit.when) !== false) for (const part of [limit.date, limit.plusDays]) look(part);
  }
  for (const amount of step.amounts) {
    if (look(amount.when) !== false) for (const input of Object.values(amount.inputs)) look(input);
  }
  for (const input of Object.values(step.labour?.inputs ?? {})) look(input);
  for (const tool of step.tools) look(tool.when);
  for (const id of step.cautions) look(pack.cautionById.get(id)?.when);
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

/** The open questions that can be put now: their own condition is settled. */
export function readyQuestions(questions: readonly Question[], scope: Scope): Question[] {
  return questions.filter((question) => isAsked(question, scope) === true);
}
