/** Random lawns for property tests: any subset of questions, with any allowed value, "unknown" or nothing. */
import fc from 'fast-check';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { assemblePlan, type PlanInput, ScheduleClash } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { indexPack, type Pack, type PackData } from '../../src/rules/pack.js';
import { readPack } from '../../src/rules/read.js';
import type { Question } from '../../src/rules/schema.js';

export const pack: Pack = indexPack(readPack('rules').data as PackData);

const someDay = fc
  .record({
    year: fc.integer({ min: 2026, max: 2032 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 28 }),
  })
  .map(({ year, month, day }) => `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`);

function valueFor(question: Question): fc.Arbitrary<AnswerValue> {
  switch (question.kind) {
    case 'yes-no':
      return fc.boolean();
    case 'choice':
      return fc.constantFrom(...(question.options ?? []).map(({ value }) => value));
    case 'date':
      // Most lawns are old; the young ones are of every age.
      if (question.noDate !== undefined)
        return fc.oneof(
          { weight: 3, arbitrary: fc.constant(question.noDate.value) },
          { weight: 1, arbitrary: someDay },
        );
      return question.id === 'startOn' ? someDay : someDay.map((day) => day.replace(/^20../, '2025'));
    case 'fraction':
      // Three shares of one lawn must not pass the whole.
      return fc.integer({ min: 0, max: 33 }).map((percent) => percent / 100);
    case 'text':
      return fc.constantFrom('Back lawn', '#3 *Rex*', '| a | b |');
    case 'place':
      return fc.constantFrom('Oxford', 'Lerwick', '-37.8, 144.9', '51.5, -0.1', 'somewhere');
    case 'parts':
      return fc.constant([{ shape: 'rectangle', lengthM: 12, widthM: 7 }]);
    default: {
      const { min, max, oddBelow = min, oddAbove = max } = question.bounds ?? { min: 0, max: 1 };
      return fc.oneof(
        fc.constantFrom(min, max),
        fc.double({ min: oddBelow, max: oddAbove, noNaN: true }).map((value) => Number(value.toPrecision(3))),
      );
    }
  }
}

/** A whole lawn: an answer to every question that is typed by itself, some of them "unknown". */
export const anyLawn: fc.Arbitrary<Answers> = fc.record(
  Object.fromEntries(
    pack.questions
      .filter(({ id }) => id !== 'lawnParts')
      .map((question) => [
        question.id,
        fc.oneof(
          { weight: 7, arbitrary: valueFor(question) },
          { weight: 1, arbitrary: fc.constant('unknown') },
        ),
      ]),
  ),
);

/** Answers to some questions; `areaM2` and `lawnParts` never together. */
export const anyAnswers: fc.Arbitrary<Answers> = fc
  .record(
    Object.fromEntries(
      pack.questions
        .filter(({ id }) => id !== 'lawnParts')
        .map((question) => [
          question.id,
          fc.oneof(
            { weight: 4, arbitrary: valueFor(question) },
            { weight: 1, arbitrary: fc.constant('unknown') },
          ),
        ]),
    ),
    { requiredKeys: [] },
  )
  .map((answers) => answers as Answers);

export const anyToday = someDay.map((day) => parseIsoDate(day));

/** The plan, or undefined where the answers fit no calendar: a label's wait of two months in a short season. */
export function planIfAny(input: PlanInput): Plan | undefined {
  try {
    return assemblePlan(input);
  } catch (error) {
    if (error instanceof ScheduleClash) return undefined;
    throw error;
  }
}
