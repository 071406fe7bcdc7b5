/**
 * The one face that the session loop talks to. Two implementations: clack at a terminal, numbered lines elsewhere.
 * An asker shows a prompt, reads what is typed, explains on request and hands back a reply; it decides nothing.
 */
import type { AnswerValue } from '../interview/answers.js';
import type { Question } from '../rules/schema.js';

export interface Prompt {
  readonly question: Question;
  /** Count of this question in the session, from 1. */
  readonly number: number;
  /** How many may still come after this one, at the most. */
  readonly mayFollow: number;
  readonly sectionTitle: string;
  /** True on the first question of a section. */
  readonly opensSection: boolean;
  /** Shown default, taken by an empty line: an earlier answer, or the question's own suggestion. */
  readonly suggested: AnswerValue | undefined;
  /** In words: the suggested value as a person would say it. */
  readonly suggestedText: string | undefined;
  /** What the plan would assume on "don't know", in words; shown after the answer. */
  readonly dontKnowText: string;
  readonly why: string;
  readonly help: string;
}

export type Reply =
  | { readonly kind: 'value'; readonly value: AnswerValue; readonly understood: string }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'back' | 'review' | 'save' | 'quit' | 'ended' };

export interface Asker {
  ask(prompt: Prompt): Promise<Reply>;
  /** Lets a person pick one of some labelled lines; undefined when they leave or input ends. */
  pick(
    message: string,
    choices: readonly { readonly value: string; readonly label: string }[],
  ): Promise<string | undefined>;
  /** Yes or no; undefined when they leave or input ends. */
  confirm(message: string, suggested: boolean): Promise<boolean | undefined>;
  /** A free line, such as a file name; undefined when they leave or input ends. */
  line(message: string, suggested: string): Promise<string | undefined>;
  say(text: string): void;
  close(): void;
}
