/** Explanations hold: what is cited is enough and none too many, and a change that is promised does what it says. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { openQuestions } from '../../src/interview/open-questions.js';
import { verdictChoice } from '../../src/interview/plan-pieces.js';
import { explainerFor } from '../../src/planner/explain.js';
import { leadsTo } from '../../src/planner/leads-to.js';
import { allAnswers, proofOf, settledValue } from '../../src/planner/proof.js';
import { smallestChanges } from '../../src/planner/smallest-change.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { thresholdsOf } from '../../src/rules/cells.js';
import { evaluate } from '../../src/rules/evaluate.js';
import type { Expression } from '../../src/rules/schema.js';
import { anyLawn, anyToday, pack } from './any-lawn.js';

const LAWNS = 12;
const lawns = fc.sample(fc.tuple(anyLawn, anyToday), { numRuns: LAWNS, seed: 44 });
const explained = lawns.map(([answers, today]) => ({
  answers,
  today,
  ...explainerFor({ pack, answers, today, assumeAll: true }),
}));

const conclusions: readonly { readonly name: string; readonly rule: Expression }[] = [
  { name: 'verdict', rule: verdictChoice(pack) },
  ...pack.steps.map(({ id, when }) => ({ name: `step ${id}`, rule: when })),
  ...pack.findings.map(({ id, when }) => ({ name: `finding ${id}`, rule: when })),
];

describe('the reasons given for a conclusion', () => {
  it('are enough: whatever all other answers were, it would be the same', () => {
    let proved = 0;
    for (const { knowledge, answers } of explained) {
      // The place stands, known or not: no reason is given for it.
      const place = answers.place ?? 'unknown';
      for (const { name, rule } of conclusions) {
        const proof = proofOf(rule, knowledge);
        if (proof === undefined) continue;
        proved++;
        for (const [other] of lawns) {
          const outcome = evaluate(rule, knowledge.supposing({ ...other, place, ...proof.answers }));
          expect(outcome.known && outcome.value, name).toBe(proof.value);
        }
      }
    }
    expect(proved).toBeGreaterThan(LAWNS * 60);
  });

  it('are none too many: without any one of them it would be open', () => {
    for (const { knowledge } of explained) {
      for (const { name, rule } of conclusions) {
        const proof = proofOf(rule, knowledge);
        if (proof === undefined) continue;
        for (const id of proof.rests) {
          const { [id]: _, ...fewer } = proof.answers;
          expect(settledValue(rule, knowledge, fewer), `${name} without ${id}`).toBeUndefined();
        }
      }
    }
  });
});

describe('the smallest change', () => {
  it('brings the step in when it is made, and is one answer or two', () => {
    let found = 0;
    for (const { knowledge, plan } of explained) {
      for (const step of pack.steps) {
        if (plan.steps.some(({ id }) => id === step.id)) continue;
        const rests = proofOf(step.when, knowledge)?.rests ?? [];
        for (const { changed } of smallestChanges(step.when, rests, knowledge)) {
          found++;
          expect(changed.length).toBeLessThanOrEqual(2);
          const answers = Object.fromEntries(changed.map(({ question, value }) => [question.id, value]));
          const outcome = evaluate(step.when, knowledge.supposing({ ...allAnswers(knowledge), ...answers }));
          expect(outcome.known && outcome.value, step.id).toBe(true);
        }
      }
    }
    expect(found).toBeGreaterThan(LAWNS * 10);
  });

  it('is two answers only where no single one would do', () => {
    for (const { knowledge, plan } of explained.slice(0, 4)) {
      for (const step of pack.steps.filter(({ id }) => !plan.steps.some((each) => each.id === id))) {
        const rests = proofOf(step.when, knowledge)?.rests ?? [];
        const [first] = smallestChanges(step.when, rests, knowledge);
        if (first?.changed.length !== 2) continue;
        for (const [other] of lawns) {
          for (const [id, value] of Object.entries(other)) {
            const alone = { ...allAnswers(knowledge), [id]: value };
            const outcome = evaluate(step.when, knowledge.supposing(alone));
            expect(outcome.known && outcome.value, `${step.id} by ${id}`).toBe(false);
          }
        }
      }
    }
  });
});

const today = parseIsoDate('2027-03-13');
const scopeOf = (answers: Answers) => scopeFor({ pack, answers, today, assume: 'said', timing: 'open' });
const why = (questionId: string, answers: Record<string, AnswerValue>): string =>
  leadsTo({
    pack,
    question: pack.questionById.get(questionId) as NonNullable<ReturnType<typeof pack.questionById.get>>,
    answers,
    scopeOf,
    thresholds: thresholdsOf(pack),
  }).join('\n');

describe('why a question is asked', () => {
  it('tells what each answer settles, in the words of the rules', () => {
    const told = why('slopeDeg', {});
    // Flat enough to need no word about banks, a bank that a mower may go on, and one for hands alone.
    expect(told).toMatch(/^Below 5 degrees: .*clears "The slope is too steep for machines"/);
    expect(told).toMatch(/\n5 degrees or more and below 15 degrees: .*clears "The slope is too steep/);
    expect(told).toMatch(
      /Above 15 degrees: shows "The slope is too steep for machines"; rules out .*hollow-tine/,
    );
  });

  it('tells what it bears on where no answer settles anything alone', () => {
    expect(why('areaM2', {})).toMatch(/^Alone it settles nothing yet\. With other answers it bears on: "/);
  });

  it('is told for every question that is asked', () => {
    for (const question of openQuestions(pack, scopeOf({}))) {
      if (question.askWhen !== undefined) continue;
      expect(why(question.id, {}), question.id).not.toBe('');
    }
  });
});

describe('an explanation in words', () => {
  const answers: Answers = {
    areaM2: 84,
    buriedServices: 'none',
    waterWithinM: 60,
    mossFraction: 0.4,
    thatchDepthMm: 18,
    sunHoursPerDay: 6,
    mossTreatment: 'label',
    labelForm: 'liquid',
    labelRateMlPerM2: 10,
    labelWaterLPerM2: 0.1,
    screwdriver: 'effort',
    soilCrumbs: 'crumbly',
    lastRainDaysAgo: 2,
    puddles: 'none',
    hardWear: false,
  };
  const input = { pack, answers, today, assumeAll: true };
  const { explain, targets, plan } = explainerFor(input);
  const linesFor = (target: string): string => explain(target)?.lines.join('\n') ?? '';

  it('says of a step what brought it in and how far that could differ', () => {
    expect(linesFor('treat-moss')).toMatch(
      /^Treat the moss is in the plan\. It follows from:\n(?:- .*\n)?- moss cover: 40 % \(/,
    );
    expect(linesFor('treat-moss')).toContain('- moss treatment: with a product whose label I can read now');
  });

  it('says of a step that is not there what would bring it in', () => {
    expect(linesFor('core')).toMatch(/is not in the plan\. It follows from:\n- /);
    expect(linesFor('core')).toMatch(
      /It would be otherwise if thatch depth were .* mm or more and not 18 mm\./,
    );
  });

  it('tells the way that the rule took where several lead to the same end', () => {
    const dormant = { ...answers, lawnColour: 'brown-all', tugTest: 'holds', lastRainDaysAgo: 30 };
    const { rests } = explainerFor({ ...input, answers: dormant }).explain('sow') ?? { rests: [] };
    expect([...rests].sort()).toEqual(['lastRainDaysAgo', 'lawnColour', 'tugTest']);
  });

  it('marks what was assumed', () => {
    expect(linesFor('lime')).toContain('acidity of the soil: pH 6.5, assumed');
  });

  it('says that signs disagree, and gives the hand test', () => {
    const told = linesFor('compacted');
    expect(told).toMatch(/Signs for it: .*\nSigns against it: .*\nThe signs disagree\. The hand test: /);
  });

  it('shows the sum behind an amount, with its answers and figures', () => {
    expect(linesFor('moss-product')).toContain('84 m² × 10 mL/m² by your label = 840 mL');
  });

  it('is there for every name it lists, and for no other', () => {
    for (const { id } of targets) expect(linesFor(id), id).not.toBe('');
    expect(explain('no-such-step')).toBeUndefined();
    expect(plan.verdict.id).toBe('renovate');
  });

  it('leaves no slot unfilled', () => {
    for (const { id } of targets) expect(linesFor(id), id).not.toMatch(/[{}]|undefined|NaN/);
  });
});
