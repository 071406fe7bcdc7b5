/** Several areas planned together: nothing of one area's plan is lost, and no day holds more than its hours. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type IsoDate, parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan, PlanStep } from '../../src/planner/plan.js';
import { planLawn } from '../../src/planner/plan-lawn.js';
import { times } from '../depth.js';
import { pack } from './any-lawn.js';

const today = parseIsoDate('2027-08-10');
const WHOLE: Answers = {
  place: 'Oxford',
  startOn: '2027-08-25',
  workDays: 'any',
  hoursPerDay: 6,
  dog: false,
  children: false,
  scarifier: 'electric',
  mossTreatment: 'rake-only',
  watering: 'sprinkler',
  weedkiller: 'no',
};
const FRONT: Answers = {
  areaM2: 60,
  measuredBy: 'tape',
  mossFraction: 0.4,
  bareFraction: 0.1,
  thatchDepthMm: 10,
};
const BACK: Answers = {
  areaM2: 100,
  measuredBy: 'tape',
  mossFraction: 0.25,
  bareFraction: 0.1,
  thatchDepthMm: 10,
};

const lawn = (areas: readonly (readonly [string, Answers])[], whole: Answers = WHOLE): Plan =>
  planLawn({
    pack,
    answers: whole,
    areas: areas.map(([name, answers]) => ({ name, answers })),
    today,
    assumeAll: true,
  });
const alone = (own: Answers, whole: Answers = WHOLE): Plan =>
  assemblePlan({ pack, answers: { ...whole, ...own }, today, assumeAll: true });
const stepOf = (plan: Plan, id: string): PlanStep => {
  const step = plan.steps.find((each) => each.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  return step;
};
const daysIn = ({ startOn, endOn }: { startOn: IsoDate; endOn: IsoDate }): IsoDate[] =>
  Array.from({ length: daysBetween(startOn, endOn) + 1 }, (_, day) => addDays(startOn, day));

describe('a lawn of several areas', () => {
  const plan = lawn([
    ['front', FRONT],
    ['back', BACK],
  ]);

  it('has each step once, with the amounts of each area as in a plan of its own', () => {
    expect(new Set(plan.steps.map(({ id }) => id)).size).toBe(plan.steps.length);
    const seedOf = (each: Plan) => stepOf(each, 'sow').amounts;
    expect(seedOf(plan)).toEqual([
      ...seedOf(alone(FRONT)).map((amount) => ({ ...amount, area: 'front' })),
      ...seedOf(alone(BACK)).map((amount) => ({ ...amount, area: 'back' })),
    ]);
  });

  it('adds the areas up before the packs are chosen', () => {
    const needOf = (each: Plan, id: string): number =>
      each.shopping.find(({ materialId }) => materialId === id)?.need?.amount ?? 0;
    const seedId = stepOf(plan, 'sow').amounts[0]?.materialId ?? '';
    const apart = needOf(alone(FRONT), seedId) + needOf(alone(BACK), seedId);
    expect(apart).toBeGreaterThan(0);
    expect(needOf(plan, seedId)).toBeCloseTo(apart, 6);
    expect(plan.lawn.areaM2).toBe(160);
  });

  it('judges each area by itself and says so', () => {
    const [front, back] = lawn([
      ['front', FRONT],
      ['back', { ...BACK, mossFraction: 0, bareFraction: 0 }],
    ]).areas;
    expect(front?.verdict.id).toBe(alone(FRONT).verdict.id);
    expect(back?.verdict.id).toBe(alone({ ...BACK, mossFraction: 0, bareFraction: 0 }).verdict.id);
    expect(front?.verdict.id).not.toBe(back?.verdict.id);
  });

  it('names the area of a step that only one of them takes', () => {
    const mixed = lawn([
      ['front', FRONT],
      ['back', { ...BACK, mossFraction: 0, bareFraction: 0 }],
    ]);
    expect(stepOf(mixed, 'scarify').title).toMatch(/\(front\)$/);
    expect(stepOf(plan, 'scarify').title).not.toContain('(');
  });

  it('is the same plan as ever where it has one area only', () => {
    const one = lawn([['front', FRONT]]);
    const plain = alone(FRONT);
    const bare = (steps: Plan['steps']) =>
      steps.map((step) => ({ ...step, amounts: step.amounts.map(({ area, ...amount }) => amount) }));
    expect(bare(one.steps)).toEqual(plain.steps);
    expect(one.findings).toEqual(plain.findings);
    expect(one.verdict).toEqual(plain.verdict);
    expect(one.shopping).toEqual(plain.shopping);
    expect(one.cautions).toEqual(plain.cautions);
  });

  it('asks no more hours of a day than there are, whatever the areas', () => {
    const side = fc.record({
      areaM2: fc.integer({ min: 10, max: 90 }),
      mossFraction: fc.integer({ min: 0, max: 50 }).map((percent) => percent / 100),
      bareFraction: fc.integer({ min: 0, max: 30 }).map((percent) => percent / 100),
      thatchDepthMm: fc.integer({ min: 2, max: 24 }),
      scarify: fc.boolean(),
    });
    let busy = 0;
    fc.assert(
      fc.property(
        fc.array(side, { minLength: 2, maxLength: 4 }),
        fc.integer({ min: 4, max: 8 }),
        (sides, hours) => {
          const whole = { ...WHOLE, hoursPerDay: hours };
          const named = sides.map(({ scarify, ...own }, at) => [`part ${at}`, own as Answers] as const);
          const together = lawn(named, whole);
          const onDay = new Map<IsoDate, number>();
          for (const [name, own] of named) {
            for (const step of alone(own, whole).steps) {
              const parts = stepOf(together, step.id).parts.filter(
                ({ area }) => area === undefined || area === name,
              );
              for (const part of parts) {
                let left = step.workHours / parts.length;
                for (const day of daysIn(part)) {
                  onDay.set(day, (onDay.get(day) ?? 0) + Math.min(left, hours));
                  left = Math.max(0, left - hours);
                }
              }
            }
          }
          // Hours in a plan are rounded for the eye.
          for (const [day, sum] of onDay)
            expect(sum, `${day} of ${hours} h`).toBeLessThanOrEqual(hours + 0.02);
          busy = Math.max(busy, ...onDay.values());
        },
      ),
      { numRuns: times(20, 60), seed: 4 },
    );
    // The lawns are large enough for the check to bind.
    expect(busy).toBeGreaterThan(3);
  });

  it('keeps every wait within each area', () => {
    for (const { name, answers } of [
      { name: 'front', answers: FRONT },
      { name: 'back', answers: BACK },
    ]) {
      for (const step of alone(answers).steps) {
        for (const wait of step.after) {
          const partOf = (id: string) =>
            stepOf(plan, id).parts.find(({ area }) => area === undefined || area === name);
          const gap = daysBetween(partOf(wait.step)?.endOn as IsoDate, partOf(step.id)?.startOn as IsoDate);
          expect(gap, `${step.id} after ${wait.step}`).toBeGreaterThanOrEqual(wait.minDays);
          if (wait.maxDays !== null) expect(gap).toBeLessThanOrEqual(wait.maxDays);
        }
      }
    }
  });
});
