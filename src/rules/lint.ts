/**
 * Static check of one condition: operators, operand counts, kinds, names, options, units, depth, bare numbers.
 * What passes here can be evaluated without a fault, but for a division by zero.
 */
import { jsonPointer } from '../base/json-pointer.js';
import { type Call, callOf } from './call.js';
import { DEPTH_LIMIT, type Kind, OPERATOR_NAMES, OPERATORS } from './operators.js';
import type { Place, RuleProblem } from './problem.js';
import type { Expression } from './schema.js';

/** What a readable name gives. */
export interface Named {
  readonly kind: Exclude<Kind, 'any'>;
  readonly unit?: string | undefined;
  /** The only words it can be, for a choice. */
  readonly words?: readonly string[] | undefined;
}

export interface LintInput extends Omit<Place, 'pointer'> {
  readonly names: ReadonlyMap<string, Named>;
  readonly nearest: (name: string, names: readonly string[]) => string | undefined;
}

type Draft = RuleProblem extends infer P ? (P extends RuleProblem ? Omit<P, keyof Place> : never) : never;

/** Lists every problem of the condition; `wanted` is the kind that its place asks for. */
export function lint(expression: Expression, wanted: Kind, pointer: string, input: LintInput): RuleProblem[] {
  const problems: RuleProblem[] = [];
  const report = (at: string, draft: Draft): void => {
    const { file, record } = input;
    const place = { file, pointer: at, ...(record === undefined ? {} : { record }) };
    problems.push({ ...place, ...draft } as RuleProblem);
  };

  const walk = (node: Expression, kind: Kind, at: string, depth: number): Named | undefined => {
    if (depth > DEPTH_LIMIT) {
      report(at, { code: 'depth', limit: DEPTH_LIMIT });
      return undefined;
    }
    const named = typeof node === 'object' ? walkCall(node, at, depth) : literal(node, at);
    if (named !== undefined && kind !== 'any' && named.kind !== kind) {
      report(at, { code: 'kind', wanted: kind, found: named.kind });
    }
    return named;
  };

  const literal = (value: string | number | boolean, at: string): Named => {
    if (typeof value === 'number') {
      if (![0, 1, -1].includes(value)) report(at, { code: 'bare-number', found: value });
      return { kind: 'number' };
    }
    return { kind: typeof value === 'boolean' ? 'truth' : 'word' };
  };

  const walkCall = (node: Expression & object, at: string, depth: number): Named | undefined => {
    const call = callOf(node);
    if (call === undefined) {
      report(at, {
        code: 'many-keys',
        found: Array.isArray(node) ? 'is a list' : `has ${Object.keys(node).length} keys`,
      });
      return undefined;
    }
    const here = `${at}${jsonPointer(call.operator)}`;
    const operandAt = (index: number): string => (call.isList ? `${here}/${index}` : here);
    if (call.operator === 'var') return readName(call.operands, here);
    const operator = Object.hasOwn(OPERATORS, call.operator) ? OPERATORS[call.operator] : undefined;
    if (operator === undefined) {
      const nearest = input.nearest(call.operator, OPERATOR_NAMES);
      report(at, { code: 'operator', found: call.operator, ...(nearest === undefined ? {} : { nearest }) });
      return undefined;
    }
    const count = call.operands.length;
    const { least, most } = operator;
    if (count < least || count > most || (call.operator === 'if' && count % 2 === 0)) {
      const allowed =
        call.operator === 'if'
          ? 'an odd number, 3 or more'
          : most === least
            ? `${least}`
            : most === least + 1
              ? `${least} or ${most}`
              : `${least} or more`;
      report(at, { code: 'arguments', operator: call.operator, count, allowed });
      return { kind: operator.gives === 'any' ? 'truth' : operator.gives };
    }
    if (call.operator === 'in') return walkIn(call.operands, here, depth);
    const operands = call.operands.map((operand, index) => {
      const isTest = call.operator === 'if' && index % 2 === 0 && index < count - 1;
      return walk(operand, isTest ? 'truth' : operator.takes, operandAt(index), depth + 1);
    });
    if (call.operator === 'if') return branchesOf(call.operands, operands, here);
    if (operator.takes !== 'truth') compare(call, operands, here);
    if (operator.gives === 'any') return undefined;
    return {
      kind: operator.gives,
      ...(KEEPS_UNIT.includes(call.operator) ? { unit: unitOf(operands) } : {}),
    };
  };

  const readName = (operands: readonly Expression[], at: string): Named | undefined => {
    const [name] = operands;
    if (operands.length !== 1 || typeof name !== 'string') {
      report(at, { code: 'arguments', operator: 'var', count: operands.length, allowed: 'one name' });
      return undefined;
    }
    const named = input.names.get(name);
    if (named === undefined) {
      const nearest = input.nearest(name, [...input.names.keys()]);
      report(at, { code: 'unknown-name', id: name, ...(nearest === undefined ? {} : { nearest }) });
    }
    return named;
  };

  const walkIn = (operands: readonly Expression[], at: string, depth: number): Named => {
    const [wantedValue, list] = operands as [Expression, Expression];
    const named = walk(wantedValue, 'any', `${at}/0`, depth + 1);
    if (!Array.isArray(list)) {
      report(`${at}/1`, { code: 'kind', wanted: 'list of literals', found: typeof list });
      return { kind: 'truth' };
    }
    for (const [index, member] of (list as readonly Expression[]).entries()) {
      checkMember(wantedValue, named, member, `${at}/1/${index}`);
    }
    return { kind: 'truth' };
  };

  /** A member of the list of `in`: a literal of the kind that is looked for. */
  const checkMember = (node: Expression, named: Named | undefined, member: Expression, at: string): void => {
    if (typeof member === 'object') {
      const found = Array.isArray(member) ? 'list' : 'condition';
      report(at, { code: 'kind', wanted: 'literal', found });
      return;
    }
    const { kind } = literal(member, at);
    if (named !== undefined && named.kind !== kind)
      report(at, { code: 'kind', wanted: named.kind, found: kind });
    checkWord(node, named, member, at);
  };

  /** All branches of an `if` must give one kind; the last operand and every odd one are branches. */
  const branchesOf = (
    nodes: readonly Expression[],
    operands: readonly (Named | undefined)[],
    at: string,
  ): Named | undefined => {
    const isBranch = (_: unknown, index: number): boolean => index % 2 === 1 || index === nodes.length - 1;
    const branches = operands.filter(isBranch);
    checkUnits(nodes.filter(isBranch), branches, at);
    const [first, ...others] = branches.filter((branch) => branch !== undefined);
    for (const other of others) {
      if (first !== undefined && other.kind !== first.kind) {
        report(at, { code: 'kind', wanted: first.kind, found: other.kind });
      }
    }
    return first === undefined ? undefined : { kind: first.kind, unit: unitOf(branches) };
  };

  /** Operands that are set against each other or added up are of one unit; a plain number goes with any. */
  const checkUnits = (
    nodes: readonly Expression[],
    named: readonly (Named | undefined)[],
    at: string,
  ): void => {
    const wantedUnit = unitOf(named);
    for (const [index, each] of named.entries()) {
      if (wantedUnit === undefined || each?.unit === undefined || each.unit === wantedUnit) continue;
      const id = nameOf(nodes[index] as Expression);
      report(at, { code: 'units', id, found: each.unit, wanted: wantedUnit });
    }
  };

  const compare = (call: Call, named: readonly (Named | undefined)[], at: string): void => {
    const { operator, operands: nodes } = call;
    const [left, right] = named;
    if (KEEPS_UNIT.includes(operator) || OPERATORS[operator]?.gives === 'truth') checkUnits(nodes, named, at);
    if (nodes.length !== 2 || left === undefined || right === undefined) return;
    if (left.kind !== right.kind) report(at, { code: 'kind', wanted: left.kind, found: right.kind });
    checkWord(nodes[0] as Expression, left, nodes[1] as Expression, at);
    checkWord(nodes[1] as Expression, right, nodes[0] as Expression, at);
  };

  const checkWord = (node: Expression, named: Named | undefined, word: Expression, at: string): void => {
    if (named?.words === undefined || typeof word !== 'string' || named.words.includes(word)) return;
    report(at, { code: 'option', id: nameOf(node), found: word, allowed: named.words.join(', ') });
  };

  walk(expression, wanted, pointer, 0);
  return problems;
}

/** Operators whose result is in the unit of their operands. */
const KEEPS_UNIT: readonly string[] = ['+', '-', 'min', 'max'];

const unitOf = (named: readonly (Named | undefined)[]): string | undefined =>
  named.find((each) => each?.unit !== undefined)?.unit;

function nameOf(node: Expression): string {
  const call = callOf(node);
  return call?.operator === 'var' ? String(call.operands[0]) : JSON.stringify(node);
}
