/**
 * Three-valued evaluation of JSON Logic by strong Kleene: a known value, or open with the names that would decide.
 * json-logic-js computes every operator whose operands are all known; this file only settles what is open.
 * A known number may carry a spread (least, most) that arithmetic passes on; comparisons look at the value alone.
 */
import jsonLogic, { type RulesLogic } from 'json-logic-js';
import { callOf } from './call.js';
import { OPERATORS } from './operators.js';
import type { Expression } from './schema.js';

export type Value = number | boolean | string;

export interface Known {
  readonly known: true;
  readonly value: Value;
  readonly least?: number;
  readonly most?: number;
  /** Questions and figures (as `figures.id`) that the value rests on, tests included. */
  readonly used: readonly string[];
  /** Those of them that the number itself was computed from. */
  readonly from: readonly string[];
}

export interface Open {
  readonly known: false;
  /** Question ids whose answers could settle it. */
  readonly open: readonly string[];
}

export type Outcome = Known | Open;

/** Looks up a name: an answer, fact, finding or figure. */
export type Scope = (name: string) => Outcome;

/** A rule that cannot be computed: the pack is at fault, not the answers. */
export class RuleFault extends Error {
  override readonly name = 'RuleFault';
}

const known = (value: Value, used: readonly string[] = [], from: readonly string[] = []): Known => ({
  known: true,
  value,
  used,
  from,
});
/** Names of all lists, each once. Most lists are empty or alone, and this runs for every node of every rule. */
function joined(lists: readonly (readonly string[])[]): readonly string[] {
  const [first = [], ...more] = lists.filter((list) => list.length > 0);
  return more.length === 0 ? first : [...new Set([first, ...more].flat())];
}

const isOpen = (outcome: Outcome): outcome is Open => !outcome.known;
const openFrom = (outcomes: readonly Outcome[]): Open => ({
  known: false,
  open: joined(outcomes.filter(isOpen).map((outcome) => outcome.open)),
});

/**
 * The outcome of an expression in a scope.
 *
 * @throws {RuleFault} for an operator outside the list, operands of the wrong kind, or a result that is no number
 */
export function evaluate(expression: Expression, scope: Scope): Outcome {
  const call = callOf(expression);
  if (call === undefined) {
    if (typeof expression === 'object')
      throw new RuleFault('a list or a many-keyed object stands where a value is due');
    return known(expression);
  }
  const { operator, operands } = call;
  if (operator === 'var') return scope(String(operands[0]));
  if (!Object.hasOwn(OPERATORS, operator)) throw new RuleFault(`operator "${operator}" is not allowed`);
  if (operator === 'and' || operator === 'or') return evaluateJunction(operator === 'or', operands, scope);
  if (operator === 'if') return evaluateIf(operands, scope);
  if (operator === 'in') return evaluateIn(operands, scope);
  const outcomes = operands.map((operand) => evaluate(operand, scope));
  if (outcomes.some(isOpen)) return openFrom(outcomes);
  return compute(operator, outcomes as Known[]);
}

/** `and` is settled by one false arm, `or` by one true arm; `settling` is that arm's value. */
function evaluateJunction(settling: boolean, operands: readonly Expression[], scope: Scope): Outcome {
  const outcomes = operands.map((operand) => evaluate(operand, scope));
  for (const outcome of outcomes) {
    if (outcome.known && typeof outcome.value !== 'boolean') {
      throw new RuleFault(
        `"${settling ? 'or' : 'and'}" was given ${JSON.stringify(outcome.value)}, not true or false`,
      );
    }
  }
  const settled = outcomes.find((outcome) => outcome.known && outcome.value === settling);
  if (settled !== undefined) return settled;
  if (outcomes.some(isOpen)) return openFrom(outcomes);
  return known(!settling, joined((outcomes as Known[]).map((outcome) => outcome.used)));
}

/** An open test leaves the whole open, unless both ways give the same. */
function evaluateIf(operands: readonly Expression[], scope: Scope): Outcome {
  const [test, then, ...rest] = operands as [Expression, Expression, ...Expression[]];
  const verdict = evaluate(test, scope);
  const otherwise = (): Outcome =>
    rest.length > 1 ? evaluateIf(rest, scope) : evaluate(rest[0] as Expression, scope);
  if (verdict.known) {
    if (typeof verdict.value !== 'boolean') throw new RuleFault('a test of "if" is not true or false');
    const branch = verdict.value ? evaluate(then, scope) : otherwise();
    return branch.known ? { ...branch, used: joined([verdict.used, branch.used]) } : branch;
  }
  const branches = [evaluate(then, scope), otherwise()];
  const [one, two] = branches as [Outcome, Outcome];
  if (one.known && two.known && one.value === two.value && one.least === two.least && one.most === two.most) {
    return { ...one, used: joined([one.used, two.used]), from: joined([one.from, two.from]) };
  }
  return openFrom([verdict, ...branches]);
}

function evaluateIn(operands: readonly Expression[], scope: Scope): Outcome {
  const [wanted, list] = operands as [Expression, Expression];
  if (!Array.isArray(list)) throw new RuleFault('"in" wants a list of literals');
  const outcome = evaluate(wanted, scope);
  if (!outcome.known) return outcome;
  return known(jsonLogic.apply({ in: [outcome.value, list] } as RulesLogic) === true, outcome.used);
}

function compute(operator: string, operands: readonly Known[]): Known {
  const takes = OPERATORS[operator]?.takes;
  const kind = takes === 'truth' ? 'boolean' : takes === 'number' ? 'number' : typeof operands[0]?.value;
  for (const { value } of operands) {
    if (typeof value !== kind)
      throw new RuleFault(`"${operator}" was given ${JSON.stringify(value)}, not a ${kind}`);
  }
  const used = joined(operands.map((operand) => operand.used));
  const value = applyOperator(
    operator,
    operands.map((operand) => operand.value),
  );
  if (typeof value !== 'number') return known(value, used);
  const from = joined(operands.map((operand) => operand.from));
  if (operands.every((operand) => operand.least === undefined)) return known(value, used, from);
  const corners = cornersOf(operands).map((corner) => applyOperator(operator, corner) as number);
  return { known: true, value, least: Math.min(...corners), most: Math.max(...corners), used, from };
}

/**
 * An operator on known values, by json-logic-js.
 *
 * @throws {RuleFault} when the result is neither a truth nor a finite number
 */
export function applyOperator(operator: string, values: readonly Value[]): Value {
  const result: unknown = jsonLogic.apply({ [operator]: values } as unknown as RulesLogic);
  if (typeof result === 'boolean' || (typeof result === 'number' && Number.isFinite(result))) return result;
  throw new RuleFault(`"${operator}" of ${values.join(', ')} gives no number`);
}

/** Every combination of least and most of the operands that have a spread. */
function cornersOf(operands: readonly Known[]): Value[][] {
  return operands.reduce<Value[][]>(
    (corners, { value, least, most }) => {
      const ends: Value[] = least === undefined || most === undefined ? [value] : [least, most];
      return corners.flatMap((corner) => ends.map((end) => [...corner, end]));
    },
    [[]],
  );
}
