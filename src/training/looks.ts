/** Looks: which one a trainee means by what is typed, and what there is to see. */
import { cleanLine } from '../base/clean-text.js';
import { joinedWords } from '../base/joined-words.js';
import { nearest } from '../base/nearest.js';
import { UNKNOWN } from '../interview/answers.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Question } from '../rules/schema.js';
import { isThere, type WorkedCase } from './worked-case.js';

/** A record that can be named by its number in a list, its id, or words of its name. */
export interface Named {
  readonly id: string;
  readonly label: string;
}

/** The one that is meant; undefined when none or more than one fits. Numbers count from 1. */
export function nameMeant<Item extends Named>(typed: string, items: readonly Item[]): Item | undefined {
  const fitting = namesFitting(typed, items);
  return fitting.length === 1 ? fitting[0] : undefined;
}

/** All that fit what was typed, by the closest way in which any does. */
export function namesFitting<Item extends Named>(typed: string, items: readonly Item[]): Item[] {
  const text = cleanLine(typed).toLowerCase();
  if (text === '') return [];
  if (/^\d+$/.test(text)) return items.slice(Number(text) - 1, Number(text)).filter(() => Number(text) > 0);
  const exact = items.find(({ id, label }) => id.toLowerCase() === text || label.toLowerCase() === text);
  if (exact !== undefined) return [exact];
  const starting = items.filter(({ label }) => label.toLowerCase().startsWith(text));
  if (starting.length === 1) return starting;
  const holding = items.filter(({ id, label }) => `${label} ${id}`.toLowerCase().includes(text));
  return holding.length > 0 ? holding : nearestOf(text, items);
}

function nearestOf<Item extends Named>(text: string, items: readonly Item[]): Item[] {
  const names = items.flatMap(({ id, label }) => [id, label]);
  const near = nearest(text, names);
  return items.filter(({ id, label }) => id === near || label === near).slice(0, 1);
}

/** Why a name was not understood: which ones it fits, or that it fits none. */
export function notMeant(typed: string, items: readonly Named[]): string {
  const fitting = namesFitting(typed, items).map(({ label }) => label);
  if (fitting.length > 1) return `"${typed}" can mean ${joinedWords(fitting, 'or')}. Type more of the words.`;
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

export const lookMeant = (worked: WorkedCase, typed: string): Question | undefined =>
  nameMeant(typed, listedLooks(worked));

/** A capital at the start, but for pH. */
export const capital = (text: string): string =>
  /^pH\b/.test(text) ? text : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
