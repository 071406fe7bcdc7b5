/** A table for the terminal: columns where they fit, otherwise one `label: value` line for each cell. */
import stringWidth from 'fast-string-width';
import type { TerminalStyles } from './markdown-styles.js';

interface TextTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const GAP = '  ';

/** The rows as lines; cells hold text that is already styled. */
export function tableText(table: TextTable, columns: number, styles: TerminalStyles): string {
  const widths = table.head.map((_, index) => widestIn(table, index));
  const total = widths.reduce((sum, width) => sum + width, 0) + GAP.length * (widths.length - 1);
  return total <= columns ? inColumns(table, widths, styles) : asLabels(table, styles);
}

function inColumns({ head, rows }: TextTable, widths: readonly number[], styles: TerminalStyles): string {
  const rule = widths.map((width) => '-'.repeat(width));
  const padded = (cells: readonly string[]) =>
    cells
      .map((cell, index) => cell + ' '.repeat((widths[index] ?? 0) - stringWidth(cell)))
      .join(GAP)
      .trimEnd();
  return [styles.strong(padded(head)), padded(rule), ...rows.map(padded)].join('\n');
}

/** A row is a small block: its first cell at the margin, the others set in. Empty cells say nothing. */
function asLabels({ head, rows }: TextTable, styles: TerminalStyles): string {
  const lines = rows.flatMap((row) =>
    row.flatMap((cell, index) => {
      if (cell === '') return [];
      return [`${index === 0 ? '' : GAP}${styles.strong(`${head[index] ?? ''}:`)} ${cell}`];
    }),
  );
  return lines.join('\n');
}

function widestIn({ head, rows }: TextTable, index: number): number {
  return Math.max(...[head, ...rows].map((row) => stringWidth(row[index] ?? '')));
}
