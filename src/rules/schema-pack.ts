/** The records that a pack has once or in one short list: verdicts, aftercare, what is not done, manifest, climate. */
import { z } from 'zod';
import {
  cautionSchema,
  citations,
  expression,
  factSchema,
  figureSchema,
  findingSchema,
  id,
  materialSchema,
  sentence,
  sourceSchema,
  stepSchema,
} from './schema.js';
import { judgementWording, signSchema, verdictSchema } from './schema-judgement.js';
import { questionSchema } from './schema-question.js';
import { seasonsSchema } from './schema-seasons.js';

export const outlookSchema = z.strictObject({
  weeks: z.int().min(0),
  when: expression,
  sees: sentence,
  ifNot: sentence,
  sources: citations,
});

export const wateringSchema = z.strictObject({
  fromWeek: z.int().min(1),
  toWeek: z.int().min(1),
  turnsPerDay: expression,
  /** Where the climate of the place is not known. */
  mmPerDay: expression,
  /** Where it is: times the water use of the reference crop on such a day. */
  timesWaterUse: expression,
  /** Work of somebody there: for each turn, and for each litre of it, min. */
  workMinPerTurn: expression,
  workMinPerL: expression,
  aim: sentence,
  sources: citations,
});

export const notDoneSchema = z.strictObject({ id, when: expression, says: sentence });

/** What is said of the weather on the day of a step; the program works out which one, and the words after a `$`. */
export const daySignSchema = z.strictObject({ id, says: sentence });

/** Answers that cannot stand together: what must hold of them, whatever else is answered. */
export const togetherSchema = z.strictObject({
  id,
  /** Reads questions and figures only, so that it can be judged at every answer. */
  must: expression,
  says: sentence,
});

/** Sentences that the program puts together: explanations, a trip to the shop, why no dates hold; `{names}` are filled in. */
const wordingSchema = z.strictObject({
  listAnd: sentence,
  listOr: sentence,
  orMore: sentence,
  orLess: sentence,
  exactly: sentence,
  above: sentence,
  below: sentence,
  stepIn: sentence,
  stepOut: sentence,
  found: sentence,
  notFound: sentence,
  cannotTell: sentence,
  verdict: sentence,
  fact: sentence,
  factAssumed: sentence,
  factAlso: sentence,
  always: sentence,
  signsFor: sentence,
  signsAgainst: sentence,
  conflict: sentence,
  change: sentence,
  changeOne: sentence,
  changeFromNone: sentence,
  changeVerdict: sentence,
  noChange: sentence,
  waits: sentence,
  follows: sentence,
  amount: sentence,
  amountOnLabel: sentence,
  behindAmount: sentence,
  leadsTo: sentence,
  leadsNowhere: sentence,
  bearsOn: sentence,
  brings: sentence,
  rulesOut: sentence,
  finds: sentence,
  clears: sentence,
  warns: sentence,
  needsNoWarning: sentence,
  more: sentence,
  packTooHeavy: sentence,
  liftYours: sentence,
  liftGuide: sentence,
  liftTogether: sentence,
  liftOrTake: sentence,
  bulkChosen: sentence,
  haul: sentence,
  haulApart: sentence,
  oneTrip: sentence,
  manyTrips: sentence,
  bulkToo: sentence,
  bulkGoods: sentence,
  stockShort: sentence,
  buyInStages: sentence,
  clash: sentence,
  clashMissed: sentence,
  clashBehind: sentence,
  clashList: sentence,
  clashSeason: sentence,
  clashSeasonHere: sentence,
  clashSpan: sentence,
  clashWeekends: sentence,
  clashNoSooner: sentence,
  clashLeast: sentence,
  clashAfter: sentence,
  clashGreatest: sentence,
  clashSameDay: sentence,
  clashWays: sentence,
  clashWay: sentence,
  clashWayAssumed: sentence,
  clashNoWay: sentence,
  handsSooner: sentence,
  handsHours: sentence,
  onePerson: sentence,
  manyPeople: sentence,
  growthLeft: sentence,
  growthShort: sentence,
  growthNone: sentence,
  growthAlways: sentence,
  frostAhead: sentence,
  frostMonth: sentence,
  frostHardly: sentence,
  frostNone: sentence,
  boughtAt: sentence,
  hireOnly: sentence,
  hireNotBuy: sentence,
  buyNotHire: sentence,
  oneDay: sentence,
  manyDays: sentence,
  inShed: sentence,
  waterDepth: sentence,
  waterDepthUs: sentence,
  dryDays: sentence,
  waterTotal: sentence,
  waterTotalRain: sentence,
  waterDrawn: sentence,
  waterSteps: sentence,
  waterCost: sentence,
  waterCostRain: sentence,
  waterApart: sentence,
  waterApartRain: sentence,
  wateringWork: sentence,
  wateringTooLong: sentence,
  wateringWeekdays: sentence,
  eachPartWatered: sentence,
  ...judgementWording,
  areaMeasure: sentence,
  areaAmount: sentence,
  areaPacks: sentence,
  lotsEven: sentence,
  lotsAndBare: sentence,
  runsFor: sentence,
  sprinklerRuns: sentence,
  oneCan: sentence,
  manyCans: sentence,
  minutes: sentence,
  minutesSeconds: sentence,
  seconds: sentence,
  hoursMinutes: sentence,
});

