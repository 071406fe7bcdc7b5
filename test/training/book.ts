/** The bundled cases, worked out, and trainees of several kinds to do them. */
import { Writable } from 'node:stream';
import fc from 'fast-check';
import { readCases } from '../../src/rules/read-cases.js';
import type { CaseBook } from '../../src/rules/schema-case.js';
import type { VerdictId } from '../../src/rules/schema-judgement.js';
import { type Attempt, freshAttempt } from '../../src/training/attempt.js';
import { isRightVerdict } from '../../src/training/diagnosis.js';
import { type JudgedLook, judgeLook } from '../../src/training/judge-look.js';
import { perfectAttempt } from '../../src/training/perfect.js';
import { rightAmount } from '../../src/training/right-amount.js';
import { offeredSteps } from '../../src/training/step-order.js';
import { type WorkedCase, workOut } from '../../src/training/worked-case.js';
import { pack } from '../planner/any-lawn.js';

export const book = readCases('rules').book as CaseBook;
export const worked: readonly WorkedCase[] = book.cases.map((lesson) => workOut(lesson, pack, book.marking));
export const byId = (id: string): WorkedCase => {
  const found = worked.find(({ lesson }) => lesson.id === id);
  if (found === undefined) throw new Error(`there is no case ${id}`);
  return found;
};

/** Looks taken one after the other. */
export function looksIn(each: WorkedCase, ids: readonly string[]): JudgedLook[] {
  return ids.map((id, index) => {
    const question = each.looks.find((look) => look.id === id);
    if (question === undefined) throw new Error(`${id} is no look of ${each.lesson.id}`);
    return judgeLook(each, question, ids.slice(0, index));
  });
}

/** Looks at everything there is, in the pack's order, and is right about the rest. */
export function asksEverything(each: WorkedCase): Attempt {
  const before = everything.get(each);
  if (before !== undefined) return before;
  const ids = each.looks.map(({ id }) => id);
  const attempt = { ...perfectAttempt(each), looks: looksIn(each, ids) };
  everything.set(each, attempt);
  return attempt;
}
const everything = new Map<WorkedCase, Attempt>();

const sureOf = (attempt: Attempt, sure: number): Attempt =>
  attempt.commitment === undefined
    ? attempt
    : {
        ...attempt,
        commitment: {
          ...attempt.commitment,
          sure,
          findings: attempt.commitment.findings.map(({ id }) => ({ id, sure })),
        },
      };

/** Looks at what matters, is right, and says so with some reserve. */
export const isGood = (each: WorkedCase): Attempt => sureOf(perfectAttempt(each), 0.8);

/** The verdicts that are wrong in a case. */
export const wrongVerdicts = ({ lesson }: WorkedCase): VerdictId[] =>
  (Object.keys(book.marking.verdicts) as VerdictId[]).filter((id) => !isRightVerdict(lesson, id));

/** Looks, reckons and orders the steps without a fault, and does not know what is wrong. */
export const cannotDiagnose = (each: WorkedCase, verdict: VerdictId, sure: number): Attempt => ({
  ...isGood(each),
  commitment: { verdict, sure, findings: [] },
});

/** Right in all but the sums: leaves them out, or is ten times too low. */
export function cannotReckon(each: WorkedCase, how: 'left out' | 'a tenth'): Attempt {
  const good = isGood(each);
  const wrong = (value: number | null): number | null => (how === 'left out' ? null : (value ?? 0) / 10);
  return {
    ...good,
    amounts: Object.fromEntries(Object.entries(good.amounts).map(([id, value]) => [id, wrong(value)])),
  };
}

/** Names every finding that there is. */
export const namesEverything = (each: WorkedCase, sure: number): Attempt => ({
  ...isGood(each),
  commitment: {
    verdict: each.lesson.expected.verdict,
    sure: 0.8,
    findings: pack.findings.map(({ id }) => ({ id, sure })),
  },
});

/** Chooses by lot: some looks, a verdict, findings, how sure, amounts within tenfold, steps in any order. */
export function byLot(each: WorkedCase): fc.Arbitrary<Attempt> {
  const findings = pack.findings.map(({ id }) => id);
  const steps = offeredSteps(each).map(({ id }) => id);
  const sure = fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100);
  return fc
    .record({
      looks: fc.shuffledSubarray(
        each.looks.map(({ id }) => id),
        { maxLength: 20 },
      ),
      verdict: fc.constantFrom(...(Object.keys(book.marking.verdicts) as VerdictId[])),
      sure,
      findings: fc.shuffledSubarray(findings, { minLength: 1, maxLength: 4 }),
      sures: fc.array(sure, { minLength: 4, maxLength: 4 }),
      // Whole hundredths: a lot of doubles lies nearly always next to nought.
      factors: fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 9, maxLength: 9 }),
      order: fc.shuffledSubarray(steps, { minLength: 1 }),
    })
    .map((lot) => ({
      ...freshAttempt('whole'),
      looks: looksIn(each, lot.looks),
      commitment: {
        verdict: lot.verdict,
        sure: lot.sure,
        findings: lot.findings.map((id, index) => ({ id, sure: lot.sures[index] ?? 0 })),
      },
      amounts: Object.fromEntries(
        each.lesson.amounts.map((asked, index) => [
          asked.id,
          (rightAmount(each, asked)?.value ?? 0) * 10 ** ((lot.factors[index] ?? 0) / 100),
        ]),
      ),
      order: lot.order,
    }));
}

/** A stream that keeps what is written to it. */
export function drillText(): { readonly stream: Writable; readonly text: () => string } {
  let text = '';
  const stream = new Writable({
    write(chunk, _encoding, done) {
      text += String(chunk);
      done();
    },
  });
  return { stream, text: () => text };
}
