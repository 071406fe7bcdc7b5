/**
 * The shape of every record in a pack, as zod schemas: the authority on what a rules file may hold.
 * Types are inferred from here and imported with `import type`, so that reading a checked pack loads no zod.
 * Shapes only: whether names refer to something is settled in check.ts, whether a condition is sound in lint.ts.
 */
import { z } from 'zod';
import type { questionSchema } from './schema-question.js';
import { packsBasis, usCaution, usMaterial, usPacks } from './schema-us.js';

export const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'an id is lower-case words joined by hyphens');
export const answerName = z
  .string()
  .regex(/^[a-z][A-Za-z0-9]*$/, 'a question or fact id is one camelCase word, as conditions read it');
export const isoDate = z.iso.date();
export const monthDay = z.string().regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'a yearly date is MM-DD');
export const sentence = z.string().min(1);

/** JSON Logic; lint.ts checks operators, argument counts, names and depth. */
export type Expression =
  | string
  | number
  | boolean
  | readonly Expression[]
  | { readonly [operator: string]: Expression };
export const expression: z.ZodType<Expression> = z.lazy(() =>
  z.union([z.string(), z.number(), z.boolean(), z.array(expression), z.record(z.string(), expression)]),
);

const citation = z.strictObject({ id, at: z.string().min(1) });
export const citations = z.array(citation);

export const sourceSchema = z.strictObject({
  id,
  title: sentence,
  publisher: sentence,
  author: sentence.optional(),
  year: z.int().min(1900).max(2100).optional(),
  address: sentence.optional(),
  /** first-hand: text of the body that issues it; second-hand: quoted by another; general: a general page. */
  standing: z.enum(['first-hand', 'second-hand', 'general']),
  seenOn: isoDate,
  note: sentence.optional(),
});

export const figureSchema = z
  .strictObject({
    id,
    what: sentence,
    unit: sentence,
    typical: z.number(),
    range: z.strictObject({ min: z.number(), max: z.number() }),
    basis: z.enum(['published', 'common-practice', 'assumption']),
    sources: citations,
    checkedOn: isoDate,
    note: sentence.optional(),
  })
  .refine((figure) => figure.range.min <= figure.typical && figure.typical <= figure.range.max, {
    error: 'the typical value must lie inside the range',
  })
  .refine((figure) => figure.basis !== 'published' || figure.sources.length > 0, {
    error: 'a published figure needs a source; without one it is common-practice or assumption',
  });

export const factSchema = z
  .strictObject({
    id: answerName,
    what: sentence,
    /** How it is told as a reason, before its value; without it, what it is. */
    says: sentence.optional(),
    kind: z.enum(['number', 'truth', 'word']),
    unit: sentence.optional(),
    /** JSON Logic over answers, figures, findings and other facts. */
    value: expression.optional(),
    /** Or the name of a function of the program that works it out. */
    computedBy: z
      .enum([
        'area',
        'days-since-weedkiller',
        'days-since-date',
        'days-until-start',
        'season-wait',
        'parts',
        'people',
        'half-known',
        'southern-half',
        'winter-known',
        'coldest-month',
        'warm-grass-sleeps',
        'days-until-green',
      ])
      .optional(),
    /** Names that a computed fact reads. */
    reads: z.array(sentence).optional(),
  })
  .refine((fact) => (fact.value === undefined) !== (fact.computedBy === undefined), {
    error: 'a fact has either a value or computedBy',
  });

const answersExample = z.record(answerName, z.unknown());

export const findingSchema = z.strictObject({
  id,
  title: sentence,
  /** What people say who mean it, where the words are not in the title. */
  says: z.array(sentence).min(1).optional(),
  when: expression,
  /** Signs for (+) and against (-), in whole steps; shown in both columns, never as a percentage. */
  evidence: z
    .array(
      z.strictObject({
        when: expression,
        weight: z
          .int()
          .min(-3)
          .max(3)
          .refine((weight) => weight !== 0),
        says: sentence,
      }),
    )
    .optional(),
  why: sentence,
  sources: citations,
  /** The hand test that separates it from its look-alikes. */
  tellsApart: sentence,
  leadsTo: z.array(id),
  examples: z.strictObject({
    found: z.array(answersExample).min(1),
    notFound: z.array(answersExample).min(1),
    cannotTell: z.array(answersExample).min(1),
  }),
});

const amount = z.strictObject({
  id,
  material: id,
  when: expression.optional(),
  formula: id,
  /** Named inputs of the formula, as JSON Logic over answers, facts and figures. */
  inputs: z.record(answerName, expression),
  note: sentence.optional(),
});

const wait = z.strictObject({
  step: id,
  /** JSON Logic giving whole days. */
  minDays: expression,
  maxDays: expression.optional(),
  /** What one sees when the wait is over. */
  sign: sentence.optional(),
  why: sentence,
});

/** Days of the year, and the warmth of the soil that narrows them where the climate of the place is known. */
const yearlyWindow = z.strictObject({
  from: monthDay,
  until: monthDay,
  /** Opens no sooner than the soil reaches this, C. */
  opensAtC: expression.optional(),
  /** Closes while the soil stays at this or warmer, C, for so many days yet. */
  closes: z.strictObject({ belowC: expression, daysLeft: expression }).optional(),
  /** Open only while rain brings this share of what grass uses, over so many days on. */
  rain: z.strictObject({ share: expression, days: expression }).optional(),
  /** The first day where the climate of the place is not known. */
  surelyFrom: monthDay.optional(),
  /** Closes then instead, where the climate is known and its spring is late (`seasons.lateSpring`). */
  lateUntil: monthDay.optional(),
  /** Where the climate is known, these days instead, whatever the month: those with so many days of growth ahead yet. */
  whileGrowing: z.strictObject({ belowC: expression, daysLeft: expression }).optional(),
});

