/** Whether a value may still stand as the answer to a question of these rules. */
import type { IsoDate } from '../base/dates.js';
import { checkAnswers, checkEach } from '../interview/check-answers.js';
import type { Pack } from '../rules/pack.js';
import type { AreaAnswer, SavedAnswer } from '../session/saved-session.js';
import { answersContext } from './answers-context.js';

export function fitsQuestions(pack: Pack, today: IsoDate): (answer: SavedAnswer) => boolean {
  return ({ questionId, value }) => checkAnswers({ [questionId]: value }, answersContext(pack, today)).ok;
}

export interface SoundAnswers {
  readonly answers: readonly SavedAnswer[];
  readonly inAreas: readonly AreaAnswer[];
  /** Those that no question of these rules allows. */
  readonly setAside: readonly SavedAnswer[];
  /** For each of them: key, what was found, what is allowed. */
  readonly faults: readonly string[];
}

/** Saved answers pass the same check as those of an answers file before they are answers. */
export function soundOf(
  { answers, inAreas }: Pick<SoundAnswers, 'answers' | 'inAreas'>,
  pack: Pack,
  today: IsoDate,
): SoundAnswers {
  const context = answersContext(pack, today);
  const faults: string[] = [];
  const setAside: SavedAnswer[] = [];
  const isSound = (answer: SavedAnswer): boolean => {
    const found = checkEach({ [answer.questionId]: answer.value }, context).faults;
    faults.push(...found);
    if (found.length > 0) setAside.push(answer);
    return found.length === 0;
  };
  return { answers: answers.filter(isSound), inAreas: inAreas.filter(isSound), setAside, faults };
}
