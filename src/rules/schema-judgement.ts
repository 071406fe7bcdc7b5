/** The records by which a lawn is judged as a whole: verdicts, signs to account for, and the words for how sure it is. */
import { z } from 'zod';
import { answerName, citations, expression, id, sentence } from './schema.js';

export const verdictId = z.enum([
  'care-only',
  'overseed',
  'renovate',
  'start-again',
  'not-now',
  'not-a-lawn',
  'not-known',
]);

export const verdictSchema = z.strictObject({
  id: verdictId,
  title: sentence,
  /** Tried in order; the last has `true`. */
  when: expression,
  /**
   * Stands before all others while too little is known: as soon as `from` of the signs are open (of several in one, all),
   * unless what was answered already speaks for work.
   */
  open: z
    .strictObject({ signs: z.array(z.array(answerName).min(1)).min(1), from: expression, unless: expression })
    .optional(),
  /** The work as it follows "then", where another verdict puts it off. */
  work: sentence.optional(),
  /** A verdict that puts the work off: its title up to the work that follows. */
  putsOff: sentence.optional(),
  because: sentence,
  /** Said besides where it holds. */
  also: z.array(z.strictObject({ when: expression, says: sentence })).optional(),
  sources: citations,
});

/**
 * A symptom that is told by an answer, or answers that cannot all be true, and what may account for it. One that neither
 * a finding nor a harmless reason accounts for is printed as unexplained.
 */
export const signSchema = z
  .strictObject({
    id,
    /** The answers that tell it; several only where they do not go together. */
    questions: z.array(answerName).min(1),
    /** Judged by what was answered, never by what is assumed. */
    when: expression,
    says: sentence,
    /** Any one of these, found, accounts for it. Without a list the answers contradict each other. */
    findings: z.array(id).optional(),
    harmless: z.array(z.strictObject({ when: expression, says: sentence })).optional(),
    /** What else it may be, the likeliest first; in the months given, which are those of the north. */
    maybe: z
      .array(
        z.strictObject({
          says: sentence,
          months: z.array(z.int().min(1).max(12)).min(1).optional(),
          sources: citations.optional(),
        }),
      )
      .min(1),
    /** What to look at next. */
    look: sentence,
    basis: z.enum(['published', 'common-practice', 'assumption']),
    sources: citations,
  })
  .refine(({ questions, findings }) => findings !== undefined || questions.length > 1, {
    error:
      'a single answer names the findings that account for it; without them there must be several answers that clash',
  });

/** How sure a verdict is, in words; `{names}` are filled in. */
export const judgementWording = {
  whatCounts: sentence,
  sure: sentence,
  sureOfThese: sentence,
  unsure: sentence,
  unsureMany: sentence,
  looksDecide: sentence,
  nothingDecides: sentence,
  clashing: sentence,
  look: sentence,
  lookNear: sentence,
  rest: sentence,
  lookWith: sentence,
  turnsTo: sentence,
  turnsSowing: sentence,
  turnsNoSowing: sentence,
  turnsNoDates: sentence,
  otherLooks: sentence,
  datesRest: sentence,
  sowingOn: sentence,
  comesTo: sentence,
  effortChair: sentence,
  effortLook: sentence,
  effortDig: sentence,
};

export type VerdictRule = z.infer<typeof verdictSchema>;
export type VerdictId = VerdictRule['id'];
export type SignRule = z.infer<typeof signSchema>;
