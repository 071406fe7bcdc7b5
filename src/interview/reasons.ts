/**
 * Why a condition came out as it did, in words: only the comparisons that mattered.
 * A false `and` needs one false arm, a true `or` one true arm; a chain of `if` needs the test that chose.
 */
import { joinedWords } from '../base/joined-words.js';
import { plainNumber, quantity } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import { callOf } from '../rules/call.js';
import { evaluate, type Known, type Outcome, type Scope, type Value } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression } from '../rules/schema.js';
import { showAnswer } from './show-answer.js';

/** Whose rules, what is known, and in which units numbers are said. */
export interface View {
  readonly pack: Pack;
  readonly scope: Scope;
  /** Metric unless said otherwise. */
  readonly units?: Units;
}

/** The decisive comparisons of a settled condition, each as a clause; none for an open one. */
export function reasonsFor(condition: Expression, view: View): string[] {
  const outcome = evaluate(condition, view.scope);
  if (!outcome.known) return [];
  const limits = new Map<string, string[]>();
  for (const { said, limit } of clausesOf(condition, view)) {
    const own = limits.get(said) ?? [];
    if (limit !== undefined && !own.includes(limit)) own.push(limit);
    limits.set(said, own);
  }
  return [...limits].map(([said, own]) =>
    own.length === 0
      ? said
      : filled(view.pack.wording.whatCounts, { clause: said, limits: joinedWords(own) }),
  );
}

/** What was read, and from where it counts. */
interface Clause {
  readonly said: string;
  readonly limit?: string;
}

const filled = (template: string, values: Readonly<Record<string, string>>): string =>
  template.replace(/\{(\w+)\}/g, (slot, key: string) => values[key] ?? slot);

/** The clauses as one sentence, or an empty text. */
export function sentenceOf(clauses: readonly string[]): string {
  if (clauses.length === 0) return '';
  const text = joinedWords(clauses);
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function clausesOf(node: Expression, view: View): Clause[] {
  const { scope } = view;
  const call = callOf(node);
  if (call === undefined) return [];
  const { operator, operands } = call;
  const inner = (operand: Expression): Clause[] => clausesOf(operand, view);
  const values = (): Outcome[] => operands.map((operand) => evaluate(operand, scope));
  switch (operator) {
    case 'var':
      return behindName(String(operands[0]), view);
    case 'and':
    case 'or': {
      const settling = operator === 'or';
      const index = values().findIndex((outcome) => outcome.known && outcome.value === settling);
      return index >= 0 ? inner(operands[index] as Expression) : operands.flatMap(inner);
    }
    case '!':
      // "Not too dark, not dormant" is true of nearly every lawn: saying so explains nothing.
      return isSaid(node, scope) ? inner(operands[0] as Expression) : [];
    case 'if':
      return behindIf(operands, view);
    default:
      return comparisonClauses(operator, operands, view);
  }
}

/** A negation is worth saying only where it is what made the whole false. */
function isSaid(node: Expression, scope: Scope): boolean {
  const outcome = evaluate(node, scope);
  return outcome.known && outcome.value === false;
}

/** What stands behind a finding or a fact that is true or false; a plain answer speaks for itself. */
function behindName(name: string, view: View): Clause[] {
  const { pack, scope } = view;
  const finding = name.startsWith('findings.')
    ? pack.findingById.get(name.slice('findings.'.length))
    : undefined;
  if (finding !== undefined) return clausesOf(finding.when, view);
  const fact = name.startsWith('facts.') ? pack.factById.get(name.slice('facts.'.length)) : undefined;
  if (fact?.value !== undefined) return clausesOf(fact.value, view);
  return answerClause(name, scope(name), view);
}

/** The test that chose the branch, and what stands behind the branch itself. */
function behindIf(operands: readonly Expression[], view: View): Clause[] {
  for (let index = 0; index + 1 < operands.length; index += 2) {
    const test = evaluate(operands[index] as Expression, view.scope);
    if (test.known && test.value === true) return clausesOf(operands[index] as Expression, view);
  }
  return clausesOf(operands.at(-1) as Expression, view);
}

function comparisonClauses(operator: string, operands: readonly Expression[], view: View): Clause[] {
  const { pack, scope } = view;
  const [left, right] = operands as [Expression, Expression];
  const name = callOf(left)?.operator === 'var' ? String(callOf(left)?.operands[0]) : undefined;
  if (name === undefined) return operands.flatMap((operand) => clausesOf(operand, view));
  const outcome = scope(name);
  if (!outcome.known) return [];
  const fact = name.startsWith('facts.') ? pack.factById.get(name.slice('facts.'.length)) : undefined;
  if (fact !== undefined && fact.kind !== 'number') return behindName(name, view);
  const limit = Array.isArray(right) ? undefined : evaluate(right, scope);
  const clauses = answerClause(name, outcome, view);
  const counts = COUNTS[operator];
  if (limit?.known !== true || typeof limit.value !== 'number' || limit.value === 0) return clauses;
  // What is a sentence by itself needs no measure beside it.
  if (counts === undefined || fact?.says !== undefined) return clauses;
  const words = filled(pack.wording[counts], { limit: limitWords(name, limit, view) });
  return clauses.map(({ said }) => ({ said, limit: words }));
}

/** From where it counts, by the comparison. */
const COUNTS: Readonly<Record<string, 'orMore' | 'above' | 'below' | 'orLess'>> = {
  '>=': 'orMore',
  '>': 'above',
  '<': 'below',
  '<=': 'orLess',
};

function answerClause(name: string, outcome: Outcome, { pack, units }: View): Clause[] {
  if (!outcome.known) return [];
  const question = pack.questionById.get(name);
  if (question !== undefined) {
    const shown = showAnswer(question, outcome.value, units);
    // A number reads on from its name; words need the colon.
    const said = `${question.label}${typeof outcome.value === 'number' ? '' : ':'} ${shown}`;
    return [{ said }];
  }
  const fact = name.startsWith('facts.') ? pack.factById.get(name.slice('facts.'.length)) : undefined;
  if (fact === undefined) return [];
  const value = numberWords(outcome.value, fact.unit, units);
  return [{ said: `${fact.says ?? fact.what} ${value}` }];
}

function limitWords(name: string, limit: Known, { pack, units }: View): string {
  const question = pack.questionById.get(name);
  if (question?.kind === 'days-ago') return numberWords(limit.value, 'd', units);
  return question === undefined
    ? numberWords(limit.value, pack.factById.get(name.slice('facts.'.length))?.unit, units)
    : showAnswer(question, limit.value, units);
}

function numberWords(value: Value, unit: string | undefined, units: Units | undefined): string {
  if (typeof value !== 'number') return String(value);
  if (unit === 'fraction') return `${Math.round(value * 100)} %`;
  if (unit === 'd') return `${plainNumber(value)} days`;
  return unit === undefined || unit === 'count' ? plainNumber(value) : quantity(value, unit, units);
}
