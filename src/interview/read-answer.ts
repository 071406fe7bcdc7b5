/**
 * Reads what a person typed as the answer to a question.
 *
 * In: a question of a pack, the typed text, today's date, the units in which a bare number is meant. Out: a value with what was understood, a doubt to
 * settle, an odd value to confirm, or a refusal that says what to type. It never throws, whatever is typed.
 * "Don't know" and the words of the session (why, back, …) are heard before this is called.
 */
import type { IsoDate } from '../base/dates.js';
import type { Units } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import { readFractionAnswer, readNumberAnswer } from './read-answer-number.js';
import { readPlace, readText } from './read-answer-text.js';
import { readChoice, readYesNo } from './read-choice.js';
import { readDate } from './read-date.js';
import { readDaysAgo } from './read-days-ago.js';
import { readArea, readParts } from './read-parts.js';
import type { Reading } from './reading.js';

/** The reading of one typed answer. */
export function readAnswer(
  question: Question,
  typed: string,
  today: IsoDate,
  units: Units = 'metric',
): Reading {
  switch (question.kind) {
    case 'choice':
      return readChoice(question, typed);
    case 'yes-no':
      return readYesNo(typed);
    case 'number':
      return readNumberAnswer(question, typed, today, units);
    case 'fraction':
      return readFractionAnswer(question, typed);
    case 'area':
      return readArea(question, typed, units);
    case 'parts':
      return readParts(question, typed, units);
    case 'date':
      return readDate(question, typed, today, units);
    case 'days-ago':
      return readDaysAgo(question, typed, today, units);
    case 'place':
      return readPlace(typed);
    case 'text':
      return readText(typed);
    default:
      return question.kind satisfies never;
  }
}
