/** Grass sown or turfed within the last year is spared what it cannot bear, and the plan says when to look again. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, isIsoDate, parseIsoDate } from '../../src/base/dates.js';
import { readAnswer } from '../../src/interview/read-answer.js';
import { showAnswer } from '../../src/interview/show-answer.js';
import type { Question } from '../../src/rules/schema.js';
import { anyLawn, anyToday, pack, planIfAny } from './any-lawn.js';
import { foundIn, planFor, step, stepsOf } from './plain-lawn.js';

const thin = { bareFraction: 0.35, gapsOverHand: true };
const MONTH_AGO = { ...thin, sownOn: '2027-09-01', sownAs: 'seed', place: '53.8, -1.8' };

/**
 * Weeks from sowing before a step may come. No body prints an age for tines, raking or iron (assumption); light
 * traffic on ryegrass is printed from 8 to 10 weeks (Penn State), labels of iron commonly say six months (memory).
 */
const WEEKS: Readonly<Record<string, number>> = {
  'patch-sow': 8,
  sow: 26,
  scratch: 26,
  'rake-moss': 26,
  clear: 26,
  'treat-moss': 26,
  'weed-by-hand': 26,
  'weedkiller-later': 26,
  'clear-old-turf': 26,
  'low-cut': 52,
  scarify: 52,
  core: 52,
  fork: 52,
  'cores-off': 52,
  'brush-cores': 52,
  'soil-bed': 52,
  'cover-seed': 52,
  lime: 52,
};

describe('a lawn sown a month ago and thin', () => {
  const plan = planFor(MONTH_AGO, '2027-09-30');

  it('is left alone: no cut to the ground, no soil, no seed', () => {
    expect(plan.verdict.title).toMatch(/leave the young grass alone/i);
    expect(stepsOf(plan).filter((id) => WEEKS[id] !== undefined)).toEqual([]);
    expect(plan.shopping.filter(({ materialId }) => /seed|topsoil/.test(materialId))).toEqual([]);
    expect(foundIn(plan)).toContain('young-grass');
  });

  it('is left for eight weeks from its sowing, and judged in April', () => {
    expect(step(plan, 'leave-young').endOn).toBe('2027-10-27');
    expect(step(plan, 'look-at-young').startOn.slice(0, 7)).toBe('2028-04');
  });

  it('is kept moist and mown high, as seed; as turf it is watered until no corner lifts', () => {
    expect(stepsOf(plan)).toContain('tend-seedlings');
    const turf = planFor({ ...MONTH_AGO, sownAs: 'turf' }, '2027-09-30');
    expect(stepsOf(turf)).toContain('root-turf');
    expect(stepsOf(turf)).not.toContain('tend-seedlings');
  });

  it('would be renovated, were it old', () => {
    expect(stepsOf(planFor({ ...MONTH_AGO, sownOn: 'no' }, '2027-09-30'))).toContain('sow');
  });
});

describe('by its age', () => {
  const aged = (weeks: number, more = {}) => {
    const startOn = parseIsoDate('2027-08-20');
    return planFor({ ...thin, mossFraction: 0.15, sownOn: addDays(startOn, -7 * weeks), ...more }, startOn);
  };

  it('bare places bigger than a hand are mended from eight weeks, and nothing else touches it until 26', () => {
    expect(stepsOf(aged(7))).not.toContain('patch-sow');
    expect(stepsOf(aged(9))).toContain('patch-sow');
    expect(stepsOf(aged(25))).not.toContain('sow');
    expect(stepsOf(aged(25))).not.toContain('rake-moss');
    expect(step(aged(25), 'look-at-young').startOn > '2027-08-20').toBe(true);
  });

  it('from 26 weeks it is overseeded after a hand rake, from 52 as any lawn', () => {
    expect(stepsOf(aged(27))).toEqual(expect.arrayContaining(['rake-moss', 'clear', 'sow']));
    for (const barred of ['low-cut', 'scarify', 'soil-bed', 'cover-seed'])
      expect(stepsOf(aged(51))).not.toContain(barred);
    for (const done of ['low-cut', 'scarify', 'soil-bed', 'sow']) expect(stepsOf(aged(53))).toContain(done);
  });

  it('no iron goes on before 26 weeks, and no lime before a year', () => {
    const product = {
      mossTreatment: 'label',
      labelForm: 'liquid',
      labelRateMlPerM2: 10,
      labelWaterLPerM2: 0.1,
    };
    const asked = { ...product, labelWaitDays: 14, tankL: 5, soilPh: 5.2 };
    expect(stepsOf(aged(25, asked))).not.toContain('treat-moss');
    expect(stepsOf(aged(27, asked))).toContain('treat-moss');
    expect(stepsOf(aged(51, asked))).not.toContain('lime');
    expect(stepsOf(aged(53, asked))).toContain('lime');
  });
});

describe('the question', () => {
  const question = pack.questionById.get('sownOn') as Question;
  const today = parseIsoDate('2027-09-30');
  const read = (typed: string) => readAnswer(question, typed, today);

  it.each(['no', 'No.', 'over a year ago', 'more than a year', 'years ago', 'never', 'not in the last year'])(
    'hears "%s" as older than a year, in plain words',
    (typed) => {
      expect(read(typed)).toEqual({ kind: 'value', value: 'no', understood: 'not within the last year' });
    },
  );

  it.each([
    ['1 September', '2027-09-01'],
    ['4 weeks ago', '2027-09-02'],
    ['a year ago', '2026-09-30'],
  ])('hears "%s" as a day', (typed, date) => {
    expect(read(typed)).toMatchObject({ kind: 'value', value: date });
  });

  it('stands in a file as a date or "no", and is shown in words', () => {
    expect(showAnswer(question, 'no')).toBe('not within the last year');
    expect(showAnswer(question, '2027-09-01')).toMatch(/1 September 2027/);
  });

  it('is not assumed away in silence', () => {
    for (const sownOn of ['unknown', undefined]) {
      const told = planFor({ ...thin, sownOn }, '2027-08-20').assumptions;
      const about = told.find(({ questionId }) => questionId === 'sownOn');
      expect(about?.assumed).toBe('not within the last year');
      expect(about?.effect).toMatch(/would have to wait/);
    }
  });
});

describe('over generated lawns', () => {
  it('no plan touches young grass with a step that it cannot bear yet', () => {
    const ages = fc.integer({ min: 0, max: 430 });
    let young = 0;
    fc.assert(
      fc.property(anyLawn, anyToday, ages, (lawn, today, days) => {
        const sownOn = addDays(today, -days);
        const plan = planIfAny({
          pack,
          answers: { ...lawn, startOn: today, sownOn },
          today,
          assumeAll: true,
        });
        if (plan === undefined || !isIsoDate(sownOn)) return;
        if (days < 364) young++;
        const isGivenUp = stepsOf(plan).includes('clear-old-turf');
        for (const { id, startOn } of plan.steps) {
          const weeks = isGivenUp ? Math.min(26, WEEKS[id] ?? 0) : (WEEKS[id] ?? 0);
          expect(daysBetween(sownOn, startOn), `${id} on ${startOn}, sown ${sownOn}`).toBeGreaterThanOrEqual(
            7 * weeks,
          );
        }
        if (days < 56 && plan.verdict.id !== 'not-a-lawn') {
          expect(plan.steps.some(({ startOn, id }) => /^look/.test(id) && startOn > today)).toBe(true);
        }
      }),
      { numRuns: 250, seed: 20271106 },
    );
    expect(young).toBeGreaterThan(120);
  });
});
