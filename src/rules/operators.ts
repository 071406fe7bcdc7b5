/**
 * The JSON Logic that a rule may use: an allow-list with argument counts and kinds.
 * Left out on purpose: `==` and `!=` (loose), `in` on text (substring), list walkers (a rule names a fact instead),
 * `missing` (the three-valued evaluator knows what is open), `cat`, `substr`, `%`, `log`, `method`.
 */
export type Kind = 'number' | 'truth' | 'word' | 'any';

export interface Operator {
  readonly least: number;
  readonly most: number;
  readonly takes: Kind;
  readonly gives: Kind;
}

const UNBOUNDED = Number.POSITIVE_INFINITY;

export const OPERATORS: Readonly<Record<string, Operator>> = {
  and: { least: 1, most: UNBOUNDED, takes: 'truth', gives: 'truth' },
  or: { least: 1, most: UNBOUNDED, takes: 'truth', gives: 'truth' },
  '!': { least: 1, most: 1, takes: 'truth', gives: 'truth' },
  if: { least: 3, most: UNBOUNDED, takes: 'any', gives: 'any' },
  '===': { least: 2, most: 2, takes: 'any', gives: 'truth' },
  '!==': { least: 2, most: 2, takes: 'any', gives: 'truth' },
  '<': { least: 2, most: 3, takes: 'number', gives: 'truth' },
  '<=': { least: 2, most: 3, takes: 'number', gives: 'truth' },
  '>': { least: 2, most: 2, takes: 'number', gives: 'truth' },
  '>=': { least: 2, most: 2, takes: 'number', gives: 'truth' },
  in: { least: 2, most: 2, takes: 'any', gives: 'truth' },
  '+': { least: 1, most: UNBOUNDED, takes: 'number', gives: 'number' },
  '-': { least: 1, most: 2, takes: 'number', gives: 'number' },
  '*': { least: 2, most: UNBOUNDED, takes: 'number', gives: 'number' },
  '/': { least: 2, most: 2, takes: 'number', gives: 'number' },
  min: { least: 1, most: UNBOUNDED, takes: 'number', gives: 'number' },
  max: { least: 1, most: UNBOUNDED, takes: 'number', gives: 'number' },
};

/** Deeper nesting is refused: json-logic-js overflows the stack far beyond it, and nobody can read it. */
export const DEPTH_LIMIT = 32;

export const OPERATOR_NAMES: readonly string[] = ['var', ...Object.keys(OPERATORS)];
