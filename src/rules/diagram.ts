/**
 * Decision diagrams: what an expression comes to for every combination of the answers that are still open.
 *
 * A diagram is a leaf, or a choice by one variable with a branch for each of its cells. Variables stand in one order
 * and equal diagrams are one object, so a diagram holds a variable if and only if its outcome depends on it.
 */
import type { Value } from './evaluate.js';

/** What stands at the end of a branch. */
export type Term =
  | { readonly kind: 'value'; readonly key: string; readonly value: Value }
  /** Open for good: nothing is assumed in its place. */
  | { readonly kind: 'nothing'; readonly key: string }
  /** A value that is not known beyond its bounds; `question` when it is the plain answer to one. */
  | {
      readonly kind: 'some';
      readonly key: string;
      readonly reads: readonly string[];
      readonly least: number;
      readonly most: number;
      readonly question?: string;
    };

export interface Diagram {
  readonly id: number;
  /** Rank of the variable; infinite for a leaf. */
  readonly rank: number;
  readonly branches: readonly Diagram[];
  readonly term?: Term;
}

export interface DiagramStore {
  leaf(term: Term): Diagram;
  /** Outcome by the cell of one variable; branches may hold any variables. */
  choice(rank: number, branches: readonly Diagram[]): Diagram;
  /** The operation on every combination of leaves; `name` tells operations apart in the memory. */
  combine(
    name: string,
    operands: readonly Diagram[],
    operation: (terms: readonly Term[]) => Diagram,
  ): Diagram;
  /** Diagrams made so far. */
  size(): number;
}

const LEAF_RANK = Number.POSITIVE_INFINITY;

/** Thrown when the diagrams grow beyond what is worth the wait. */
export class TooManyCells extends Error {
  override readonly name = 'TooManyCells';
}

/** @param most diagrams that may be made before `TooManyCells` is thrown */
export function openDiagramStore(most: number): DiagramStore {
  const known = new Map<string, Diagram>();
  const combined = new Map<string, Map<number | string, Diagram>>();
  const keep = (key: string, make: (id: number) => Diagram): Diagram => {
    const before = known.get(key);
    if (before !== undefined) return before;
    if (known.size >= most) throw new TooManyCells(`more than ${most} diagrams`);
    const made = make(known.size);
    known.set(key, made);
    return made;
  };
  const leaf = (term: Term): Diagram =>
    keep(`${term.kind} ${term.key}`, (id) => ({ id, rank: LEAF_RANK, branches: [], term }));
  const node = (rank: number, branches: readonly Diagram[]): Diagram => {
    const [first] = branches as [Diagram];
    if (branches.every((branch) => branch === first)) return first;
    return keep(`${rank}:${idsOf(branches)}`, (id) => ({ id, rank, branches }));
  };
  const choice = (rank: number, branches: readonly Diagram[]): Diagram => {
    const top = Math.min(rank, ...branches.map((branch) => branch.rank));
    if (top === rank)
      return node(
        rank,
        branches.map((branch, cell) => at(branch, rank, cell)),
      );
    const upper = branches.find((branch) => branch.rank === top) as Diagram;
    return node(
      top,
      upper.branches.map((_, cell) =>
        choice(
          rank,
          branches.map((branch) => at(branch, top, cell)),
        ),
      ),
    );
  };
  const combine: DiagramStore['combine'] = (name, operands, operation) => {
    const results = combined.get(name) ?? new Map<number | string, Diagram>();
    combined.set(name, results);
    const [first, second, ...more] = operands as [Diagram, Diagram | undefined];
    // Pairs are by far the most, and a number is the quicker key.
    const key = more.length > 0 ? idsOf(operands) : first.id * most + (second?.id ?? 0);
    const before = results.get(key);
    if (before !== undefined) return before;
    let upper = first;
    for (const operand of operands) if (operand.rank < upper.rank) upper = operand;
    const top = upper.rank;
    const made =
      top === LEAF_RANK
        ? operation(operands.map((operand) => operand.term as Term))
        : choice(
            top,
            upper.branches.map((_, cell) =>
              combine(
                name,
                operands.map((operand) => at(operand, top, cell)),
                operation,
              ),
            ),
          );
    results.set(key, made);
    return made;
  };
  return { leaf, choice, combine, size: () => known.size };
}

const idsOf = (diagrams: readonly Diagram[]): string => diagrams.map(({ id }) => id).join();

/** The diagram once the variable lies in that cell; `rank` is no lower than the diagram's own. */
const at = (diagram: Diagram, rank: number, cell: number): Diagram =>
  diagram.rank === rank ? (diagram.branches[cell] as Diagram) : diagram;
