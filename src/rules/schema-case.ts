/** The shape of a training case and of the marking scheme; checked beside the pack, loaded only by `drill`. */
import { z } from 'zod';
import { answerName, citations, id, isoDate, sentence } from './schema.js';
import { verdictId } from './schema-pack.js';

/** Where the right value of an amount is found in the case's own plan. */
const find = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('area') }),
  z.strictObject({ kind: z.literal('amount'), step: id, material: id }),
  z.strictObject({ kind: z.literal('loads'), step: id }),
  z.strictObject({
    kind: z.literal('load'),
    step: id,
    which: z.enum(['full', 'last']),
    of: z.enum(['water', 'product']),
  }),
  z.strictObject({ kind: z.literal('wait'), from: id, to: id }),
]);

const askedAmount = z.strictObject({
  id,
  ask: sentence,
  find,
  /**
   * Worked with pencil and paper; the plan's value must lie in it, metric. `us` is the working in US units, where the
   * measures in braces do not say it.
   */
  byHand: z.strictObject({ least: z.number(), most: z.number(), working: sentence, us: sentence.optional() }),
});

export const drillCaseSchema = z.strictObject({
  id,
  title: sentence,
  /** False only for a case made of a real lawn. */
  invented: z.boolean(),
  level: z.enum(['easy', 'middling', 'hard']),
  topic: sentence,
  minutes: z.int().min(1),
  /** What the trainee takes home; no two cases have the same. */
  lesson: sentence,
  today: isoDate,
  /** What the owner says at the gate. */
  story: z.array(sentence).min(1),
  /** Where this lawn differs from the usual one of the marking scheme. */
  answers: z.record(answerName, z.unknown()),
  /** What is seen or said on looking, where the bare answer would give too much away. */
  seen: z.record(answerName, sentence),
  expected: z.strictObject({
    findings: z.array(id),
    /** Look-alikes that are not there. */
    not: z.array(id),
    verdict: verdictId,
    /** Key steps, in an order that is right. */
    steps: z.array(id).min(1),
    /** Steps that would be a mistake here. */
    notSteps: z.array(id),
  }),
  /** Looks without which nobody could be sure. */
  needs: z.array(answerName).min(1),
  /** What can hurt: overlooked, the case is failed. */
  dangers: z
    .array(
      z.strictObject({
        look: answerName,
        says: sentence,
        /** Also failed when the ground was dug or probed before this was looked at. */
        beforeDigging: z.boolean().optional(),
        /** Steps that would do the harm; choosing one fails the case too. */
        neverSteps: z.array(id).optional(),
      }),
    )
    .min(1),
  /** Signs that point the wrong way, and what is true of them. */
  misleads: z.array(z.strictObject({ look: answerName, says: sentence })),
  /** What people get wrong here, told only to those who do. */
  wrongTurns: z
    .array(
      z.strictObject({
        finding: id.optional(),
        verdict: verdictId.optional(),
        step: id.optional(),
        says: sentence,
      }),
    )
    .min(1),
  amounts: z.array(askedAmount),
});

const share = z.number().min(0).max(1);
const points = z.number().min(0);

export const markingSchema = z.strictObject({
  sources: citations,
  /** Full marks of each part; a part that a drill does not have leaves its share to the others. */
  weights: z.strictObject({
    looks: points,
    economy: points,
    diagnosis: points,
    sureness: points,
    amounts: points,
    steps: points,
  }),
  passMark: points,
  /** What a look costs, in shares of a look that was needed. */
  lookCosts: z.strictObject({ relevant: share, early: share, pointless: share }),
  hintCosts: z.strictObject({ point: points, teach: points, tell: points }),
  /** What points to an amount and teaches it, by kind; `{material}` is its title. What tells is the case's own working. */
  amountHints: z.record(
    z.enum(['area', 'amount', 'loads', 'load', 'wait']),
    z.strictObject({
      point: sentence,
      teach: sentence,
      us: z.strictObject({ point: sentence, teach: sentence }).partial().optional(),
    }),
  ),
  /** What points to the next step: one that waits for others, or for none of them. */
  orderHints: z.strictObject({ bound: sentence, free: sentence }),
  /** As a share of the right value; inside the plan's own range counts as right, except by a label. */
  tolerance: z.strictObject({ right: share, near: share, nearMark: share, slip: share }),
  slips: z.array(
    z.strictObject({
      id,
      factor: z.number().positive(),
      /** Of the right amount, as the plan has it. */
      units: z.array(sentence),
      /** A slip that only those make who work in US units. */
      only: z.literal('us').optional(),
      says: sentence,
    }),
  ),
  /** Wait with anything that opens the ground until this has been looked at. */
  beforeDigging: z.strictObject({ look: answerName, says: sentence }),
  /** Sections for planning, not for finding out what is wrong. */
  planSections: z.array(id),
  /** How long a case made of an own lawn is said to take, min. */
  ownLawnMinutes: z.int().min(1),
  /** Told at the gate, so never looked for. */
  givens: z.array(answerName),
  /** The lawn that a case differs from. */
  usual: z.record(answerName, z.unknown()),
  verdicts: z.record(verdictId, sentence),
  /** Whether each look is judged at once, or all at the end. */
  feedback: z.record(z.enum(['easy', 'middling', 'hard']), z.enum(['at-once', 'at-end'])),
});

export type DrillCase = z.infer<typeof drillCaseSchema>;
export type AskedAmount = z.infer<typeof askedAmount>;
export type Marking = z.infer<typeof markingSchema>;

/** What `drill` loads: the cases from easy to hard, and how they are marked. */
export interface CaseBook {
  readonly marking: Marking;
  readonly cases: readonly DrillCase[];
}
