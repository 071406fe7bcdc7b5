/**
 * The order of the trade in every plan, whatever is left out of it: by date, within a day, part by part, area by area.
 *
 * Common practice, no source, written down here a second time: moss is killed before the mower comes, the mower is done
 * before the ground is torn, what is torn out is carried off before the soil is loosened, lime and wetting agent go in
 * before the bed is made, no wheel or foot crosses the bed before it is sown, and seed is covered before it is watered.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type IsoDate, parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import type { Plan, PlanStep } from '../../src/planner/plan.js';
import { planLawn } from '../../src/planner/plan-lawn.js';
import { ScheduleClash } from '../../src/planner/schedule-clash.js';
import { times } from '../depth.js';
import { anyAnswers, anyToday, pack, planIfAny } from './any-lawn.js';

const SEED = 20261201;

const ORDER = [
  ['soak', 'flush-patches'],
  ['treat-moss'],
  ['cut'],
  ['low-cut'],
  ['rake-moss', 'scratch', 'scarify'],
  ['clear', 'clear-old-turf'],
  ['core', 'fork', 'dig-over'],
  ['brush-cores', 'cores-off'],
  ['lime', 'wetting-agent'],
  ['soil-bed', 'firm-and-rake'],
  ['sow', 'patch-sow'],
  ['cover-seed', 'pin-net'],
  ['water-in', 'keep-off'],
  ['first-mow'],
  ['first-feed', 'feed'],
] as const;
/** Side work, and what it must come before. */
const BEFORE: readonly (readonly [string, readonly string[]])[] = [
  ['weed-by-hand', ['cut', 'low-cut', 'rake-moss', 'scarify', 'core', 'fork', 'sow', 'patch-sow']],
  ['mark-out-parts', ['cut', 'rake-moss', 'scarify', 'core', 'fork', 'firm-and-rake', 'sow', 'patch-sow']],
  ['catch-test', ['sow']],
  ['soil-test', ['lime']],
  ['thin-shade', ['sow']],
  ['sharpen-mower', ['cut', 'low-cut', 'first-mow']],
  ['first-mow', ['raise-cut']],
];
const PAIRS: readonly (readonly [string, string])[] = [
  ...ORDER.flatMap((firsts, index) =>
    firsts.flatMap((first) =>
      ORDER.slice(index + 1).flatMap((laters) => laters.map((l) => [first, l] as const)),
    ),
  ),
  ...BEFORE.flatMap(([first, laters]) => laters.map((later) => [first, later] as const)),
];

type Part = PlanStep['parts'][number];

/** Each day of the one with the day of the other that it comes before: part by part, or from the last to the whole. */
function meetings(first: PlanStep, later: PlanStep, area: string | undefined): [IsoDate, IsoDate][] {
  const [firsts, laters] = [partsIn(first, area), partsIn(later, area)];
  if (firsts.length === 0 || laters.length === 0) return [];
  const last = firsts.at(-1) as Part;
  return laters.map(({ startOn }, index) => [
    (firsts.length > 1 && laters.length > 1 ? (firsts[index] as Part) : last).endOn,
    startOn,
  ]);
}

/** A step that not every area needs has theirs in its title: "Scarify (back)". */
function partsIn({ parts, title }: PlanStep, area: string | undefined): readonly Part[] {
  if (area === undefined) return parts;
  const isElsewhere = /\((front|back)\)$/.test(title) && !title.endsWith(`(${area})`);
  return isElsewhere ? [] : parts.filter((part) => part.area === undefined || part.area === area);
}

/** @returns how many pairs of work there were to check */
function checkOrder(plan: Plan): number {
  const at = new Map(plan.steps.map((step, index) => [step.id, { step, index }]));
  const areas = plan.areas.length === 0 ? [undefined] : plan.areas.map(({ name }) => name);
  let checked = 0;
  for (const [firstId, laterId] of PAIRS) {
    const [first, later] = [at.get(firstId), at.get(laterId)];
    if (first === undefined || later === undefined) continue;
    checked++;
    for (const area of areas)
      for (const [ends, starts] of meetings(first.step, later.step, area))
        expect(ends <= starts, `${firstId} until ${ends}, ${laterId} on ${starts}`).toBe(true);
    // The list of a plan is what somebody works down on one day.
    if (first.step.startOn === later.step.startOn)
      expect(first.index, `${firstId} listed before ${laterId}`).toBeLessThan(later.index);
  }
  return checked;
}

/** Lawns that need work: light, no grubs, no drought that puts everything off. */
const toWork = fc.record(
  {
    lawnColour: fc.constantFrom('green', 'pale', 'brown-patches'),
    grubsInSquare: fc.constant(0),
    underfoot: fc.constantFrom('firm', 'springy'),
    tugTest: fc.constant('holds'),
    sunHoursPerDay: fc.integer({ min: 3, max: 9 }),
    mossFraction: fc.constantFrom(0, 0.02, 0.12, 0.25),
    weedFraction: fc.constantFrom(0, 0.1, 0.3, 0.6),
    bareFraction: fc.constantFrom(0, 0.1, 0.3),
    thatchDepthMm: fc.constantFrom(3, 12, 16, 30),
    soilPh: fc.constantFrom(5.2, 6.4),
    dropSeconds: fc.constantFrom(2, 30),
    areaM2: fc.integer({ min: 10, max: 600 }),
    hoursPerDay: fc.integer({ min: 2, max: 8 }),
    screwdriver: fc.constantFrom('easy', 'effort', 'stops'),
    lastRainDaysAgo: fc.constantFrom(1, 12),
    slopeDeg: fc.constantFrom(2, 20),
    workDays: fc.constantFrom('any', 'weekends'),
  },
  { requiredKeys: ['lawnColour', 'grubsInSquare', 'tugTest', 'sunHoursPerDay', 'thatchDepthMm', 'areaM2'] },
);
const anyWork = fc
  .tuple(anyAnswers, toWork)
  .map(([answers, mostly]): Answers => ({ ...answers, ...(mostly as Answers) }));

