/** What must be true of every plan, over thousands of generated lawns and days. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween, isInWindow, weekdayOf } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan, ScheduleClash } from '../../src/planner/assemble-plan.js';
import type { Plan, PlanStep } from '../../src/planner/plan.js';
import type { Step } from '../../src/rules/schema.js';
import { times } from '../depth.js';
import { anyAnswers, anyToday, pack } from './any-lawn.js';
import { publishedHere } from './seasons-here.js';

const LAWNS = times(200, 1500);
/** The same lawns every time; a failure names its lawn. */
const SEED = 20261126;

const lawns = fc.sample(fc.tuple(anyAnswers, anyToday), { numRuns: LAWNS, seed: SEED });
const made = lawns.flatMap(([answers, today]) => {
  try {
    return [{ answers, today, plan: assemblePlan({ pack, answers, today, assumeAll: true }) }];
  } catch (error) {
    // A long wait on a label and a short season can rule each other out: that is said, and no plan is made.
    if (error instanceof ScheduleClash) return [];
    throw error;
  }
});

function forEveryPlan(check: (plan: Plan, answers: Answers) => void): void {
  for (const { answers, today, plan } of made) {
    try {
      check(plan, answers);
    } catch (error) {
      throw new Error(`for ${JSON.stringify(answers)} on ${today}`, { cause: error });
    }
  }
}

const stepOf = (plan: Plan, id: string): PlanStep | undefined => plan.steps.find((step) => step.id === id);
const has = (plan: Plan, stepId: string, cautionId: string): boolean =>
  stepOf(plan, stepId)?.cautions.includes(cautionId) === true &&
  plan.cautions.some(({ id }) => id === cautionId);

