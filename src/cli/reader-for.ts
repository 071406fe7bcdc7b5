/** Reads what is typed for a question. Loaded after the first question is on the screen: it is the heaviest part. */
import type { IsoDate } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import { readAnswer } from '../interview/read-answer.js';
import type { Reading } from '../interview/reading.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import { readPlace } from './read-place.js';

/** Reads typed text; a place is looked up at once, so that a slip is seen while it can be mended. */
export function readerFor(
  pack: Pack,
  today: IsoDate,
  units: Units = 'metric',
): (question: Question, typed: string) => Reading {
  return (question, typed) =>
    question.kind === 'place' ? readPlace(typed, pack, units) : readAnswer(question, typed, today, units);
}
