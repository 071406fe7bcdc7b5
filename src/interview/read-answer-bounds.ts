/** Judges a number against what its question calls impossible and what it calls odd. */
import { shown } from '../base/quantity/show.js';
import type { Question } from '../rules/schema.js';
import type { AnswerValue } from './answers.js';
import type { Reading } from './reading.js';
import { showAnswer } from './show-answer.js';

/**
 * The number as a reading: refused when it is impossible, odd when it is rare, otherwise a value.
 *
 * @param value in the question's own unit
 * @param understood how the typed text was read, in words
 * @param answer what is handed on instead of the number, such as the parts of a lawn
 */
export function withinBounds(
  question: Question,
  value: number,
  understood: string,
  answer: AnswerValue = value,
): Reading {
  const { bounds } = question;
  if (!Number.isFinite(value))
    return refused("That is not a number I can use. Type it again, or don't know.");
  if (bounds === undefined) return { kind: 'value', value: answer, understood };
  if (value < bounds.min || value > bounds.max) {
    return refused(`${capital(understood)} cannot be. ${limits(question)} (${bounds.says})`);
  }
  const isOdd = value < (bounds.oddBelow ?? bounds.min) || value > (bounds.oddAbove ?? bounds.max);
  if (!isOdd) return { kind: 'value', value: answer, understood };
  return {
    kind: 'odd',
    value: answer,
    understood,
    says: `${capital(understood)} is possible, but rare. ${bounds.says}`,
  };
}

/** A choice between readings: those out of bounds fall away, and one that is left alone is taken. */
export function whichWithin(
  question: Question,
  says: string,
  choices: readonly { readonly label: string; readonly value: number }[],
): Reading {
  const inside = choices.filter(({ value }) => withinBounds(question, value, '').kind !== 'refused');
  const [only, another] = inside;
  if (only === undefined) return refused(`${says} ${limits(question)}`);
  if (another === undefined) return withinBounds(question, only.value, only.label);
  return { kind: 'which', says, choices: inside };
}

/** `Give a number from 0 to 18, or don't know.` */
export function limits(question: Question): string {
  const { bounds, kind, unit } = question;
  if (bounds === undefined) return "Type it again, or don't know.";
  if (kind === 'fraction') return "Give a share from 0 % to 100 %, or don't know.";
  const unitWords = unit === undefined || /^(?:pH|in your)/.test(unit) || / /.test(unit) ? '' : ` ${unit}`;
  return `Give a number from ${shown(bounds.min)} to ${shown(bounds.max)}${unitWords}, or don't know.`;
}

function refused(says: string): Reading {
  return { kind: 'refused', says };
}

/** The text with a capital first letter; "pH" keeps its own. */
function capital(text: string): string {
  return text.startsWith('pH') ? text : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** The value in words, "about" before it when it was typed so. */
export function aboutAnswer(question: Question, value: AnswerValue, approximate: boolean): string {
  const words = showAnswer(question, value);
  return approximate && !words.startsWith('about ') ? `about ${words}` : words;
}
