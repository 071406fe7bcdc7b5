/** Small turns of phrase: sentences that end in a stop, lists in words, units as a reader expects them. */
import { joinedWords } from '../base/joined-words.js';
import { oneLine } from './one-line.js';

/** Days and months keep their capital wherever they stand. */
const CALENDAR_NAME =
  /^(?:(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day|January|February|March|April|May|June|July|August|September|October|November|December)\b/;
const ENDS_A_SENTENCE = /[.?!:…]["'’”)]?$/;
/** An ordinary capital: not the start of pH, NPK or the like. */
const ORDINARY_CAPITAL = /^(?:\p{Lu}(?=\p{Ll})|A(?= ))/u;
const ORDINARY_SMALL = /^(?:\p{Ll}(?=\p{Ll})|a(?= ))/u;

/** Words of the pack or the planner, cleaned, with m2 and ft2 written as m² and ft². Never for what a person typed. */
export function said(text: string): string {
  return oneLine(text).replace(/\b(m|ft)2\b/g, '$1²');
}

/** The words as a sentence: a capital first, a stop last; an empty text stays empty. */
export function sentence(text: string): string {
  return stopped(text).replace(ORDINARY_SMALL, (letter) => letter.toUpperCase());
}

/** The words with a stop last and their first letter untouched, for titles and names. */
export function stopped(text: string): string {
  const words = said(text);
  return words === '' || ENDS_A_SENTENCE.test(words) ? words : `${words}.`;
}

/** The words without a full stop at the end. */
export function withoutStop(text: string): string {
  return said(text).replace(/\.$/, '');
}

/** The sentence with a mark such as `(source 3)` set before its stop. */
export function markedSentence(text: string, mark: string): string {
  const whole = sentence(text);
  if (whole === '' || mark === '') return whole;
  return whole.endsWith('.') ? `${whole.slice(0, -1)} ${mark}.` : `${whole} ${mark}`;
}

/** A title as it stands in the middle of a sentence. */
export function midSentence(text: string): string {
  const words = withoutStop(text);
  if (CALENDAR_NAME.test(words)) return words;
  return words.replace(ORDINARY_CAPITAL, (letter) => letter.toLowerCase());
}

/** The words after a colon: a small letter first, a stop last. */
export function clause(text: string): string {
  const words = midSentence(text);
  return words === '' || ENDS_A_SENTENCE.test(words) ? words : `${words}.`;
}

/** `a`, `a and b`, `a, b and c`. */
export const inWords = (items: readonly (string | number)[]): string => joinedWords(items.map(String));

/** `1 step`, `3 steps`; the plural is the singular with an s unless given. */
export function counted(count: number, singular: string, plural = `${singular}s`): string {
  return `${count} ${count === 1 ? singular : plural}`;
}
