/** Puts answers, stretches and changes into the pack's own sentences. */
import { capital } from '../base/joined-words.js';
import { plainNumber } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import type { End, Stretch } from './reach.js';

export type WordingName = keyof Pack['wording'];

/** A template of the pack with its slots filled. */
export function worded(pack: Pack, name: WordingName, values: Readonly<Record<string, string>> = {}): string {
  const text = pack.wording[name].replace(/\{(\w+)\}/g, (slot, key: string) => values[key] ?? slot);
  return capital(text);
}

/** The same inside a sentence. */
export function wordedInside(
  pack: Pack,
  name: WordingName,
  values: Readonly<Record<string, string>> = {},
): string {
  return pack.wording[name].replace(/\{(\w+)\}/g, (slot, key: string) => values[key] ?? slot);
}

export function listed(pack: Pack, items: readonly string[], joint: 'and' | 'or' = 'and'): string {
  if (items.length < 2) return items[0] ?? '';
  const last = items.at(-1) as string;
  return wordedInside(pack, joint === 'and' ? 'listAnd' : 'listOr', {
    items: items.slice(0, -1).join(', '),
    last,
  });
}

/** `20 % or more`, `above 4 hours a day and below 6 hours a day`. */
export function stretchWords(
  { pack, units }: { readonly pack: Pack; readonly units: Units },
  question: Question,
  { from, to }: Stretch,
): string {
  const end = (name: WordingName, { value }: End): string =>
    wordedInside(pack, name, { limit: numberWords(question, value, units) });
  const least = question.bounds?.min ?? 0;
  const only = to?.value === (from?.value ?? least) ? to : undefined;
  if (only !== undefined) return end('exactly', only);
  const parts = [
    ...(from === undefined ? [] : [end(from.isWithin ? 'orMore' : 'above', from)]),
    ...(to === undefined ? [] : [end(to.isWithin ? 'orLess' : 'below', to)]),
  ];
  return listed(pack, parts);
}

/** A limit is a length of time, where an answer is a day. */
function numberWords(question: Question, value: number, units: Units): string {
  return question.kind === 'days-ago' ? `${plainNumber(value)} days` : showAnswer(question, value, units);
}