export const stepSchema = z.strictObject({
  id,
  title: sentence,
  /** Place in the list when nothing else decides; the trade's own order. */
  order: z.int(),
  /** Place in the skeleton of the trade (`phases` in pack.json). */
  phase: id,
  /** It keeps only the waits written in `after`; a main step also follows every main step of an earlier phase. */
  side: z.boolean().optional(),
  /** Later steps that it is done for and nothing else: where none of them is in the plan, it falls away too. */
  serves: z.array(id).min(1).optional(),
  when: expression,
  purpose: sentence,
  how: z.array(sentence).min(1),
  after: z.array(wait),
  /** Not before a date that was answered, plus whole days (a weedkiller's wait). */
  notBefore: z
    .array(z.strictObject({ when: expression, date: expression, plusDays: expression, why: sentence }))
    .optional(),
  /** It does not touch the ground: frost is no bar to it. */
  indoors: z.boolean().optional(),
  /** Days of the year (northern) in which the step may be done; absent: any day on which the ground is not frozen. */
  window: z
    .strictObject({
      between: z.array(yearlyWindow).min(1),
      warmSeason: z.array(yearlyWindow).optional(),
      /** Where nothing but rain waters what is sown. */
      rainFed: z.array(yearlyWindow).optional(),
      why: sentence,
      /** Where that is not true of warm-season grass. */
      whyWarmSeason: sentence.optional(),
      sources: citations,
    })
    .optional(),
  /** Go or wait on the day, as things one can see or feel. */
  dayChecks: z.array(
    z.strictObject({
      check: sentence,
      otherwise: sentence,
      /** Where it goes with one way of doing the step only. */
      when: expression.optional(),
      /** What the answers and the climate may say about it for the day. */
      sign: z.enum(['soil', 'rain', 'frost']).optional(),
      /** Left out where this question was answered: then the plan has heeded the answer. */
      unlessKnown: answerName.optional(),
    }),
  ),
  /** Days that the step goes on after its first; absent: done on the day. */
  lastsDays: expression.optional(),
  /** The watering table says how it goes on, and until when. */
  toldInWateringTable: z.boolean().optional(),
  /** Done as late as what follows allows, so that a work day stays together. */
  joinsNext: z.boolean().optional(),
  /** Too late for its season, it is done in the next one; so it holds up nothing that comes before it. */
  maySlip: z.boolean().optional(),
  /** On a lawn too large for one go this is done part by part, and one part is finished before the next is begun. */
  inParts: z.boolean().optional(),
  /** On such a lawn each part gets this in its own time, counted from its own work, while others are worked on. */
  eachPart: z.boolean().optional(),
  /** Where money is short, this is left out in this order, and here is what that costs the result. */
  leaveOut: z.strictObject({ order: z.int().min(1), loses: sentence }).optional(),
  amounts: z.array(amount),
  labour: z.strictObject({ formula: id, inputs: z.record(answerName, expression) }).optional(),
  /** What must be at hand; with a condition where it depends on an answer. */
  tools: z.array(z.strictObject({ id, when: expression.optional() })),
  cautions: z.array(id),
  /** For cautions above that go with one way of doing this step only: the condition, beside the caution's own. */
  cautionWhen: z.record(id, expression).optional(),
  doneWhen: sentence,
  ifNot: sentence,
  sources: citations,
});

export const materialSchema = z.strictObject({
  id,
  title: sentence,
  kind: z.enum(['buy', 'hire', 'tool']),
  unit: z.enum(['g', 'mL', 'L', 'm2', 'h', 'each']),
  /** Figure, in t/m3, that says what a litre weighs; goods by weight need none. */
  density: id.optional(),
  /** Soil and debris by the litre, which is no liquid: in the US it is sold by the cubic foot. */
  loose: z.boolean().optional(),
  /** Too much of it does no harm, so that packs are bought for the largest the lawn may truly be; never a product. */
  spareForArea: z.boolean().optional(),
  /** Another material that does as well: where a lorry brings that, one load can hold both. */
  sameLoadAs: id.optional(),
  /** What to look for in the shop or on the label. */
  lookFor: sentence,
  /** Common pack sizes in the unit above, marked as typical: no shop is promised. */
  packs: z.array(z.number().positive()),
  packsBasis: packsBasis.optional(),
  us: usMaterial.optional(),
  usPacks: usPacks.optional(),
});

/** Short enough to be read at a glance. */
const cautionLine = z.string().min(1).max(139);

export const cautionSchema = z.strictObject({
  id,
  /**
   * By what happens to whoever heeds it not: danger kills or maims, warning can, caution hurts a little (or can kill
   * an animal), notice hurts nobody but property, water, plants or the law, note is a good habit.
   */
  severity: z.enum(['note', 'notice', 'caution', 'warning', 'danger']),
  line: cautionLine,
  detail: sentence,
  us: usCaution.optional(),
  who: z.enum(['you', 'children', 'pets', 'wildlife', 'water', 'property', 'grass']),
  when: expression,
  sources: citations,
  basis: z.enum(['published', 'common-practice', 'assumption']),
});

export type Citation = z.infer<typeof citation>;
export type Source = z.infer<typeof sourceSchema>;
export type Figure = z.infer<typeof figureSchema>;
export type Question = z.infer<typeof questionSchema>;
export type Fact = z.infer<typeof factSchema>;
export type Finding = z.infer<typeof findingSchema>;
export type AmountRule = z.infer<typeof amount>;
export type WindowRule = z.infer<typeof yearlyWindow>;
export type Step = z.infer<typeof stepSchema>;
export type Material = z.infer<typeof materialSchema>;
export type Caution = z.infer<typeof cautionSchema>;
