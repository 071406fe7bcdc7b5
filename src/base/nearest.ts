/** The known name that a mistyped one was most likely meant to be. */

/** Longer slips are a different word. */
const MOST_EDITS = 3;

/**
 * The name nearest to what was typed, ignoring capitals; undefined when none is near.
 * Near means at most one edit in three letters, and never more than three edits.
 * Of names equally near, the first.
 */
export function nearest(typed: string, names: readonly string[]): string | undefined {
  const wanted = typed.toLowerCase();
  let best: { readonly name: string; readonly edits: number } | undefined;
  for (const name of names) {
    const allowed = Math.min(MOST_EDITS, Math.floor(Math.min(wanted.length, name.length) / 3));
    if (Math.abs(wanted.length - name.length) > allowed) continue;
    const edits = editDistance(wanted, name.toLowerCase());
    if (edits <= allowed && edits < (best?.edits ?? Number.POSITIVE_INFINITY)) best = { name, edits };
  }
  return best?.name;
}

/**
 * Fewest insertions, deletions, replacements and swaps of neighbours that turn one text into the other,
 * no part being edited twice (optimal string alignment).
 */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      current[column] = Math.min(
        at(last, column) + 1,
        at(current, column - 1) + 1,
        at(last, column - 1) + (same ? 0 : 1),
        swapped ? at(beforeLast, column - 2) + 1 : Number.POSITIVE_INFINITY,
      );
    }
    beforeLast = last;
    last = current;
  }
  return at(last, to.length);
}

/** An entry whose index the loops above keep inside the row. */
function at(row: readonly number[], index: number): number {
  return row[index] as number;
}