/** From the last day of the one to the first of the other: part by part, or from the last part to what is done whole. */
function gapsBetween(before: PlanStep, step: PlanStep): number[] {
  if (before.parts.length > 1 && step.parts.length > 1)
    return step.parts.map(({ startOn }, index) =>
      daysBetween((before.parts[index] as PlanStep['parts'][number]).endOn, startOn),
    );
  const end = (before.parts.at(-1) as PlanStep['parts'][number]).endOn;
  return step.parts.map(({ startOn }) => daysBetween(end, startOn));
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe('every plan', () => {
  it('is made for all lawns but the rare one whose waits and seasons rule each other out', () => {
    expect(lawns.length - made.length).toBeLessThan(Math.max(2, LAWNS / 300));
  });

  it('holds only finite numbers, and no negative amount, hour or wait', () => {
    forEveryPlan((plan) => {
      for (const number of numbersIn(plan)) expect(Number.isFinite(number)).toBe(true);
      for (const step of plan.steps) {
        expect(step.workHours).toBeGreaterThanOrEqual(0);
        for (const { amount, range } of step.amounts) {
          expect(amount ?? 0).toBeGreaterThanOrEqual(0);
          if (amount !== null && range !== null) {
            expect(range.min).toBeLessThanOrEqual(amount);
            expect(range.max).toBeGreaterThanOrEqual(amount);
          }
        }
      }
      expect(JSON.stringify(plan)).not.toMatch(/NaN|undefined|\{figures|\{facts/);
    });
  });

  it('keeps every wait between its steps', () => {
    forEveryPlan((plan) => {
      for (const step of plan.steps) {
        for (const { step: before, minDays, maxDays } of step.after) {
          for (const gap of gapsBetween(stepOf(plan, before) as PlanStep, step)) {
            expect(gap, `${before} to ${step.id}`).toBeGreaterThanOrEqual(minDays);
            if (maxDays !== null) expect(gap, `${before} to ${step.id}`).toBeLessThanOrEqual(maxDays);
          }
        }
      }
    });
  });

  it('finishes one part before the next is begun, and does every part inside the same season', () => {
    forEveryPlan((plan) => {
      // A part is mown and fed in its own time, while others are still worked on.
      const inOwnTime = new Set(pack.steps.flatMap(({ id, eachPart }) => (eachPart === true ? [id] : [])));
      const parted = plan.steps.filter(({ id, parts }) => parts.length > 1 && !inOwnTime.has(id));
      for (const { parts } of parted) {
        for (const other of parted)
          for (const [index, { startOn }] of parts.entries())
            if (index > 0) expect(startOn >= (other.parts[index - 1]?.endOn ?? '')).toBe(true);
        expect(
          daysBetween(
            (parts[0] as PlanStep['parts'][number]).startOn,
            (parts.at(-1) as PlanStep['parts'][number]).endOn,
          ),
        ).toBeLessThan(100);
      }
      const count = new Set(parted.map(({ parts }) => parts.length));
      expect(count.size).toBeLessThanOrEqual(1);
    });
  });

  it('puts no more work on a day than the people have hours, and no work on a weekday where only weekends are free', () => {
    forEveryPlan((plan, answers) => {
      if (stepOf(plan, 'ask-contractor') !== undefined) return;
      const hands = Number(
        /people at work[^:]*: (\d+)/.exec(stepOf(plan, 'mark-out-parts')?.how.join(' ') ?? '')?.[1] ?? 1,
      );
      const dayHours = typeof answers.hoursPerDay === 'number' ? answers.hoursPerDay : 6;
      const hoursOn = new Map<string, { hours: number; steps: number }>();
      for (const step of plan.steps) {
        if (step.workHours === 0) continue;
        for (const { startOn, endOn } of step.parts) {
          if (answers.workDays === 'weekends')
            for (const day of [startOn, endOn]) expect([6, 7]).toContain(weekdayOf(day));
          if (startOn !== endOn) continue;
          const before = hoursOn.get(startOn) ?? { hours: 0, steps: 0 };
          hoursOn.set(startOn, {
            hours: before.hours + step.workHours / step.parts.length,
            steps: before.steps + 1,
          });
        }
      }
      // Hours in the plan are rounded to three digits.
      for (const [day, { hours, steps }] of hoursOn)
        if (steps > 1) expect(hours, day).toBeLessThanOrEqual(hands * dayHours * 1.01);
    });
  });

  it('puts every step inside its season, in the north and in the south', () => {
    forEveryPlan((plan, answers) => {
      for (const step of plan.steps) {
        const here = publishedHere(pack.stepById.get(step.id) as Step, answers);
        if (here === undefined) continue;
        expect(
          here.some((each) => isInWindow(step.startOn, each)),
          `${step.id} on ${step.startOn}`,
        ).toBe(true);
        if (step.latestOn !== null) expect(step.latestOn >= step.startOn).toBe(true);
      }
    });
  });

  it('gives a dose of a moss product only from the label rate that was read out', () => {
    forEveryPlan((plan, answers) => {
      for (const { amounts, id } of plan.steps) {
        for (const { materialId, amount, basis } of amounts) {
          if (!materialId.startsWith('moss-product')) continue;
          const rate = materialId === 'moss-product' ? answers.labelRateMlPerM2 : answers.labelRateGPerM2;
          expect(basis).toBe('label');
          const isByWater = typeof answers.waterWithinM !== 'number' || answers.waterWithinM < 2;
          if (typeof rate !== 'number' || isByWater) expect(amount, id).toBeNull();
          else
            expect(amount ?? 0).toBeCloseTo(
              Number((rate * plan.lawn.areaM2).toPrecision(3)),
              -Math.log10(rate * plan.lawn.areaM2) + 1,
            );
        }
      }
    });
  });

  it('warns wherever a dog, children, paving or water are at risk from a moss product', () => {
    forEveryPlan((plan, answers) => {
      if (stepOf(plan, 'treat-moss') === undefined) return;
      for (const always of ['label-first', 'spray-protect-yourself', 'no-chemical-down-drain'])
        expect(has(plan, 'treat-moss', always)).toBe(true);
      // Not answered counts as present: the safe side.
      if (answers.dog !== false) expect(has(plan, 'treat-moss', 'moss-killer-dog')).toBe(true);
      if (answers.children !== false) expect(has(plan, 'treat-moss', 'moss-killer-children')).toBe(true);
      if (answers.pavingBeside !== false) expect(has(plan, 'treat-moss', 'iron-stains-paving')).toBe(true);
      if (typeof answers.waterWithinM !== 'number' || answers.waterWithinM <= 2)
        expect(has(plan, 'treat-moss', 'water-strip')).toBe(true);
    });
  });

  it('warns about the current with an electric machine, and about fuel with a petrol one', () => {
    forEveryPlan((plan, answers) => {
      if (stepOf(plan, 'scarify') === undefined) return;
      // Too steep for any machine: then it is a rake, whatever stands in the shed.
      if (typeof answers.slopeDeg === 'number' && answers.slopeDeg > 15) return;
      if (answers.scarifier === 'electric')
        for (const id of [
          'electric-rcd',
          'electric-cable',
          'electric-cut-cable',
          'electric-wet',
          'electric-hands-off',
        ])
          expect(has(plan, 'scarify', id)).toBe(true);
      if (answers.scarifier === 'petrol')
        for (const id of ['petrol-fuel', 'engine-fumes', 'machine-hands-off', 'machine-guards'])
          expect(has(plan, 'scarify', id)).toBe(true);
      if (answers.scarifier === 'electric' || answers.scarifier === 'petrol') {
        for (const id of ['machine-clear-ground', 'machine-eyes-ears-feet'])
          expect(has(plan, 'scarify', id)).toBe(true);
      }
    });
  });

  it('warns about services before anything digs, forks or cores, and never cores where they may lie', () => {
    forEveryPlan((plan, answers) => {
      for (const id of ['fork', 'core', 'dig-over', 'clear-old-turf']) {
        if (stepOf(plan, id) === undefined) continue;
        // Who has checked that nothing lies there has settled it; who does not know has not.
        const isSettled = answers.buriedServices === 'none';
        for (const caution of ['buried-services', 'struck-service'])
          expect(has(plan, id, caution)).toBe(!isSettled);
      }
      if (answers.buriedServices !== 'none') expect(stepOf(plan, 'core')).toBeUndefined();
    });
  });

  it('never sows without a way to water or a word about it', () => {
    forEveryPlan((plan, answers) => {
      const sow = stepOf(plan, 'sow');
      if (sow === undefined) return;
      if (answers.watering === 'none') expect(plan.watering).toEqual([]);
      if (plan.watering.length === 0) {
        expect(plan.notDone.some(({ id }) => id === 'no-water')).toBe(true);
        expect(stepOf(plan, 'wait-for-rain')).toBeDefined();
      }
    });
  });

  it('never feeds above the cap of 1 lb of nitrogen on 1,000 square feet, 4.88 g a square metre at one time', () => {
    // Ask Extension 178841: at most 1 lb of nitrogen at one time on 1,000 ft2, which is 4.88 g/m2; amounts have three digits.
    forEveryPlan((plan, answers) => {
      const percent = typeof answers.feedFirstNumber === 'number' ? answers.feedFirstNumber : 32;
      for (const { amounts } of plan.steps) {
        for (const { materialId, amount } of amounts) {
          if (!/feed$/.test(materialId) || amount === null) continue;
          expect((amount * percent) / 100 / plan.lawn.areaM2).toBeLessThan(4.91);
        }
      }
    });
  });

  it('never scarifies dormant, dark or start-again ground, and never sows where it says wait for rain', () => {
    forEveryPlan((plan) => {
      const ids = plan.steps.map(({ id }) => id);
      if (plan.verdict.id === 'not-a-lawn' || plan.verdict.id === 'start-again')
        expect(ids).not.toContain('scarify');
      if (plan.verdict.id === 'not-a-lawn') expect(ids).not.toContain('sow');
      if (ids.includes('look-again') && ids.includes('wait-for-season') && !ids.includes('sow'))
        expect(ids).not.toContain('low-cut');
    });
  });

  it('cites every source it uses once, numbered from 1, and every figure with its basis', () => {
    forEveryPlan((plan) => {
      expect(plan.sources.map(({ number }) => number)).toEqual(plan.sources.map((_, index) => index + 1));
      const ids = plan.sources.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const { amounts } of plan.steps) {
        for (const amount of amounts)
          for (const id of amount.figures)
            expect(
              plan.figures.some((figure) => figure.id === id),
              id,
            ).toBe(true);
      }
      for (const figure of plan.figures)
        if (figure.basis === 'published') expect(figure.sources.length).toBeGreaterThan(0);
    });
  });

  it('is the same, byte for byte, for the same answers on the same day', () => {
    fc.assert(
      fc.property(anyAnswers, anyToday, (answers, today) => {
        const shuffled = Object.fromEntries(Object.entries(answers).reverse());
        const one = assemblePlan({ pack, answers, today, assumeAll: true });
        expect(JSON.stringify(assemblePlan({ pack, answers: shuffled, today, assumeAll: true }))).toBe(
          JSON.stringify(one),
        );
      }),
      { numRuns: times(40, 150), seed: SEED },
    );
  });
});
