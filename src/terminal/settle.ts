/** What settles a doubt: the number or the words of one reading, or a yes to an odd one. */
import type { AnswerValue } from '../interview/answers.js';
import type { Reading } from '../interview/reading.js';

type Doubt = Extract<Reading, { kind: 'odd' | 'which' }>;

const YES = /^(?:y|yes|keep|keep it)$/i;
const NO = /^(?:n|no)$/i;
const WORD = /^\p{L}{3,}$/u;

export interface Settled {
  readonly value: AnswerValue;
  readonly understood: string;
}

/**
 * The reading that a line stands by; undefined when it settles nothing.
 *
 * @param isNamed whether the words of a reading stand for it; where they are answers themselves, they are read anew
 */
export function settled(
  about: Doubt,
  { typed, line, isNamed }: { readonly typed: string; readonly line: string; readonly isNamed: boolean },
): Settled | undefined {
  if (about.kind === 'odd') {
    const isKept = YES.test(line) || (line === typed && !NO.test(line));
    return isKept ? { value: about.value, understood: about.understood } : undefined;
  }
  const choice = about.choices[Number(line) - 1] ?? (isNamed ? onlyNamed(about.choices, line) : undefined);
  return choice === undefined ? undefined : { value: choice.value, understood: choice.label };
}

/** The only choice whose label has every word of the line, such as `september` of two days; figures are read anew. */
function onlyNamed<Choice extends { readonly label: string }>(
  choices: readonly Choice[],
  line: string,
): Choice | undefined {
  const typed = line.toLowerCase().split(/\s+/);
  if (!typed.every((word) => WORD.test(word))) return undefined;
  const named = choices.filter(({ label }) => {
    const words = label.toLowerCase().split(/[^\p{L}]+/u);
    return typed.every((start) => words.some((word) => word.startsWith(start)));
  });
  return named.length === 1 ? named[0] : undefined;
}
