/** What of a plan is judgement: the verdict, how sure it is, and what accounts for every symptom that was told. */
import type { Citation, Figure } from '../rules/schema.js';
import type { VerdictId } from '../rules/schema-judgement.js';
import type { WouldChange } from './sureness.js';

/** The verdict of a lawn of which too little is known for any other. */
export const NOT_KNOWN: VerdictId = 'not-known';

export interface PlanVerdict {
  readonly id: VerdictId;
  readonly title: string;
  /** The reason in words, then the conditions of this lawn. */
  readonly because: string;
  readonly reasons: string;
  /** What is to be done once a verdict that puts it off has passed; null where nothing is put off. */
  readonly meant: { readonly id: VerdictId; readonly title: string; readonly because: string } | null;
  /** What is said besides: what it comes to, when, and what comes before. */
  readonly says: readonly string[];
  /**
   * Whether no open answer, and none judged by eye and close to a limit, would make another verdict or move the first
   * sowing by more than a week. Worked out when it is read, as are the two that follow; see `lazily.ts`.
   */
  readonly sure: boolean;
  /** What would change it, the look that is most worth its trouble first. */
  readonly wouldChange: readonly WouldChange[];
  /** The same in sentences. */
  readonly sureness: PlanSureness;
  readonly sources: readonly Citation[];
}

/** How sure a verdict is, for a reader. */
export interface PlanSureness {
  readonly lead: string;
  /** A line for each look that pays best. */
  readonly looks: readonly string[];
  /** The others by name, or nothing. */
  readonly more: string;
}

/** A symptom that was told, or answers that do not go together, and what accounts for it. */
export interface PlanSign {
  readonly id: string;
  /** The first of the answers that tell it. */
  readonly questionId: string;
  readonly questionIds: readonly string[];
  /** Those answers in words, each after the name of its question. */
  readonly answer: string;
  readonly says: string;
  readonly account: 'finding' | 'harmless' | 'unexplained';
  /** Titles of the findings, or the harmless reason; empty where nothing accounts for it. */
  readonly by: readonly string[];
  /** Whether the answers contradict each other. */
  readonly isClash: boolean;
  /** What else it may be at this time of the year, and what to look at; only where it is unexplained. */
  readonly maybe: readonly string[];
  readonly look: string | null;
  readonly basis: Figure['basis'];
  readonly sources: readonly Citation[];
}
