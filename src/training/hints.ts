/** Hints in three rungs: point to where, teach why, tell which. They lead to a look, never to the diagnosis. */
import { type Attempt, HINT_RUNGS, type HintRung, lookIds } from './attempt.js';
import type { WorkedCase } from './worked-case.js';

export interface Hint {
  readonly lookId: string;
  readonly rung: HintRung;
  readonly says: string;
}

/** The next hint towards the first good look that is missing; undefined when every one has been taken. */
export function nextHint({ pack, looks, good }: WorkedCase, attempt: Attempt): Hint | undefined {
  const seen = lookIds(attempt);
  const question = looks.find(({ id }) => good.has(id) && !seen.includes(id));
  if (question === undefined) return undefined;
  const given = attempt.hints.filter(({ lookId }) => lookId === question.id).length;
  const rung = HINT_RUNGS[Math.min(given, HINT_RUNGS.length - 1)] as HintRung;
  const section = pack.sections.find(({ id }) => id === question.section)?.title ?? question.section;
  const says: Readonly<Record<HintRung, string>> = {
    point: `There is more to find out under "${section}".`,
    teach: question.why,
    tell: `Look at this: ${question.label}. ${question.text}`,
  };
  return { lookId: question.id, rung, says: says[rung] };
}
