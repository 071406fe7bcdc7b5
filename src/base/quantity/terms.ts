/** Numbers with their units, one after the other: `12 ft 6 in` is two terms. */
import { type NotUnderstood, unclear } from './result.js';
import { type NumberToken, type Token, tokens } from './tokens.js';
import type { Vocabulary } from './words.js';

export interface Term {
  readonly number: NumberToken;
  readonly word: string | undefined;
}

/** The tokens of a text, or a failure when a number cannot be read or is below 0. */
export function positiveTokens(text: string, what: string): Token[] | NotUnderstood {
  const list = tokens(text);
  if (list === null) return unclear(`"${text}" has a number that cannot be read. Type it like 1234 or 12.5.`);
  if (list[0]?.kind === 'sign' && list[0].text === '-')
    return unclear(`There is no such thing as ${what} below 0.`);
  return list;
}

/** The terms of a list of tokens, or a failure when they are not numbers with at most one word each. */
export function readTerms(list: readonly Token[], what: string, usual: string): Term[] | NotUnderstood {
  const terms: Term[] = [];
  for (let at = 0; at < list.length; at += 1) {
    const number = list[at];
    if (number?.kind !== 'number') return unclear(`That is not ${what}. Type a number and a unit: ${usual}.`);
    const next = list[at + 1];
    terms.push({ number, word: next?.kind === 'word' ? next.text : undefined });
    if (next?.kind === 'word') at += 1;
  }
  if (terms.length === 0) return unclear(`That is not ${what}. Type a number and a unit: ${usual}.`);
  return terms;
}

/** The unit a word means, or a failure that names the units that are known here. */
export function unitOf<Unit extends string>(
  word: string,
  vocabulary: Vocabulary<Unit>,
): Unit | NotUnderstood {
  return vocabulary.words[word] ?? unclear(`"${word}" is not ${vocabulary.what}. Use ${vocabulary.usual}.`);
}

/** Whether something is a failure and not what was hoped for. */
export function failed(result: object | string): result is NotUnderstood {
  return typeof result === 'object' && 'ok' in result && result.ok === false;
}
