/** Judges a number against what its question calls impossible and what it calls odd. */
import { shown } from '../base/quantity/show.js';
import { inward } from '../base/quantity-words.js';
import { type Units, usScale } from '../base/us-units.js';
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
  { answer = value, units = 'metric' }: { readonly answer?: AnswerValue; readonly units?: Units } = {},
): Reading {
  const { bounds } = question;
  if (!Number.isFinite(value))
    return refused("That is not a number I can use. Type it again, or don't know.");
  if (bounds === undefined) return { kind: 'value', value: answer, understood };
  if (value < bounds.min || value > bounds.max) {
    return refused(`${capital(understood)} cannot be. ${limits(question, units)} (${bounds.says})`);
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
  units: Units = 'metric',
): Reading {
  const inside = choices.filter(({ value }) => withinBounds(question, value, '').kind !== 'refused');
  const [only, another] = inside;
  if (only === undefined) return refused(`${says} ${limits(question, units)}`);
  if (another === undefined) return withinBounds(question, only.value, only.label, { units });
  return { kind: 'which', says, choices: inside };
}

/** `Give a number from 0 to 18, or don't know.` */
export function limits(question: Question, units: Units = 'metric'): string {
  const { bounds, kind } = question;
  if (bounds === undefined) return "Type it again, or don't know.";
  if (kind === 'fraction') return "Give a share from 0 % to 100 %, or don't know.";
  const { from, to, unit } = boundsIn(question.unit, bounds, units);
  const unitWords =
    unit === undefined || /^(?:pH|in your)/.test(unit) || / (?!oz|ft2)/.test(unit) ? '' : ` ${unit}`;
  return `Give a number from ${from} to ${to}${unitWords}, or don't know.`;
}

/** The bounds as they are asked for; in US units two figures of them, and never wider than they are. */
export function boundsIn(
  unit: string | undefined,
  { min, max }: { readonly min: number; readonly max: number },
  units: Units,
): { readonly from: string; readonly to: string; readonly unit: string | undefined } {
  const scale = units === 'metric' || unit === undefined ? undefined : usScale(max, unit);
  if (scale === undefined) return { from: shown(min), to: shown(max), unit };
  const ends = inward({ min: scale.of(min), max: scale.of(max) });
  return { from: shown(ends.min), to: shown(ends.max), unit: scale.unit };
}

function refused(says: string): Reading {
  return { kind: 'refused', says };
}

/** The text with a capital first letter; "pH" keeps its own. */
function capital(text: string): string {
  return text.startsWith('pH') ? text : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** The value in words, "about" before it when it was typed so. */
export function aboutAnswer(
  question: Question,
  value: AnswerValue,
  approximate: boolean,
  units?: Units,
): string {
  const words = showAnswer(question, value, units);
  return approximate && !words.startsWith('about ') ? `about ${words}` : words;
}
