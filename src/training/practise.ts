/** What to practise after an attempt, worst first; nothing when nothing was lost. */
import { type Attempt, lookIds } from './attempt.js';
import type { Marks } from './marks.js';
import type { WorkedCase } from './worked-case.js';

export function practiseOf({ good, pack }: WorkedCase, attempt: Attempt, marks: Marks): string[] {
  const { parts, dangers, diagnosis, amounts, steps } = marks;
  const label = (id: string): string => pack.questionById.get(id)?.label ?? id;
  const title = (id: string): string => pack.findingById.get(id)?.title ?? id;
  const unseen = [...good].filter((id) => !lookIds(attempt).includes(id));
  const lines: (string | false)[] = [
    dangers.some(({ isMissed }) => isMissed) &&
      `Safety first: ask about ${list(dangers.filter(({ isMissed }) => isMissed).map(({ look }) => label(look)))} before anything is touched.`,
    attempt.mode === 'whole' && unseen.length > 0 && `Looks you left out: ${list(unseen.map(label))}.`,
    (parts.economy ?? 1) < 1 && 'Ask yourself before each look what each answer would change.',
    diagnosis.missed.length > 0 &&
      attempt.commitment !== undefined &&
      `Telling: ${list(diagnosis.missed.map(title))}.`,
    diagnosis.wrong.length > 0 && `The look-alikes: ${list(diagnosis.wrong.map(title))}.`,
    isTooSure(marks) &&
      'You were surer than you were right: say 60 when you have one sign, 90 when you have two.',
    isTooShy(marks) && 'You were right oftener than you were sure: trust two signs that agree.',
    ...amounts.flatMap(({ slip, mark }) => (slip === null || mark === 1 ? [] : [`Sums: ${slip}`])),
    steps.broken.length > 0 && 'The order of the work: what each step waits for.',
    steps.mistaken.length > 0 && 'Leaving work undone: each step needs a reason of its own.',
  ];
  return lines.filter((line) => line !== false);
}

function isTooSure({ claims }: Marks): boolean {
  return (
    claims.length > 0 && meanSureness(claims) > meanRight(claims) && claims.some(({ isRight }) => !isRight)
  );
}

/** Right throughout and yet no surer than a toss. */
function isTooShy({ claims }: Marks): boolean {
  return claims.length > 0 && claims.every(({ isRight }) => isRight) && meanSureness(claims) <= 3 / 4;
}

const meanSureness = (claims: Marks['claims']): number =>
  claims.reduce((sum, { sure }) => sum + sure, 0) / claims.length;
const meanRight = (claims: Marks['claims']): number =>
  claims.filter(({ isRight }) => isRight).length / claims.length;

const list = (words: readonly string[]): string => words.join(', ');
