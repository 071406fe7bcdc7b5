/**
 * Three-valued evaluation of JSON Logic by strong Kleene: a known value, or open with the names that would decide.
 * json-logic-js computes every operator whose operands are all known; this file only settles what is open.
 * A known number may carry a spread (least, most) that arithmetic passes on; comparisons look at the value alone.
 */
import jsonLogic, { type RulesLogic } from 'json-logic-js';
import { once } from '../base/once.js';
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

const known = (value: Value, used = NONE, from = NONE): Known => ({
  known: true,
  value,
  used,
  from,
});
/** Names of all lists, each once. This runs for every node of every rule, and mostly nothing is to be added. */
function joined(lists: readonly (readonly string[])[]): readonly string[] {
  let [all = NONE, ...rest] = lists;
  for (const list of rest) {
    if (all.length === 0) all = list;
    const more = list === all ? NONE : list.filter((name) => !all.includes(name));
    if (more.length > 0) all = [...all, ...more];
  }
  return all;
}
const NONE: readonly string[] = [];

const isOpen = (outcome: Outcome): outcome is Open => !outcome.known;
const openFrom = (outcomes: readonly Outcome[]): Open => ({
  known: false,
  open: joined(outcomes.filter(isOpen).map((outcome) => outcome.open)),
});

/**
 * The outcome of an expression in a scope. An expression is read once and kept ready, so it must not be changed after.
 *
 * @throws {RuleFault} for an operator outside the list, operands of the wrong kind, or a result that is no number
 */
export function evaluate(expression: Expression, scope: Scope): Outcome {
  return readyOf(expression)(scope);
}

/** An expression whose operators are read: what it comes to in a scope. */
type Ready = (scope: Scope) => Outcome;

function readyOf(expression: Expression): Ready {
  if (typeof expression === 'object') return readyCall(expression);
  const literal = known(expression);
  return () => literal;
}

const readyCall = once((expression: Expression & object): Ready => {
  const call = callOf(expression);
  if (call === undefined) throw new RuleFault('a list or a many-keyed object stands where a value is due');
  const { operator, operands } = call;
  if (operator === 'var') {
    const name = String(operands[0]);
    return (scope) => scope(name);
  }
  if (!Object.hasOwn(OPERATORS, operator)) throw new RuleFault(`operator "${operator}" is not allowed`);
  if (operator === 'in') return readyIn(operands);
  const parts = operands.map(readyOf);
  if (operator === 'and' || operator === 'or') return readyJunction(operator === 'or', parts);
  if (operator === 'if') return readyIf(parts);
  return (scope) => {
    const outcomes = parts.map((part) => part(scope));
    return outcomes.some(isOpen) ? openFrom(outcomes) : compute(operator, outcomes as Known[]);
  };
});

/** `and` is settled by one false arm, `or` by one true arm; `settling` is that arm's value. */
const readyJunction =
  (settling: boolean, arms: readonly Ready[]): Ready =>
  (scope) => {
    const outcomes: Outcome[] = [];
    for (const arm of arms) {
      const outcome = arm(scope);
      if (outcome.known && outcome.value === settling) return outcome;
      if (outcome.known && typeof outcome.value !== 'boolean') {
        throw new RuleFault(
          `"${settling ? 'or' : 'and'}" was given ${JSON.stringify(outcome.value)}, not true or false`,
        );
      }
      outcomes.push(outcome);
    }
    if (outcomes.some(isOpen)) return openFrom(outcomes);
    return known(!settling, joined((outcomes as Known[]).map((outcome) => outcome.used)));
  };

/** An open test leaves the whole open, unless both ways give the same. */
function readyIf([test, then, ...rest]: readonly Ready[]): Ready {
  const otherwise = rest.length > 1 ? readyIf(rest) : (rest[0] as Ready);
  const [tested, chosen] = [test as Ready, then as Ready];
  return (scope) => {
    const verdict = tested(scope);
    if (verdict.known) {
      if (typeof verdict.value !== 'boolean') throw new RuleFault('a test of "if" is not true or false');
      const branch = verdict.value ? chosen(scope) : otherwise(scope);
      return branch.known ? { ...branch, used: joined([verdict.used, branch.used]) } : branch;
    }
    const [one, two] = [chosen(scope), otherwise(scope)];
    if (one.known && two.known && one.value === two.value && one.least === two.least && one.most === two.most)
      return { ...one, used: joined([one.used, two.used]), from: joined([one.from, two.from]) };
    return openFrom([verdict, one, two]);
  };
}

function readyIn([wanted, list]: readonly Expression[]): Ready {
  if (!Array.isArray(list)) throw new RuleFault('"in" wants a list of literals');
  const look = readyOf(wanted as Expression);
  return (scope) => {
    const outcome = look(scope);
    if (!outcome.known) return outcome;
    return known(jsonLogic.apply({ in: [outcome.value, list] } as RulesLogic) === true, outcome.used);
  };
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