/** What commonly goes wrong in the weeks after sowing. */
export const troubleSchema = z
  .strictObject({
    id,
    /** What the owner sees, as they would say it. */
    sees: sentence,
    /** Days after sowing between which it is met. */
    fromDay: z.int().min(0),
    toDay: z.int().min(0),
    /** Absent: on any lawn. */
    when: expression.optional(),
    /** When there is nothing wrong. */
    normal: sentence,
    /** The likeliest first, each with what tells it apart by hand and what to do. */
    causes: z.array(z.strictObject({ cause: sentence, test: sentence, remedy: sentence })).min(1),
    /** Steps that it puts off. */
    holds: z.array(z.strictObject({ step: id, days: expression, why: sentence })).optional(),
    basis: z.enum(['published', 'common-practice', 'assumption']),
    sources: citations,
  })
  .refine(({ fromDay, toDay }) => fromDay <= toDay, { error: 'fromDay must not come after toDay' })
  .refine(({ basis, sources }) => basis !== 'published' || sources.length > 0, {
    error: 'what is published names its source; without one it is common-practice or assumption',
  });

export const manifestSchema = z.strictObject({
  id,
  version: z.string().regex(/^\d+\.\d+\.\d+$/),
  title: sentence,
  /** What a question costs the person who answers it, against one answered from the chair. */
  effort: z.strictObject({
    chair: z.number().positive(),
    look: z.number().positive(),
    dig: z.number().positive(),
  }),
  sections: z.array(z.strictObject({ id, title: sentence })).min(1),
  /** The skeleton of the trade, first to last: every step names its place in it. */
  phases: z.array(z.strictObject({ id, what: sentence })).min(1),
  seasons: seasonsSchema.optional(),
  wording: wordingSchema,
});

const monthly = z.array(z.number()).length(12);
export const climateSchema = z.strictObject({
  licenceLine: sentence,
  sourceId: id,
  period: sentence,
  /** Boxes of land for which the nearest of these stations speak together where none is near. */
  speaksFor: z
    .array(
      z.strictObject({
        latitudeDeg: z.strictObject({ min: z.number(), max: z.number() }),
        longitudeDeg: z.strictObject({ min: z.number(), max: z.number() }),
      }),
    )
    .optional(),
  stations: z.array(
    z.strictObject({
      name: sentence,
      latitudeDeg: z.number(),
      longitudeDeg: z.number(),
      elevationM: z.number(),
      tMinC: monthly,
      tMaxC: monthly,
      rainMm: monthly,
      airFrostDays: monthly,
      minYears: z.number(),
    }),
  ),
});

/** A whole pack as one object: what a folder of rules is read into. */
export const packDataSchema = z.strictObject({
  ...manifestSchema.shape,
  sha256: z.string(),
  sources: z.array(sourceSchema),
  figures: z.array(figureSchema),
  facts: z.array(factSchema),
  questions: z.array(questionSchema),
  findings: z.array(findingSchema),
  steps: z.array(stepSchema),
  materials: z.array(materialSchema),
  cautions: z.array(cautionSchema),
  verdicts: z.array(verdictSchema),
  outlook: z.array(outlookSchema),
  watering: z.array(wateringSchema),
  notDone: z.array(notDoneSchema),
  together: z.array(togetherSchema),
  signs: z.array(signSchema),
  daySigns: z.array(daySignSchema),
  troubles: z.array(troubleSchema),
  climate: climateSchema,
});

export type Outlook = z.infer<typeof outlookSchema>;
export type WateringRule = z.infer<typeof wateringSchema>;
export type Trouble = z.infer<typeof troubleSchema>;
export type NotDone = z.infer<typeof notDoneSchema>;
export type DaySign = z.infer<typeof daySignSchema>;
export type Together = z.infer<typeof togetherSchema>;
export type Manifest = z.infer<typeof manifestSchema>;
export type Climate = z.infer<typeof climateSchema>;
