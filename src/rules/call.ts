import type { Expression } from './schema.js';

export interface Call {
  readonly operator: string;
  readonly operands: readonly Expression[];
  /** Whether the operands are written as a list, and not one alone. */
  readonly isList: boolean;
}

/**
 * The operator and operands of an expression, or undefined for a literal.
 * An object with any other number of keys than one is no call: lint.ts refuses it, evaluate.ts never sees it.
 */
export function callOf(expression: Expression): Call | undefined {
  if (typeof expression !== 'object' || Array.isArray(expression)) return undefined;
  const [operator, ...more] = Object.keys(expression);
  if (operator === undefined || more.length > 0) return undefined;
  const operand = (expression as Record<string, Expression>)[operator] as Expression;
  return Array.isArray(operand)
    ? { operator, operands: operand, isList: true }
    : { operator, operands: [operand], isList: false };
}

/** Every name that a `var` in the expression reads, each once, in order of appearance. */
export function namesIn(expression: Expression): string[] {
  const names = new Set<string>();
  const walk = (node: Expression): void => {
    const call = callOf(node);
    if (call === undefined) {
      if (Array.isArray(node)) node.forEach(walk);
      return;
    }
    if (call.operator === 'var') names.add(String(call.operands[0]));
    else call.operands.forEach(walk);
  };
  walk(expression);
  return [...names];
}
