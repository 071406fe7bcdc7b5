/** What the stages of a drill share: who is asked, about which case, and how a typed line is heard. */
import type { Marking } from '../../rules/schema-case.js';
import type { Asker } from '../../terminal/asker.js';
import type { TakenHint } from '../../training/attempt.js';
import { type Hint, withHint } from '../../training/hints.js';
import { type Named, nameMeant, notMeant } from '../../training/looks.js';
import type { WorkedCase } from '../../training/worked-case.js';

export interface DrillParts {
  readonly asker: Asker;
  readonly worked: WorkedCase;
  /** What a "suppose …" is answered with, at any moment. */
  readonly whatIf: (typed: string) => string;
  readonly feedback: Marking['feedback'][keyof Marking['feedback']];
}

/** They have left; nothing more will be typed. */
export class DrillLeft extends Error {
  override readonly name = 'DrillLeft';
}

/** What a typed line needs: someone to ask and, where a case is drilled, the what-ifs. */
export type Hearing = Pick<DrillParts, 'asker'> &
  Partial<Pick<DrillParts, 'whatIf'>> & {
    /** What "hint" is answered with, where there is help to be had. */
    readonly hint?: () => string;
  };

const SUPPOSE = /^(?:what if|suppose)\b\s*/i;
export const LEAVING = /^(?:quit|exit|save)$/i;

/**
 * A line that was typed. "back" undoes nothing here: what has been seen has been seen.
 *
 * @throws {DrillLeft} at the end of input, on Ctrl-C, or when they say so
 */
export async function typedLine({ asker, whatIf, hint }: Hearing, message: string): Promise<string> {
  for (;;) {
    const line = await asker.line(message, '');
    if (line !== undefined && whatIf !== undefined && SUPPOSE.test(line)) {
      asker.say(whatIf(line.replace(SUPPOSE, '')));
      continue;
    }
    if (hint !== undefined && line?.trim().toLowerCase() === 'hint') {
      asker.say(hint());
      continue;
    }
    if (line !== undefined && !LEAVING.test(line.trim())) return line.trim();
    if (line !== undefined || asker.left?.() !== undefined) throw new DrillLeft();
    asker.say('There is no way back in a drill: what has been seen has been seen. "quit" leaves.');
  }
}

/** Shows numbered names and takes several of them, with commas between; "none" is allowed. */
export async function typedNames<Item extends Named>(
  parts: Hearing,
  message: string,
  items: readonly Item[],
): Promise<Item[]> {
  parts.asker.say(numberedList(items));
  for (;;) {
    const line = await typedLine(parts, message);
    if (/^none$/i.test(line)) return [];
    const words = wordsOf(line);
    const meant = words.map((word) => ({ word, item: nameMeant(word, items) }));
    const lost = meant.filter(({ item }) => item === undefined).map(({ word }) => notMeant(word, items));
    if (lost.length === 0 && words.length > 0)
      return [...new Set(meant.flatMap(({ item }) => (item === undefined ? [] : [item])))];
    const way = 'Type numbers of the list or words of it, with commas between, or none.';
    parts.asker.say([...lost, way].join('\n'));
  }
}

/** A hint with what it costs; the last rung said again costs nothing more. */
export function saidHint({ marking }: WorkedCase, taken: readonly TakenHint[], hint: Hint): string {
  const isFree = withHint(taken, hint).length === taken.length;
  return `${hint.says} (This hint costs ${isFree ? 'nothing more' : marking.hintCosts[hint.rung]}.)`;
}

export const wordsOf = (line: string): string[] =>
  line
    .split(/[,;]/)
    .map((word) => word.trim())
    .filter((word) => word !== '');

export function numberedList(items: readonly Named[]): string {
  const digits = String(items.length).length;
  return items.map(({ label }, index) => `  ${String(index + 1).padStart(digits)}  ${label}`).join('\n');
}
