/** Takes answers that were given to other rules over to the present ones. */
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import type { SavedAnswer } from './saved-session.js';

export interface MovedOver {
  /** Their question is the same and they fit it. */
  readonly kept: readonly SavedAnswer[];
  /** Their question has changed, or they no longer fit: offered as the default. */
  readonly askedAgain: readonly SavedAnswer[];
  /** Their question is gone. */
  readonly dropped: readonly SavedAnswer[];
}

export interface MoveOverInput {
  readonly answers: readonly SavedAnswer[];
  /** The rules they were given to, where those are still at hand. */
  readonly from: Pack | undefined;
  readonly to: Pack;
  /** Whether it may stand as an answer to its question in the present rules. */
  readonly fits: (answer: SavedAnswer) => boolean;
}

export function moveOver({ answers, from, to, fits }: MoveOverInput): MovedOver {
  const moved = { kept: [] as SavedAnswer[], askedAgain: [] as SavedAnswer[], dropped: [] as SavedAnswer[] };
  for (const answer of answers) {
    const now = to.questionById.get(answer.questionId);
    if (now === undefined) moved.dropped.push(answer);
    else if (isSame(from?.questionById.get(answer.questionId), now) && fits(answer)) moved.kept.push(answer);
    else moved.askedAgain.push(answer);
  }
  return moved;
}

/** Whether both ask for the same thing. What is not at hand any more is taken to be the same. */
function isSame(before: Question | undefined, now: Question): boolean {
  return before === undefined || asksFor(before) === asksFor(now);
}

const asksFor = ({ text, kind, unit, options }: Question): string =>
  JSON.stringify([text, kind, unit, options?.map(({ value, label }) => [value, label])]);
