/** The words that work at every question, and the sentences both askers share. */
import { cleanLine } from '../base/clean-text.js';
import type { Units } from '../base/us-units.js';
import { boundsIn } from '../interview/read-answer-bounds.js';
import type { Question } from '../rules/schema.js';
import type { Prompt } from './asker.js';

export type Command = 'unknown' | 'why' | 'help' | 'walk' | 'back' | 'review' | 'save' | 'quit';

const SPELLINGS: Readonly<Record<Command, string>> = {
  unknown:
    "don't know|dont know|do not know|i don't know|i dont know|dk|d/k|idk|no idea|not sure|i'm not sure|unsure|unknown|can't say|no clue",
  why: 'why|why?',
  help: 'help|?|h?|help me',
  walk: 'walk|list',
  back: 'back|go back',
  review: 'review',
  save: 'save',
  quit: 'quit|exit',
};

const COMMANDS = new Map(
  Object.entries(SPELLINGS).flatMap(([command, list]) =>
    list.split('|').map((word) => [word, command as Command] as const),
  ),
);

/** The word of the session that a whole line is, or undefined when it is an answer. */
export function commandIn(typed: string): Command | undefined {
  const text = cleanLine(typed).toLowerCase().replace(/[’‘`]/g, "'");
  return COMMANDS.get(text) ?? COMMANDS.get(text.replace(/[.!]+$/, ''));
}

export const DONT_KNOW = "don't know";
export const WORDS_LINE =
  "At any question you can type: don't know, why, help, walk, back, review; save or quit leaves, and keeps what you have answered.";
export const NOTHING_TYPED = "Type an answer, or don't know.";
export const KEEP_IT = 'Type yes to keep it, or type another answer.';
export const WHICH_ONE = 'Type the number of the one you mean, or type the answer another way.';
export const SAY_IT_AGAIN = 'If it is still so, say it again.';
export const YES_OR_NO = 'Type yes or no.';
export const LEAVE_LIST = 'leave this list as it is';

/** `Question 4, at most 12 more` */
export function countLine({ number, mayFollow }: Prompt): string {
  if (mayFollow <= 0) return `Question ${number}, the last`;
  return `Question ${number}, at most ${mayFollow} more`;
}

/** `Noted: 84 m2` */
export function notedLine(understood: string): string {
  return `Noted: ${cleanLine(understood)}`;
}

/** What is said when an answer could not be kept on disk. */
export function notKeptLine(understood: string): string {
  return `Understood, but not saved: ${cleanLine(understood)}`;
}

/** `springy (like a thin mattress)` */
export function optionLine({
  label,
  hint,
}: {
  readonly label: string;
  readonly hint?: string | undefined;
}): string {
  return cleanLine(hint === undefined ? label : `${label} (${hint})`);
}

/** The answers to list: the options of a choice, or yes and no; undefined where the answer is typed. */
export function listedAnswers(question: Question):
  | readonly {
      readonly value: string | boolean;
      readonly label: string;
      readonly hint?: string | undefined;
    }[]
  | undefined {
  if (question.kind === 'choice') return question.options ?? [];
  if (question.kind !== 'yes-no') return undefined;
  return [
    { value: true, label: 'yes' },
    { value: false, label: 'no' },
  ];
}

/** One line on how to type the answer, for the kinds that are typed. */
export function howToAnswer({ question, units }: Prompt): string {
  const { kind, suggest } = question;
  const ways: Readonly<Record<Question['kind'], string>> = {
    choice: 'Type a number of the list, or its words.',
    'yes-no': 'Type yes or no.',
    number: `Type a number${numberWords(question, units)}.`,
    fraction: 'Type a share: 40 %, 0.4, two fifths.',
    area: AREA_EXAMPLE[units],
    parts: PARTS_EXAMPLE[units],
    date:
      suggest === 'today'
        ? 'Type today, Saturday, in two weeks or 3 April.'
        : 'Type 3 April, last Tuesday or early March.',
    'days-ago': 'Type a number of days, yesterday, last Tuesday or 3 April.',
    place: 'Type a name, or latitude and longitude such as 52.1, -1.4.',
    text: 'Type a few words.',
  };
  return ways[kind];
}

const AREA_EXAMPLE: Readonly<Record<Units, string>> = {
  metric:
    'Type 84 m2, or 12 x 7 in metres. Join parts with + and take beds away with -, such as 12 x 7 + circle 3 - 2 x 1.',
  us: 'Type 900 sq ft, or 40 x 25 in feet. Join parts with + and take beds away with -, such as 40 x 25 + circle 10 - 6 x 3.',
};
const PARTS_EXAMPLE: Readonly<Record<Units, string>> = {
  metric: 'Type shapes in metres: 12 x 7 + circle 3 - 2 x 1.',
  us: 'Type shapes in feet: 40 x 25 + circle 10 - 6 x 3.',
};

function numberWords({ unit, bounds }: Question, units: Units): string {
  if (bounds === undefined) return unit === undefined ? '' : ` (${unit})`;
  const { from, to, unit: said } = boundsIn(unit, bounds, units);
  return `${said === undefined ? '' : ` (${said})`} from ${from} to ${to}`;
}
