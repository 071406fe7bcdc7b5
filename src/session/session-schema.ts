/** The shape of a session file, as zod schemas: the authority on what one may hold. Loaded only to read a file. */
import { z } from 'zod';
import { type IsoDate, isIsoDate } from '../base/dates.js';
import type { OwnClimate } from '../rules/pack.js';
import type { PackReference, SavedAnswer, SavedSession } from './saved-session.js';

const LONGEST_WORDS = 2000;
const MOST_PARTS = 200;

const day = z.custom<IsoDate>((value) => typeof value === 'string' && isIsoDate(value), {
  error: 'a day is written YYYY-MM-DD and is in the calendar',
});
const words = z.string().max(LONGEST_WORDS);
const lengthM = z.number().min(0);
const isMinus = z.boolean().optional();
const pointM = z.tuple([z.number(), z.number()]);

const lawnPart = z.discriminatedUnion('shape', [
  z.strictObject({ shape: z.literal('rectangle'), lengthM, widthM: lengthM, minus: isMinus }),
  z.strictObject({
    shape: z.literal('triangle'),
    sidesM: z.tuple([lengthM, lengthM, lengthM]),
    minus: isMinus,
  }),
  z.strictObject({ shape: z.literal('circle'), diameterM: lengthM, minus: isMinus }),
  z.strictObject({ shape: z.literal('ellipse'), lengthM, widthM: lengthM, minus: isMinus }),
  z.strictObject({
    shape: z.literal('offsets'),
    spacingM: lengthM,
    offsetsM: z.array(lengthM).max(MOST_PARTS),
    minus: isMinus,
  }),
  z.strictObject({ shape: z.literal('outline'), pointsM: z.array(pointM).max(MOST_PARTS), minus: isMinus }),
]);

const answer = z.strictObject({
  questionId: z.string().regex(/^[a-z][A-Za-z0-9]*$/, 'a question id is one camelCase word'),
  value: z.union([z.number(), z.boolean(), words, z.array(lawnPart).min(1).max(MOST_PARTS)]),
  typed: words,
  givenOn: day.optional(),
});

const pack = z.strictObject({
  id: words,
  version: words,
  sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a checksum is 64 hexadecimal digits'),
});

const MONTHS = 12;
const monthly = z.array(z.number()).length(MONTHS, 'twelve values, January to December');
const climate = z.strictObject({
  from: words,
  hasRange: z.boolean(),
  tMinC: monthly,
  tMaxC: monthly,
  rainMm: monthly.optional(),
  airFrostDays: monthly.optional(),
});
const areaAnswer = answer.extend({ area: words });

const answerList = z
  .array(answer)
  .refine((list) => new Set(list.map(({ questionId }) => questionId)).size === list.length, {
    error: 'a question is answered once',
  });

const days = { startOn: day, endOn: day };
const toldOn = day;
const record = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('done'),
    step: words,
    ...days,
    asItShould: z.boolean().nullable(),
    partly: z.literal(true).optional(),
    note: words,
    toldOn,
  }),
  z.strictObject({ kind: z.literal('left-out'), step: words, toldOn }),
  z.strictObject({
    kind: z.literal('sign'),
    step: words,
    sign: words,
    seen: z.boolean(),
    partly: z.literal(true).optional(),
    toldOn,
  }),
  z.strictObject({ kind: z.literal('seed-up'), upOn: day.nullable(), toldOn }),
  z.strictObject({ kind: z.literal('trouble'), trouble: words, note: words, toldOn }),
]);

const followed = z.strictObject({
  madeOn: day,
  assumeAll: z.boolean(),
  planned: z.array(z.strictObject({ step: words, title: words, ...days })),
  records: z.array(record),
});

export const savedSessionSchema = z.strictObject({
  format: z.literal(1),
  seedbedSession: z.union([z.literal(1), z.literal(2)]).transform(() => 2 as const),
  pack,
  startedOn: day,
  climate: climate.optional(),
  answers: answerList,
  dormant: answerList,
  // Sessions of the first version have none.
  heldOver: answerList.default([]),
  areas: z.array(words).default([]),
  inAreas: z
    .array(areaAnswer)
    .refine(
      (list) => new Set(list.map(({ area, questionId }) => `${area} ${questionId}`)).size === list.length,
      { error: 'a question is answered once in each area' },
    )
    .default([]),
  followed: followed.optional(),
});

/** The value checked as a whole session. */
export function savedSession(value: unknown): z.ZodSafeParseResult<SavedSession> {
  return savedSessionSchema.safeParse(value) as z.ZodSafeParseResult<SavedSession>;
}

/** With its area where it has one. */
export function savedAnswer(value: unknown): SavedAnswer | undefined {
  return z.union([areaAnswer, answer]).safeParse(value).data as SavedAnswer | undefined;
}

export function areaName(value: unknown): string | undefined {
  return areaAnswer.safeParse(value).data?.area;
}

export function packReference(value: unknown): PackReference | undefined {
  return pack.safeParse(value).data;
}

export function startDay(value: unknown): IsoDate | undefined {
  return day.safeParse(value).data;
}

export function ownClimate(value: unknown): OwnClimate | undefined {
  return climate.safeParse(value).data;
}

/** Each problem as a line: where it is, what is allowed. */
export function problemsOf(error: z.ZodError): string[] {
  return error.issues.map(
    ({ path, message }) => `${path.length === 0 ? 'the file' : path.join('.')}: ${message}`,
  );
}
