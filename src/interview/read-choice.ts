/** Reads a choice typed as a number of the list, a value, words of a label, a beginning, or with a small slip. */
import { cleanLine } from '../base/clean-text.js';
import { nearest } from '../base/nearest.js';
import type { Question } from '../rules/schema.js';
import type { Reading } from './reading.js';

type Option = NonNullable<Question['options']>[number];

/** `3`, `#3`, `3.` or `3)`. */
export const NUMBER_OF_LIST = /^#?(\d{1,3})[.)]?$/;

/** One option of the list; the reading repeats its label. */
export function readChoice(question: Question, typed: string): Reading {
  const options = question.options ?? [];
  const [, position] = NUMBER_OF_LIST.exec(cleanLine(typed)) ?? [];
  if (position !== undefined) {
    const option = options[Number(position) - 1];
    return option === undefined ? refused(`There is no ${position} in the list.`, options) : chosen(option);
  }
  const text = plain(typed);
  if (text === '') return refused('Nothing was typed.', options);
  const found = candidates(text, options);
  const [only, another] = found;
  if (only === undefined) return refused('That is not in the list.', options);
  if (another === undefined) return question.safety === true ? safelyChosen(text, only) : chosen(only);
  return {
    kind: 'which',
    says: 'That fits more than one. Which is it?',
    choices: found.map(({ label, value }) => ({ label, value })),
  };
}

const YES = /^(?:y|yes|yep|yeah|yup|aye|true|1|sometimes|often|always|of course|i do|it does|it is)$/;
const NO = /^(?:n|no|nope|nah|false|2|never|none|not at all|no way|not any)$/;

/** Yes or no and nothing else, in any of its words; undefined for all besides. */
export function bareYesNo(typed: string): boolean | undefined {
  const text = cleanLine(typed)
    .toLowerCase()
    .replace(/[.!]+$/, '');
  if (YES.test(text)) return true;
  return NO.test(text) ? false : undefined;
}

/** Yes or no; a remark after a comma is let pass. */
export function readYesNo(typed: string): Reading {
  const text =
    cleanLine(typed)
      .toLowerCase()
      .split(/[,;.!]/)[0]
      ?.trim() ?? '';
  if (YES.test(text)) return { kind: 'value', value: true, understood: 'yes' };
  if (NO.test(text)) return { kind: 'value', value: false, understood: 'no' };
  const [, word, more] = /^(yes|no)\s+(?!idea|clue|and\b|or\b)(.*)$/.exec(text) ?? [];
  if (word !== undefined && more !== undefined)
    return { kind: 'odd', value: word === 'yes', understood: word, says: `I read that as: ${word}.` };
  return { kind: 'refused', says: "Type yes or no, or don't know." };
}

/** The options that words may mean: none, one, or several to choose from. */
export function optionsMeant<Named extends Option>(
  options: readonly Named[],
  typed: string,
): readonly Named[] {
  const text = plain(typed);
  return text === '' ? [] : candidates(text, options);
}

/** The options of the first way of matching that finds any: exact, beginning, words, slip. */
function candidates<Named extends Option>(text: string, options: readonly Named[]): readonly Named[] {
  const exact = options.filter((option) => names(option).includes(text));
  if (exact.length > 0) return exact;
  const begun = options.filter((option) => names(option).some((name) => name.startsWith(text)));
  if (begun.length > 0) return begun;
  const worded = options.filter((option) => hasWords(text, option));
  if (worded.length > 0) return worded;
  const meant = nearest(text, options.flatMap(names));
  if (meant !== undefined) return options.filter((option) => names(option).includes(meant));
  const word = nearest(text, options.flatMap(nameWords));
  return options.filter((option) => word !== undefined && nameWords(option).includes(word));
}

function names(option: Option): string[] {
  return [plain(option.value), plain(option.label)];
}

function nameWords(option: Option): string[] {
  return names(option).flatMap((name) => name.split(' '));
}

/** Every typed word begins some word of the option; its hint counts too. */
function hasWords(text: string, option: Option): boolean {
  const words = [...nameWords(option), ...plain(option.hint ?? '').split(' ')];
  return text.split(' ').every((typed) => words.some((word) => word.startsWith(typed)));
}

function chosen(option: Option): Reading {
  return { kind: 'value', value: option.value, understood: option.label };
}

/** Where people can be hurt, a word that is only like an option is asked about and not taken. */
function safelyChosen(text: string, option: Option): Reading {
  if (names(option).includes(text)) return chosen(option);
  const says = `I read that as: ${option.label}.`;
  return { kind: 'odd', value: option.value, understood: option.label, says };
}

function refused(what: string, options: readonly Option[]): Reading {
  const example = options[0]?.label ?? '';
  return {
    kind: 'refused',
    says: `${what} Type a number from 1 to ${options.length}, or words such as "${example}", or don't know.`,
  };
}

/** Lower case, words joined by single spaces, no signs and no articles. */
function plain(text: string): string {
  return cleanLine(text)
    .toLowerCase()
    .replace(/[’']/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .replace(/\b(?:an?|the|it is|its|its a)\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
