/** Whether a value may still stand as the answer to a question of these rules. */
import type { IsoDate } from '../base/dates.js';
import { checkAnswers } from '../interview/check-answers.js';
import type { Pack } from '../rules/pack.js';
import type { SavedAnswer } from '../session/saved-session.js';
import { answersContext } from './answers-context.js';

export function fitsQuestions(pack: Pack, today: IsoDate): (answer: SavedAnswer) => boolean {
  return ({ questionId, value }) => checkAnswers({ [questionId]: value }, answersContext(pack, today)).ok;
}
