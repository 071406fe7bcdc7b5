/** The shape of a question. */
import { z } from 'zod';
import { answerName, expression, id, sentence } from './schema.js';
import { usWording } from './schema-us.js';

const option = z.strictObject({ value: z.string(), label: sentence, hint: sentence.optional() });

export const questionSchema = z
  .strictObject({
    id: answerName,
    section: id,
    /** Noun phrase for reasons and review, such as "moss cover". */
    label: sentence,
    /** What people say who ask for it, where the words are not in the label or the text. */
    says: z.array(sentence).min(1).optional(),
    text: sentence,
    help: sentence,
    why: sentence,
    kind: z.enum([
      'choice',
      'number',
      'fraction',
      'date',
      'days-ago',
      'area',
      'parts',
      'yes-no',
      'text',
      'place',
    ]),
    unit: sentence.optional(),
    bounds: z
      .strictObject({
        min: z.number(),
        max: z.number(),
        /** Outside this the answer is possible but odd, and is asked again once. */
        oddBelow: z.number().optional(),
        oddAbove: z.number().optional(),
        /** What to compare an odd or impossible answer with, in plain words. */
        says: sentence,
      })
      .optional(),
    options: z.array(option).min(2).optional(),
    /** Asked only while this is not false; absent means always. */
    askWhen: expression.optional(),
    dontKnow: z.strictObject({
      /** Value or JSON Logic; null: nothing is assumed and the plan says that it is left open. */
      assume: expression.nullable(),
      effect: sentence,
      /** What is assumed, as the plan says it; without it the label and the assumed answer stand. */
      says: sentence.optional(),
      handTest: sentence.optional(),
      /** What an open answer may turn out to be where the kind has no options: places, or days from today for a date. */
      orElse: z
        .array(z.union([z.string(), z.int()]))
        .min(1)
        .optional(),
    }),
    /** How far a number that was answered may be out, in its own unit: it was judged by eye or read off roughly. */
    readWithin: expression.optional(),
    /** Answered for each area of a lawn by itself; otherwise once for the whole lawn. */
    perArea: z.boolean().optional(),
    cost: z.enum(['chair', 'look', 'dig']),
    /** What "none" stands for where a number is asked for; without it the help is shown. */
    noneIs: z.number().optional(),
    /** What must be in the hand to find out, each with its article. */
    take: z.array(sentence).min(1).optional(),
    safety: z.boolean().optional(),
    /** A plan can be made without it, and nothing is assumed in its place: a name, a budget. */
    optional: z.boolean().optional(),
    /** The owner decides it: another answer is another way to do the job, not another lawn. */
    ownDecision: z.boolean().optional(),
    /**
     * Answered by answering another: a rate in g/m2 says that the product is dry. With `as`, only by saying "don't know"
     * there: whoever does not know whether it was done cannot say when.
     */
    impliedBy: z
      .array(z.strictObject({ answered: answerName, as: z.literal('unknown').optional(), value: z.string() }))
      .optional(),
    /** Put only after this one, whose answer it asks about. */
    follows: answerName.optional(),
    /** Where there may be no date to tell: the value that then stands in a file, how it is said, and what is typed for it. */
    noDate: z
      .strictObject({ value: answerName, label: sentence, typed: z.array(sentence).min(1) })
      .optional(),
    /** The shown default: an answer value, or "today" for a date. */
    suggest: z.union([z.string(), z.number(), z.boolean()]).optional(),
    us: usWording.optional(),
  })
  .refine((question) => (question.kind === 'choice') === (question.options !== undefined), {
    error: 'a choice has options, and nothing else has',
  })
  .refine(
    (question) => !['number', 'days-ago', 'area'].includes(question.kind) || question.bounds !== undefined,
    {
      error: 'a number needs bounds',
    },
  )
  .refine((question) => question.noDate === undefined || question.kind === 'date', {
    error: 'only a date can be none',
  })
  .refine((question) => question.safety !== true || question.suggest === undefined, {
    error: 'a question on which safety rests suggests no answer',
  });
