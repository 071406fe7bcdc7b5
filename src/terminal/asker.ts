/**
 * The one face that the session loop talks to. Two implementations: clack at a terminal, numbered lines elsewhere.
 * An asker shows a prompt, reads what is typed, explains on request and hands back a reply; it decides nothing.
 * What was understood is repeated by whoever keeps it, once it is kept.
 */
import type { Readable, Writable } from 'node:stream';
import type { Units } from '../base/us-units.js';
import type { AnswerValue } from '../interview/answers.js';
import type { Reading } from '../interview/reading.js';
import type { Question } from '../rules/schema.js';

export interface Prompt {
  readonly question: Question;
  /** Units that a bare number is meant in. */
  readonly units: Units;
  /** Count of this question in the session, from 1. */
  readonly number: number;
  /** How many may still come after this one, at the most. */
  readonly mayFollow: number;
  readonly sectionTitle: string;
  /** True on the first question of a section. */
  readonly opensSection: boolean;
  /** Shown default: an earlier answer, or the question's own suggestion. Enter alone takes it, but not where someone can be hurt. */
  readonly suggested: AnswerValue | undefined;
  /** In words: the suggested value as a person would say it. */
  readonly suggestedText: string | undefined;
  /** What the plan would assume on "don't know", in words; shown after the answer. */
  readonly dontKnowText: string;
  readonly why: string;
  readonly help: string;
  /** All that is left to be looked at out of doors, as a list. */
  readonly walk: string;
}

export type Reply =
  | {
      readonly kind: 'value';
      readonly value: AnswerValue;
      readonly understood: string;
      /** What was typed, or the number that was picked; empty when the shown default was taken. */
      readonly typed: string;
    }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'back' | 'review' | Leaving };

/** How a person leaves: by a word, by the end of input, or by Ctrl-C. */
export type Leaving = 'save' | 'quit' | 'ended' | 'interrupted';

export interface Asker {
  ask(prompt: Prompt): Promise<Reply>;
  /**
   * Lets a person pick one of some labelled lines; undefined when they leave or input ends.
   *
   * @param leaveLabel the last line, which picks nothing; without it one of the choices must be picked
   */
  pick(message: string, choices: readonly PickChoice[], leaveLabel?: string): Promise<string | undefined>;
  /**
   * Yes or no; undefined when they leave or input ends.
   *
   * @param suggested what Enter alone takes; without it yes or no has to be said
   */
  confirm(message: string, suggested?: boolean): Promise<boolean | undefined>;
  /** A free line, such as a file name; undefined when they give it up, leave or input ends. */
  line(message: string, suggested: string, as?: LineKind): Promise<string | undefined>;
  say(text: string): void;
  close(): void;
  /** How they left, once they have: every later prompt then gives up at once. */
  readonly left?: () => Leaving | undefined;
}

/** A lawn's area may be called "back": in a name that word gives nothing up. */
export type LineKind = 'anything' | 'name';

export interface PickChoice {
  readonly value: string;
  readonly label: string;
  /** "Don't know" means this one. */
  readonly isUnknown?: true;
}

/** What an asker is made of; nothing is taken from the process. */
export interface AskerSettings {
  readonly input: Readable;
  readonly output: Writable;
  /** Columns; no line is longer. */
  readonly width: number;
  /** False: no colour codes are written. */
  readonly colour: boolean;
  readonly read: (question: Question, typed: string) => Reading;
  /** Aborted by the caller on SIGINT, SIGTERM or SIGHUP: the open prompt replies "interrupted". */
  readonly interrupt?: AbortSignal;
}
