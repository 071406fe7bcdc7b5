/** What reading a typed quantity gives: a value in a known unit, or a reason and perhaps choices to ask. */

export type Parsed<Unit extends string> = Understood<Unit> | NotUnderstood;

export interface Understood<Unit extends string> {
  readonly ok: true;
  readonly value: number;
  readonly unit: Unit;
  /** How the text was read, to show beside it: `12.5 ft x 25 ft = 29.0 m2`. */
  readonly understood: string;
  /** The text said `about` or `~`. */
  readonly approximate: boolean;
}

export interface NotUnderstood {
  readonly ok: false;
  /** One or two plain sentences: what is wrong and what to type. */
  readonly reason: string;
  /** Present when the text can be read in more than one way. */
  readonly choices?: readonly Choice[];
}

/** One way to read an ambiguous text. */
export interface Choice {
  /** Typing this instead says the same without doubt. */
  readonly typed: string;
  readonly value: number;
  readonly understood: string;
}

/** A reading before it is dressed as a result: `echo` is the text in standard unit names. */
export type Reading =
  | { readonly ok: true; readonly value: number; readonly echo: string; readonly understood?: string }
  | NotUnderstood;

/** A failed reading or result. */
export function unclear(reason: string, choices?: readonly Choice[]): NotUnderstood {
  return choices === undefined ? { ok: false, reason } : { ok: false, reason, choices };
}