const sampled = <Value>(arbitrary: fc.Arbitrary<Value>, numRuns: number): Value[] =>
  fc.sample(arbitrary, { numRuns, seed: SEED });

function named(answers: unknown, today: IsoDate, check: () => number): number {
  try {
    return check();
  } catch (error) {
    throw new Error(`for ${JSON.stringify(answers)} on ${today}`, { cause: error });
  }
}

describe('the order of the trade', () => {
  it('holds in every plan, by date and within a day, on a lawn in parts too', () => {
    const lawns = sampled(fc.tuple(anyWork, anyToday), times(120, 2000));
    let pairs = 0;
    let inParts = 0;
    for (const [answers, today] of lawns) {
      const plan = planIfAny({ pack, answers, today, assumeAll: true });
      if (plan === undefined) continue;
      pairs += named(answers, today, () => checkOrder(plan));
      if (plan.steps.some(({ parts }) => parts.length > 1)) inParts++;
    }
    expect(pairs).toBeGreaterThan(lawns.length * 5);
    expect(inParts).toBeGreaterThan(lawns.length / 20);
  });

  it('holds in each of several areas', () => {
    const lawns = sampled(fc.tuple(anyWork, toWork, anyToday), times(25, 300));
    let pairs = 0;
    for (const [answers, other, today] of lawns) {
      const areas = [
        { name: 'front', answers: {} },
        { name: 'back', answers: other as Answers },
      ];
      const plan = planOrNone(() => planLawn({ pack, answers, areas, today, assumeAll: true }));
      if (plan !== undefined) pairs += named([answers, other], today, () => checkOrder(plan));
    }
    expect(pairs).toBeGreaterThan(lawns.length * 5);
  });

  it('puts no soil down before the mower has been, on a lawn with neither moss nor thatch', () => {
    // Half bare after a weedkiller, soil spread over it: nothing else ties the bed to the mowing.
    const answers: Answers = {
      place: 'Cardiff',
      areaM2: 160,
      measuredBy: 'tape',
      mossFraction: 0.02,
      weedFraction: 0.1,
      bareFraction: 0.35,
      thatchDepthMm: 6,
      underfoot: 'firm',
      screwdriver: 'easy',
      lastRainDaysAgo: 1,
      lawnColour: 'green',
      tugTest: 'holds',
      sunHoursPerDay: 7,
      slopeDeg: 0,
      weedkiller: 'done',
      weedkillerLastOn: '2027-08-20',
      watering: 'hose',
      wateringBan: false,
    };
    for (const workDays of ['any', 'weekends'])
      for (const hoursPerDay of [3, 4, 5, 6]) {
        const given = { ...answers, workDays, hoursPerDay };
        const plan = planIfAny({
          pack,
          answers: given,
          today: parseIsoDate('2027-08-22'),
          assumeAll: true,
        }) as Plan;
        const of = (id: string): Part => plan.steps.find((step) => step.id === id)?.parts[0] as Part;
        const days = `${workDays}, ${hoursPerDay} h: ${of('low-cut').endOn}, ${of('soil-bed').startOn}`;
        expect(of('cut').endOn <= of('low-cut').startOn, days).toBe(true);
        expect(of('low-cut').endOn <= of('soil-bed').startOn, days).toBe(true);
        expect(of('soil-bed').endOn <= of('sow').startOn, days).toBe(true);
      }
  });

  it('limes dug ground before it is raked', () => {
    // The seedbed is firm and level last: lime "on the dug ground, before it is raked" (penn-state-liming: worked in).
    const answers: Answers = {
      place: 'somewhere',
      areaM2: 60,
      measuredBy: 'tape',
      mossFraction: 0.1,
      weedFraction: 0.7,
      bareFraction: 0.1,
      soilPh: 5.3,
      sunHoursPerDay: 7,
      slopeDeg: 0,
      lawnColour: 'green',
      watering: 'hose',
      wateringBan: false,
    };
    for (const startOn of ['2027-03-01', '2027-05-20', '2027-06-25', '2027-08-01'])
      for (const hoursPerDay of [3, 5, 8]) {
        const given = { ...answers, startOn, hoursPerDay };
        const plan = planIfAny({
          pack,
          answers: given,
          today: parseIsoDate('2027-02-27'),
          assumeAll: true,
        }) as Plan;
        const step = (id: string): PlanStep => plan.steps.find((each) => each.id === id) as PlanStep;
        const days = `${startOn}, ${hoursPerDay} h: ${step('firm-and-rake').startOn}, ${step('lime').startOn}`;
        expect(step('lime').startOn >= step('dig-over').endOn, days).toBe(true);
        expect(step('lime').endOn <= step('firm-and-rake').startOn, days).toBe(true);
        expect(step('firm-and-rake').endOn <= step('sow').startOn, days).toBe(true);
      }
  });
});

function planOrNone(make: () => Plan): Plan | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof ScheduleClash) return undefined;
    throw error;
  }
}
