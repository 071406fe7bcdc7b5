/** What a trainee did with a case, in the order of doing; plain data, marked afterwards. */
import type { VerdictId } from '../rules/schema-judgement.js';
import type { JudgedLook } from './judge-look.js';

/** How much of a case the trainee does: none, the last steps, all of it. */
export type DrillMode = 'watch' | 'finish' | 'whole';

export const HINT_RUNGS = ['point', 'teach', 'tell'] as const;
export type HintRung = (typeof HINT_RUNGS)[number];

export interface Commitment {
  readonly verdict: VerdictId;
  /** 0 to 1. */
  readonly sure: number;
  readonly findings: readonly { readonly id: string; readonly sure: number }[];
}

/** A hint that was given: towards a look, an amount, or the order of the steps. */
export interface TakenHint {
  readonly towards: 'look' | 'amount' | 'order';
  /** Id of the look or amount; of the step for the order. */
  readonly id: string;
  readonly rung: HintRung;
}

export interface Attempt {
  readonly mode: DrillMode;
  readonly looks: readonly JudgedLook[];
  readonly hints: readonly TakenHint[];
  readonly commitment: Commitment | undefined;
  /** Amount id to what was given in the unit of the right value; null where it was left out. */
  readonly amounts: Readonly<Record<string, number | null>>;
  /** Step ids in the trainee's order; undefined before they were put in order. */
  readonly order: readonly string[] | undefined;
  readonly minutes: number;
}

export function freshAttempt(mode: DrillMode): Attempt {
  return { mode, looks: [], hints: [], commitment: undefined, amounts: {}, order: undefined, minutes: 0 };
}

export const lookIds = ({ looks }: Pick<Attempt, 'looks'>): string[] =>
  looks.map(({ question }) => question.id);
