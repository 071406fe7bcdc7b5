/** What to practise after an attempt, worst first; nothing when nothing was lost. The words are the pack's. */
import { type Attempt, lookIds } from './attempt.js';
import type { Marks } from './marks.js';
import type { WorkedCase } from './worked-case.js';

export function practiseOf({ good, pack, marking }: WorkedCase, attempt: Attempt, marks: Marks): string[] {
  const { parts, dangers, diagnosis, amounts, steps } = marks;
  const { practise } = marking;
  const label = (id: string): string => pack.questionById.get(id)?.label ?? id;
  const title = (id: string): string => pack.findingById.get(id)?.title ?? id;
  const stepTitle = (id: string): string => pack.stepById.get(id)?.title ?? id;
  const about = (words: string, names: readonly string[]): string[] =>
    names.length === 0 ? [] : [words.replace('{names}', names.join('; '))];
  const overlooked = dangers
    .filter(({ isMissed, fate }) => isMissed && fate !== 'overdosed')
    .map(({ look }) => look);
  const unseen = [...good].filter((id) => !lookIds(attempt).includes(id) && !overlooked.includes(id));
  const wrong = amounts.filter(({ mark }) => mark < 1);
  return [
    ...about(practise.dangers, overlooked.map(label)),
    ...(attempt.mode === 'whole' ? about(practise.looks, unseen.map(label)) : []),
    ...((parts.economy ?? 1) < 1 ? [practise.economy] : []),
    ...(attempt.commitment === undefined ? [] : about(practise.findings, diagnosis.missed.map(title))),
    ...about(practise.lookAlikes, diagnosis.wrong.map(title)),
    ...(isTooSure(marks) ? [practise.tooSure] : []),
    ...(isTooShy(marks, practise.shyUpTo) ? [practise.tooShy] : []),
    ...wrong.map(({ slip, asked }) => practise.sum.replace('{slip}', slip ?? asked.ask)),
    ...about(practise.steps, steps.missed.map(stepTitle)),
    ...(steps.broken.length > 0 ? [practise.order] : []),
    ...(steps.mistaken.length > 0 ? [practise.mistaken] : []),
    ...(attempt.hints.length > 0 ? [practise.hints] : []),
  ];
}

function isTooSure({ claims }: Marks): boolean {
  return (
    claims.length > 0 && meanSureness(claims) > meanRight(claims) && claims.some(({ isRight }) => !isRight)
  );
}

/** Right throughout and yet not much surer than a toss. */
function isTooShy({ claims }: Marks, upTo: number): boolean {
  return claims.length > 0 && claims.every(({ isRight }) => isRight) && meanSureness(claims) <= upTo;
}

const meanSureness = (claims: Marks['claims']): number =>
  claims.reduce((sum, { sure }) => sum + sure, 0) / claims.length;
const meanRight = (claims: Marks['claims']): number =>
  claims.filter(({ isRight }) => isRight).length / claims.length;
