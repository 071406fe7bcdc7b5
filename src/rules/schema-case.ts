/** The shape of a training case and of the marking scheme; checked beside the pack, loaded only by `drill`. */
import { z } from 'zod';
import { answerName, citations, expression, id, isoDate, sentence } from './schema.js';
import { verdictId } from './schema-judgement.js';

/** Where the right value of an amount is found: in the case's own plan, or by a sum of its own. */
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
  z.strictObject({
    kind: z.literal('sum'),
    /** JSON Logic over answers, facts, figures and what is given. */
    value: expression,
    /** Measures that the question itself tells, read as `given.NAME`. */
    given: z.record(answerName, z.number()).optional(),
    unit: z.enum(['m2', 'mm', 'L', 'g', 'd', 'min', 'each']),
    /** Litres of soil or bark, not of a liquid. */
    loose: z.boolean().optional(),
  }),
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
  /** Wrong values that this sum invites, in its unit and worked by hand, and what to say about each. */
  slips: z.array(z.strictObject({ value: z.number(), says: sentence })).optional(),
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
    /** Verdicts that hold as well, and in what sense. */
    alsoRight: z.array(z.strictObject({ verdict: verdictId, says: sentence })).optional(),
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
  /** Empty only for a real lawn: one that gets nothing still has something to be worked out. */
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
  /** A diagnosis that does not hold fails the case whatever the rest, and what is said of it then. */
  gate: z.strictObject({
    /** Share of the key findings that must be named. */
    keyFindings: share,
    /** Up to this sureness a finding that cannot be told yet may be named without harm. */
    doubtUpTo: share,
    verdict: sentence,
    findings: sentence,
    listed: sentence,
  }),
  /** What a look costs, in shares of a look that was needed. */
  lookCosts: z.strictObject({ relevant: share, early: share, pointless: share }),
  hintCosts: z.strictObject({ point: points, teach: points, tell: points }),
  /** What points to an amount and teaches it, by kind; `{material}` is its title. What tells is the case's own working. */
  amountHints: z.record(
    z.enum(['area', 'amount', 'loads', 'load', 'wait', 'sum']),
    z.strictObject({
      point: sentence,
      teach: sentence,
      us: z.strictObject({ point: sentence, teach: sentence }).partial().optional(),
    }),
  ),
  /** What points to the next step: one that waits for others, or for none of them. */
  orderHints: z.strictObject({
    bound: sentence,
    free: sentence,
    /** `{step}` and what comes before it, `{before}`. */
    tellBound: sentence,
    tellFree: sentence,
    allTold: sentence,
  }),
  /** What points to a look, by its `{section}`, and tells it: `{look}`, `{question}`. What teaches is its own why. */
  lookHints: z.strictObject({ point: sentence, tell: sentence, allSeen: sentence }),
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
  /** What is said of a finding that was named: not there, or not to be told yet and named with or without doubt. */
  diagnosisWords: z.strictObject({ absent: sentence, doubted: sentence, tooSoon: sentence }),
  /** How a danger was minded, or not: `done` by a step that was chosen, `late` only after digging. */
  dangerWords: z.strictObject({
    seen: sentence,
    shown: sentence,
    unseen: sentence,
    late: sentence,
    done: sentence,
    overdosed: sentence,
  }),
  /** A product by its label counts as overdosed above so many times the right amount. */
  overdose: z.strictObject({ times: z.number().min(1), says: sentence }),
  slipWords: z.strictObject({
    bedsForgotten: sentence,
    diameterForRadius: sentence,
    bedsAdded: sentence,
    noRoom: sentence,
    allForOne: sentence,
    nitrogenForProduct: sentence,
    perSquareMetre: sentence,
    perThousandSquareFeet: sentence,
  }),
  /** What is said of a look. All but the last three may be said before the commit; `{count}` of findings, `{names}` of them. */
  lookWords: z.strictObject({
    /** What is seen where there is nothing, and where nobody knows. */
    nothing: sentence,
    unknown: sentence,
    absent: sentence,
    forThePlan: sentence,
    relevant: sentence,
    pointless: sentence,
    settledOne: sentence,
    settledMore: sentence,
    showed: sentence,
    ruledOut: sentence,
    cannotTell: sentence,
  }),
  /** The kinds of looks: said at once, and in the debrief. */
  lookKinds: z.record(
    z.enum(['on-track', 'sound', 'relevant', 'early', 'pointless']),
    z.strictObject({ atOnce: sentence, debrief: sentence }),
  ),
  /** What to practise; `{names}` what it is about, `{slip}` what went wrong in a sum. */
  practise: z.strictObject({
    dangers: sentence,
    looks: sentence,
    economy: sentence,
    findings: sentence,
    lookAlikes: sentence,
    tooSure: sentence,
    tooShy: sentence,
    /** Mean sureness up to which one who was right throughout is told so. */
    shyUpTo: share,
    sum: sentence,
    steps: sentence,
    order: sentence,
    mistaken: sentence,
    hints: sentence,
  }),
  /** What "suppose" is answered with; `{look}`, `{answer}`, `{names}`, `{verdict}`, `{because}`. */
  supposeWords: z.strictObject({
    example: sentence,
    moreExactly: sentence,
    head: sentence,
    sameLooks: sentence,
    lessLooks: sentence,
    moreLooks: sentence,
    noDates: sentence,
    verdict: sentence,
    foundThen: sentence,
    notFoundThen: sentence,
    stepsIn: sentence,
    stepsOut: sentence,
    nothing: sentence,
  }),
  /** Wait with anything that opens the ground until this has been looked at. */
  beforeDigging: z.strictObject({ look: answerName, says: sentence }),
  /** Sections for planning, not for finding out what is wrong. */
  planSections: z.array(id),
  /** What a case made of an own lawn begins with, until somebody writes it: `{verdict}`, `{material}`. */
  ownLawn: z.strictObject({
    title: sentence,
    topic: sentence,
    story: sentence,
    lesson: sentence,
    minutes: z.int().min(1),
    area: sentence,
    areaWorking: sentence,
    amount: sentence,
    /** Formulas whose amounts are asked. */
    formulas: z.array(sentence),
  }),
  /** Told at the gate, so never looked for. */
  givens: z.array(answerName),
  /** The lawn that a case differs from. */
  usual: z.record(answerName, z.unknown()),
  verdicts: z.record(verdictId, sentence),
  /** Why a verdict is so here, and why another is not: `{names}` of findings or steps, `{changes}` of answers. */
  verdictWords: z.strictObject({
    wrong: sentence,
    nothingWrong: sentence,
    takes: sentence,
    /** What a verdict is for, said to those who came to it wrongly. */
    means: z.partialRecord(verdictId, sentence),
    wouldBe: sentence,
    /** Before what is said of a verdict that holds as well. */
    also: sentence,
  }),
  /**
   * From case to case: a level is left behind after so many of it, or of a harder one, are passed with so many marks;
   * a case is not offered again before so many others.
   */
  moving: z.strictObject({ skipAfter: z.int().min(1), skipFrom: points, restFor: z.int().min(1) }),
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
