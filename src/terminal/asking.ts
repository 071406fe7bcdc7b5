/**
 * What is asked, apart from how it is shown: a text, the answers to point at, and what a typed line comes to.
 * Both screens hold the same conversation over it, so that a word means the same wherever it is typed.
 */
import type { Leaving } from './asker.js';

/** An answer to point at. */
export interface Entry {
  readonly label: string;
  /** What choosing it comes to, as if this had been typed. */
  readonly line: string;
}

export interface View {
  /** One or more lines. */
  readonly text: string;
  readonly entries: readonly Entry[];
  /** Whether the number of an entry may be typed for it. */
  readonly isNumbered: boolean;
  /** It settles a doubt about what was typed just before. */
  readonly isDoubt?: true;
  /** How to answer, where that is not plain from the entries. */
  readonly ways?: string;
  /** What Enter alone takes, in words; without it Enter alone takes nothing. */
  readonly enter?: string;
  /** The entry that Enter alone takes. */
  readonly marked?: number;
  /** The words that work besides. */
  readonly words?: string;
}

export interface Asking<Result> extends View {
  /** What a line comes to; nothing is shown or kept by it. */
  hear(line: string): Heard<Result>;
  /** What the key for going back comes to. */
  readonly back: Result;
}

export type Heard<Result> =
  | { readonly kind: 'result'; readonly result: Result }
  | { readonly kind: 'leave'; readonly how: Extract<Leaving, 'save' | 'quit'> }
  /** An explanation; then the same is asked again. It is worked out only when it is wanted. */
  | { readonly kind: 'told'; readonly says: () => readonly string[] }
  /** Nothing was understood and nothing is kept; the same is asked again, or `next`. */
  | { readonly kind: 'refused'; readonly says: string; readonly next?: Asking<Result> }
  /** A doubt to settle first. */
  | { readonly kind: 'doubt'; readonly asking: Asking<Result> };

/** They have left: no line will come. */
export interface Left {
  readonly left: Leaving;
}

/** A line, the key for going back, or how they left. */
export type NextLine = string | { readonly goesBack: true } | Left;

/** A screen as a conversation needs it. */
export interface Face {
  /** Shows what is asked, where it is not shown by `next`. */
  show(view: View): void;
  /** The next line; one that `refusal` has a word on may be refused on the spot instead. */
  next(view: View, refusal: (line: string) => string | undefined): Promise<NextLine>;
  say(text: string): void;
  leave(how: Leaving): Left;
  left(): Leaving | undefined;
  close(): void;
}

/** Asks until there is a result. */
export async function converse<Result>(first: Asking<Result>, face: Face): Promise<Result | Left> {
  let asking = first;
  const refusal = (line: string): string | undefined => {
    const heard = asking.hear(line);
    return heard.kind === 'refused' && heard.next === undefined ? heard.says : undefined;
  };
  face.show(asking);
  for (;;) {
    const line = await face.next(asking, refusal);
    if (typeof line !== 'string') return 'left' in line ? line : asking.back;
    const heard = asking.hear(line);
    switch (heard.kind) {
      case 'result':
        return heard.result;
      case 'leave':
        return face.leave(heard.how);
      case 'told':
        for (const text of heard.says()) face.say(text);
        break;
      case 'refused':
        face.say(heard.says);
        asking = heard.next ?? asking;
        break;
      case 'doubt':
        asking = heard.asking;
        face.show(asking);
    }
  }
}

/** Whether a conversation ended because they left. */
export const isLeft = (ended: unknown): ended is Left =>
  typeof ended === 'object' && ended !== null && 'left' in ended;
