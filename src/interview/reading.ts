import type { AnswerValue } from './answers.js';

/** Reads typed text for a question: a value with what was understood, a refusal, or a doubt to be settled. */
export type Reading =
  | { readonly kind: 'value'; readonly value: AnswerValue; readonly understood: string }
  /** Possible but odd: accepted only when it is confirmed. */
  | { readonly kind: 'odd'; readonly value: AnswerValue; readonly understood: string; readonly says: string }
  /** Ambiguous: each choice is a full reading. */
  | {
      readonly kind: 'which';
      readonly says: string;
      readonly choices: readonly { readonly label: string; readonly value: AnswerValue }[];
    }
  | { readonly kind: 'refused'; readonly says: string };
