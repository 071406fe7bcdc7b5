/** Looks: which one a trainee means by what is typed, and what there is to see. */
import { cleanLine } from '../base/clean-text.js';
import { joinedWords } from '../base/joined-words.js';
import { once } from '../base/once.js';
import { UNKNOWN } from '../interview/answers.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Question } from '../rules/schema.js';
import { describedLook } from './described.js';
import { type About, rankerOf } from './ranker.js';
import { stemsOf } from './stems.js';
import { isThere, type WorkedCase } from './worked-case.js';

/** A record that can be named by its number in a list, its id, its name, or other words. */
export interface Named {
  readonly id: string;
  readonly label: string;
  /** What people say for it, where the words are not in its name. */
  readonly says?: readonly string[] | undefined;
  /** All that is written about it, for those who use other words still. */
  readonly about?: readonly About[];
}

/** What was typed, as it was heard: one record, several of which it could be any, or none. */
export type Heard<Item> =
  | { readonly kind: 'one'; readonly item: Item }
  | { readonly kind: 'which'; readonly items: readonly Item[] }
  | { readonly kind: 'none' };

/**
 * Shares of what was typed: from which a record is taken as meant, if no other comes near it; how near another is,
 * as a part of the first; and below which nobody is asked whether they meant it.
 */
const HEARING = { sureFrom: 0.6, near: 0.6, askFrom: 0.3 } as const;
const MOST_ASKED = 3;

/** What is meant by what was typed. Numbers count from 1. In doubt it asks back and does not guess. */
export function hear<Item extends Named>(typed: string, items: readonly Item[]): Heard<Item> {
  const text = cleanLine(typed).toLowerCase();
  if (text === '') return { kind: 'none' };
  if (/^\d+$/.test(text))
    return heardOf(items.slice(Number(text) - 1, Number(text)).filter(() => Number(text) > 0));
  const exact = items.find(({ id, label }) => id.toLowerCase() === text || label.toLowerCase() === text);
  if (exact !== undefined) return heardOf([exact]);
  const wanted = keyOf(text);
  const said = items.filter(({ says = [] }) => says.some((phrase) => keyOf(phrase) === wanted));
  if (said.length > 0) return heardOf(said);
  // Several words as they stand in one name, or the beginning of a name; one whole word may stand in many.
  const holding = items.filter(({ label }) => holds(label.toLowerCase(), text));
  if (holding.length === 1) return heardOf(holding);
  return ranked(text, items);
}

function holds(label: string, text: string): boolean {
  if (text.includes(' ')) return label.includes(text);
  return label.startsWith(text) && /[\p{L}\p{N}]/u.test(label.charAt(text.length));
}

function heardOf<Item>(items: readonly Item[]): Heard<Item> {
  const [item] = items;
  if (item === undefined) return { kind: 'none' };
  return items.length === 1 ? { kind: 'one', item } : { kind: 'which', items };
}

const keyOf = (text: string): string => [...stemsOf(text)].sort().join(' ') || text;

function ranked<Item extends Named>(text: string, items: readonly Item[]): Heard<Item> {
  const [best, ...others] = rankerFor(items).rank(text);
  if (best === undefined || best.share < HEARING.askFrom) return { kind: 'none' };
  const near = others.filter(({ share }) => share >= HEARING.near * best.share);
  if (best.share >= HEARING.sureFrom && near.length === 0) return { kind: 'one', item: best.item as Item };
  return { kind: 'which', items: [best, ...near].slice(0, MOST_ASKED).map(({ item }) => item as Item) };
}

const rankerFor = once((items: readonly Named[]) =>
  rankerOf(items, ({ label, about = [{ text: label, counts: 1 }] }) => about),
);

/** The one that is meant; undefined when none or more than one fits. */
export function nameMeant<Item extends Named>(typed: string, items: readonly Item[]): Item | undefined {
  const heard = hear(typed, items);
  return heard.kind === 'one' ? heard.item : undefined;
}

/** Why a name was not understood: what it could mean, each with its number in the list, or that it fits none. */
export function notMeant(typed: string, items: readonly Named[]): string {
  const heard = hear(typed, items);
  if (heard.kind === 'which') {
    const names = heard.items.map((item) => `"${item.label}" (${items.indexOf(item) + 1})`);
    return `"${typed}" is not clear to me. Did you mean ${joinedWords(names, 'or')}? Type its number or more of the words.`;
  }
  const isNumber = /^\d+$/.test(typed);
  return isNumber
    ? `There is no number ${typed}; the list goes from 1 to ${items.length}.`
    : `"${typed}" fits none of the list.`;
}

/** What is seen or said; the case's own words where it has them. */
export function whatIsSeen(worked: WorkedCase, question: Question): string {
  const own = worked.lesson.seen[question.id];
  if (own !== undefined) return own;
  if (!isThere(worked, question)) return worked.marking.lookWords.nothing;
  const value = worked.answers[question.id];
  if (value === undefined || value === UNKNOWN) return worked.marking.lookWords.unknown;
  return `${capital(showAnswer(question, value, worked.units))}.`;
}

const COSTS: readonly Question['cost'][] = ['chair', 'look', 'dig'];

/** The looks in the order of the list: to ask, to look at, to dig. */
export const listedLooks = ({ looks }: WorkedCase): Question[] =>
  COSTS.flatMap((cost) => looks.filter((question) => question.cost === cost));

/** The same list, as it can be named. */
export const namedLooks = once((worked: WorkedCase): Named[] => listedLooks(worked).map(describedLook));

export function lookMeant(worked: WorkedCase, typed: string): Question | undefined {
  const named = nameMeant(typed, namedLooks(worked));
  return worked.looks.find(({ id }) => id === named?.id);
}

/** A capital at the start, but for pH. */
export const capital = (text: string): string =>
  /^pH\b/.test(text) ? text : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
