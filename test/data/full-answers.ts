/** Lawns whose owner answered every question: any allowed value, and dormant questions left alone. */
import fc from 'fast-check';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import type { Question } from '../../src/rules/schema.js';
import { isAsked } from '../../src/rules/scope.js';
import { pack } from '../planner/any-lawn.js';

const today = parseIsoDate('2026-04-01');

const someDayOf = (...months: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(fc.constantFrom(...months), fc.integer({ min: 1, max: 28 }))
    .map(([month, day]) => `${month}-${String(day).padStart(2, '0')}`);

/** Small and large values are as likely as middling ones, so that thresholds are met on both sides. */
function valueFor(question: Question): fc.Arbitrary<AnswerValue> {
  switch (question.kind) {
    case 'yes-no':
      return fc.boolean();
    case 'choice':
      return fc.constantFrom(...(question.options ?? []).map(({ value }) => value));
    case 'fraction':
      return fc.constantFrom(0, 0.02, 0.07, 0.12, 0.25, 0.33);
    case 'date':
      return question.noDate === undefined
        ? someDayOf('2025-11', '2026-02', '2026-03')
        : fc.oneof(
            { weight: 3, arbitrary: fc.constant(question.noDate.value) },
            { weight: 2, arbitrary: someDayOf('2025-01', '2025-05', '2025-08', '2025-11', '2026-03') },
          );
    case 'text':
      return fc.constant('Back lawn');
    case 'place':
      return fc.constantFrom('Oxford', '-37.8, 144.9');
    case 'parts':
      return fc.constant([{ shape: 'rectangle', lengthM: 12, widthM: 7 }]);
    default: {
      const { min, max, oddBelow = min, oddAbove = max } = question.bounds ?? { min: 0, max: 1 };
      const share = fc.constantFrom(0, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 1);
      return fc.oneof(
        fc.constantFrom(min, max),
        share.map((part) => oddBelow + part * (oddAbove - oddBelow)),
      );
    }
  }
}

/** Answers to every question that is asked. */
export const anyFullAnswers: fc.Arbitrary<Answers> = fc
  .record(Object.fromEntries(pack.questions.map((question) => [question.id, valueFor(question)])))
  .map((all) => withoutDormant(all as Answers));

/** Leaves out questions whose own condition is not met; they hang on each other, so again until nothing changes. */
export function withoutDormant(answers: Answers): Answers {
  const scope = scopeFor({ pack, answers, today, assume: 'nothing' });
  const kept = Object.entries(answers).filter(([id]) => {
    const question = pack.questionById.get(id);
    return question !== undefined && isAsked(question, scope) !== false;
  });
  return kept.length === Object.keys(answers).length ? answers : withoutDormant(Object.fromEntries(kept));
}
