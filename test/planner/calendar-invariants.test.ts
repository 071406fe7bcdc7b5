/**
 * What must be true of every calendar, over generated lawns, first days and places: each limit is written down here
 * a second time, from the answers, the climate table or the source that the rules name, never from the plan.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  daysBetween,
  type IsoDate,
  monthOf,
  parseIsoDate,
  weekdayOf,
} from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { placeOf } from '../../src/planner/place.js';
import type { Plan, PlanStep } from '../../src/planner/plan.js';
import { times } from '../depth.js';
import { anyAnswers, pack, planIfAny } from './any-lawn.js';
import { isSouthHere, LATE_SPRINGS } from './seasons-here.js';

const LAWNS = times(200, 1500);
const SEED = 20261126;

const anyDay = fc
  .record({
    year: fc.integer({ min: 2026, max: 2032 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 28 }),
  })
  .map(({ year, month, day }) => `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`);
/** Ordinary days, and those on which a calendar breaks first. */
const anyToday = fc
  .oneof(
    { weight: 3, arbitrary: anyDay },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        ...['2027-12-31', '2028-01-01', '2028-02-28', '2028-02-29', '2028-03-01', '2032-02-29', '2027-02-28'],
      ),
    },
  )
  .map(parseIsoDate);
const anyPlace = fc.constantFrom(
  'Oxford',
  'Lerwick',
  'Braemar',
  'Camborne',
  '-37.8, 144.9',
  '-45, 170',
  '40, -75',
);

/** Biased to what binds: work soon, seed wanted, a weedkiller of the last weeks, long waits on labels. */
const lawns = fc
  .sample(
    fc.record({
      any: anyAnswers,
      today: anyToday,
      startIn: fc.option(fc.integer({ min: -30, max: 400 }), { nil: undefined }),
      killedBefore: fc.nat(45),
      mostly: fc.record(
        {
          place: anyPlace,
          areaM2: fc.integer({ min: 5, max: 700 }),
          workDays: fc.constantFrom('any', 'weekends'),
          hoursPerDay: fc.integer({ min: 2, max: 9 }),
          mossFraction: fc.constantFrom(0, 0.1, 0.3),
          mossTreatment: fc.constantFrom('label', 'rake-only'),
          labelWaitDays: fc.integer({ min: 0, max: 60 }),
          weedkiller: fc.constantFrom('done', 'no', 'later'),
          sunHoursPerDay: fc.integer({ min: 3, max: 10 }),
          lawnColour: fc.constantFrom('green', 'pale'),
          puddles: fc.constantFrom('none', 'hours'),
          grubsInSquare: fc.constant(0),
          levels: fc.constantFrom('even', 'bumpy'),
        },
        { requiredKeys: ['place', 'areaM2', 'workDays', 'weedkiller'] },
      ),
    }),
    { numRuns: LAWNS, seed: SEED },
  )
  .map(({ any, today, startIn, killedBefore, mostly }) => {
    const { startOn: _, ...rest } = any;
    const answers: Answers = {
      ...rest,
      ...mostly,
      ...(startIn === undefined ? {} : { startOn: addDays(today, startIn) }),
      weedkillerLastOn: addDays(today, -killedBefore),
    };
    return { answers, today };
  });
const made = lawns.flatMap(({ answers, today }) => {
  const plan = planIfAny({ pack, answers, today, assumeAll: true });
  return plan === undefined ? [] : [{ plan, answers, today }];
});

interface Made {
  readonly plan: Plan;
  readonly answers: Answers;
  readonly today: IsoDate;
}

/** @returns how often there was something to check */
function forEvery(check: (made: Made) => number): number {
  let checked = 0;
  for (const one of made) {
    try {
      checked += check(one);
    } catch (error) {
      throw new Error(`for ${JSON.stringify(one.answers)} on ${one.today}`, { cause: error });
    }
  }
  return checked;
}

const stepOf = (plan: Plan, id: string): PlanStep | undefined => plan.steps.find((step) => step.id === id);
const isSouth = (answers: Answers): boolean => isSouthHere(answers);
type Part = PlanStep['parts'][number];
const firstDay = ({ parts }: PlanStep): IsoDate => (parts[0] as Part).startOn;
const lastDay = ({ parts }: PlanStep): IsoDate => (parts.at(-1) as Part).endOn;

describe('every calendar', () => {
  it('is made for all lawns but the rare one whose waits and seasons rule each other out', () => {
    const isMade = new Set(made.map(({ answers }) => answers));
    const notMade = lawns.filter(({ answers }) => !isMade.has(answers));
    // Only a wait on a label of about two months is too long for a season; without a hose there is one in the year.
    expect(notMade.length).toBeLessThan(LAWNS / 40);
    for (const { answers } of notMade)
      expect(answers.labelWaitDays, JSON.stringify(answers)).toBeGreaterThan(50);
    expect(made.filter(({ plan }) => stepOf(plan, 'sow') !== undefined).length).toBeGreaterThan(LAWNS / 4);
  });

  it('begins no work before the first free day, and at weekends only where only they are free', () => {
    const checked = forEvery(({ plan, answers, today }) => {
      const { startOn } = answers;
      const free = typeof startOn === 'string' && startOn > today ? startOn : today;
      let days = 0;
      for (const { parts, workHours, id } of plan.steps)
        for (const { startOn: begun, endOn } of parts) {
          expect(begun >= free, `${id} on ${begun}`).toBe(true);
          if (answers.workDays !== 'weekends' || workHours === 0) continue;
          for (const day of [begun, endOn]) expect([6, 7], `${id} on ${day}`).toContain(weekdayOf(day));
          days++;
        }
      return days;
    });
    expect(checked).toBeGreaterThan(LAWNS);
  });

  it("keeps the label's wait between the moss treatment and every raking, as it was answered", () => {
    const checked = forEvery(({ plan, answers }) => {
      const treated = stepOf(plan, 'treat-moss');
      const { labelWaitDays } = answers;
      if (treated === undefined || typeof labelWaitDays !== 'number') return 0;
      for (const id of ['cut', 'low-cut', 'scarify']) {
        const step = stepOf(plan, id);
        if (step !== undefined)
          expect(daysBetween(lastDay(treated), firstDay(step)), id).toBeGreaterThanOrEqual(labelWaitDays);
      }
      return 1;
    });
    expect(checked).toBeGreaterThan(30);
  });

  it('sows no seed within 30 days of a weedkiller, nor brings one near new grass within 35', () => {
    // nebraska-279-97: one month before seeding. 35 days is the least that the sources on new grass give.
    const checked = forEvery(({ plan, answers }) => {
      const last = answers.weedkillerLastOn as IsoDate;
      const later = stepOf(plan, 'weedkiller-later');
      const sown = [stepOf(plan, 'sow'), stepOf(plan, 'patch-sow')].filter((step) => step !== undefined);
      for (const step of sown) {
        if (answers.weedkiller === 'done')
          expect(daysBetween(last, firstDay(step)), step.id).toBeGreaterThanOrEqual(30);
        if (later !== undefined)
          expect(daysBetween(lastDay(step), firstDay(later))).toBeGreaterThanOrEqual(35);
      }
      return answers.weedkiller === 'done' && sown.length > 0 && plan.madeOn <= addDays(last, 30) ? 1 : 0;
    });
    expect(checked).toBeGreaterThan(times(20, 50));
  });

  it('gives new grass three weeks before it is mown and four before it is fed, and covers seed on its day', () => {
    // First mowing from 21 days on, first feed from 28 (the least of the published ranges in rules/figures).
    const checked = forEvery(({ plan }) => {
      const sow = stepOf(plan, 'sow');
      if (sow === undefined) return 0;
      const gapTo = (id: string): number => {
        const step = stepOf(plan, id);
        if (step === undefined) return Number.POSITIVE_INFINITY;
        // Part by part, each counts from its own sowing; done whole, it counts from the last.
        if (step.parts.length !== sow.parts.length) return daysBetween(lastDay(sow), firstDay(step));
        return Math.min(
          ...step.parts.map(({ startOn }, index) => daysBetween(sow.parts[index]?.endOn ?? startOn, startOn)),
        );
      };
      expect(gapTo('first-mow')).toBeGreaterThanOrEqual(21);
      expect(gapTo('first-feed')).toBeGreaterThanOrEqual(28);
      for (const id of ['cover-seed', 'pin-net', 'water-in', 'keep-off'])
        for (const [index, part] of (stepOf(plan, id)?.parts ?? []).entries())
          expect(part.startOn, id).toBe(sow.parts[index]?.endOn);
      return 1;
    });
    expect(checked).toBeGreaterThan(LAWNS / 4);
  });

  /** As the sources of the rules have them, and the same half a year on, both written out. */
  const SOWING = {
    north: [
      ['04-01', '05-31'],
      ['08-15', '09-30'],
    ],
    south: [
      ['10-01', '11-30'],
      ['02-15', '03-31'],
    ],
    warmNorth: [['04-15', '06-15']],
    warmSouth: [['10-15', '12-15']],
  } as const;
  /** Where soil is late, June and early July: common practice in northern Scotland and the uplands, no source. */
  const LATE = ['06-01', '07-05'] as const;
  const isLateSpring = ({ place, grassType }: Answers): boolean =>
    grassType !== 'warm-season' &&
    LATE_SPRINGS.includes(placeOf(String(place), pack.climate)?.station?.name ?? '');

  it('sows every part in a published season of its half of the earth', () => {
    const seen = new Set<string>();
    forEvery(({ plan, answers }) => {
      const warm = answers.grassType === 'warm-season';
      const key = isSouth(answers) ? (warm ? 'warmSouth' : 'south') : warm ? 'warmNorth' : 'north';
      for (const id of ['sow', 'patch-sow'])
        for (const { startOn } of stepOf(plan, id)?.parts ?? []) {
          const spans: readonly (readonly [string, string])[] = isLateSpring(answers)
            ? [...SOWING[key], LATE]
            : SOWING[key];
          const isIn = spans.some(([from, until]) => startOn.slice(5) >= from && startOn.slice(5) <= until);
          expect(isIn, `${id} on ${startOn}, ${key}`).toBe(true);
          seen.add(key);
        }
      return 0;
    });
    expect([...seen].sort()).toEqual(Object.keys(SOWING).sort());
  });

  it('cuts into no turf, feeds nothing and treats no moss in the three months of winter', () => {
    const FROSTED = [
      'treat-moss',
      'scarify',
      'rake-moss',
      'core',
      'fork',
      'sow',
      'patch-sow',
      'feed',
      'first-feed',
    ];
    const checked = forEvery(({ plan, answers }) => {
      const winter = isSouth(answers) ? [6, 7, 8] : [12, 1, 2];
      const steps = plan.steps.filter(({ id }) => FROSTED.includes(id));
      for (const { id, parts } of steps)
        for (const { startOn } of parts)
          expect(winter, `${id} on ${startOn}`).not.toContain(monthOf(startOn));
      return steps.length;
    });
    expect(checked).toBeGreaterThan(LAWNS);
  });

  it('says how many nights of frost are usual wherever a step asks for none, by the table of its station', () => {
    const checked = forEvery(({ plan, answers }) => {
      const name = placeOf(String(answers.place), pack.climate)?.station;
      const station = pack.climate.stations.find((each) => each.name === name?.name && name.km === 0);
      let told = 0;
      for (const { id, startOn, dayChecks } of plan.steps)
        for (const [index, { sign }] of (pack.stepById.get(id)?.dayChecks ?? []).entries()) {
          if (sign !== 'frost') continue;
          const nights = Math.round(station?.airFrostDays[monthOf(startOn) - 1] ?? 0);
          const said = dayChecks[index]?.expect ?? null;
          if (nights <= 1) expect(said, `${id} on ${startOn}`).toBeNull();
          else {
            expect(JSON.stringify(said), `${id} on ${startOn}`).toContain(`${nights}`);
            told++;
          }
        }
      return told;
    });
    expect(checked).toBeGreaterThan(times(20, 50));
  });

  it('waters from the day of sowing for three weeks without a gap, or says that there is no water', () => {
    const checked = forEvery(({ plan, answers }) => {
      const [sow, patch] = [stepOf(plan, 'sow'), stepOf(plan, 'patch-sow')];
      if (patch !== undefined) expect(patch.how.join(' ')).toMatch(/moist/);
      if (sow === undefined) return 0;
      // Nothing but rain, a ban, or more ground than a can keeps wet (see water-that-fits.test.ts).
      const byHoseNow = answers.watering === 'hose' || answers.watering === 'sprinkler';
      if (plan.watering.length === 0) {
        expect(byHoseNow && answers.wateringBan !== true).toBe(false);
        expect(plan.notDone.map(({ id }) => id)).toContain('no-water');
        return 0;
      }
      expect(plan.watering[0]?.fromOn).toBe(firstDay(sow));
      for (const [index, { fromOn, untilOn, litresPerDay, turnsPerDay }] of plan.watering.entries()) {
        const before = plan.watering[index - 1];
        if (before !== undefined) expect(fromOn).toBe(addDays(before.untilOn, 1));
        expect(fromOn <= untilOn).toBe(true);
        expect(litresPerDay).toBeGreaterThan(0);
        expect(turnsPerDay).toBeGreaterThan(0);
      }
      expect(daysBetween(firstDay(sow), plan.watering.at(-1)?.untilOn as IsoDate)).toBeGreaterThanOrEqual(20);
      return 1;
    });
    expect(checked).toBeGreaterThan(LAWNS / 6);
  });

  /** Square metres an hour by hand: the record of the figure whose range bounds the step. */
  const BY_HAND: Readonly<Record<string, string>> = {
    'treat-moss': 'spray-m2-per-h',
    'rake-moss': 'hand-scarify-m2-per-h',
    clear: 'clear-m2-per-h',
    fork: 'fork-m2-per-h',
    core: 'corer-m2-per-h',
    'brush-cores': 'clear-m2-per-h',
    'clear-old-turf': 'strip-m2-per-h',
    'dig-over': 'dig-m2-per-h',
    'firm-and-rake': 'firm-m2-per-h',
    'soil-bed': 'cover-m2-per-h',
    lime: 'spread-m2-per-h',
    sow: 'sow-m2-per-h',
    'cover-seed': 'cover-m2-per-h',
    feed: 'spread-m2-per-h',
    'first-feed': 'spread-m2-per-h',
  };
  const rangeOf = (id: string): { readonly min: number; readonly max: number } => {
    const figure = pack.figureById.get(id);
    if (figure === undefined) throw new Error(`no figure ${id}`);
    return figure.range;
  };
  /** m2 an hour of a machine: width in m by speed in km/h by the share of the time that it cuts. */
  const machine = (name: string, width = name): { readonly min: number; readonly max: number } => {
    const [w, v, share] = [`${width}-width-m`, `${name}-speed-km-h`, `${name}-efficiency`].map(rangeOf);
    const of = (end: 'min' | 'max'): number => (w?.[end] ?? 0) * (v?.[end] ?? 0) * 1000 * (share?.[end] ?? 0);
    return { min: of('min'), max: of('max') };
  };
  const shears = rangeOf('shears-m2-per-h');

  it('takes hours that the area and the rates of work allow, step by step', () => {
    const seen = new Set<string>();
    forEvery(({ plan }) => {
      const { areaM2 } = plan.lawn;
      const isWithin = (
        step: PlanStep,
        rate: { min: number; max: number },
        passes: [number, number],
      ): void => {
        seen.add(step.id);
        // Hours and area are rounded to three digits.
        expect(step.workHours, step.id).toBeGreaterThanOrEqual((passes[0] * areaM2) / rate.max / 1.02);
        expect(step.workHours, step.id).toBeLessThanOrEqual(((passes[1] * areaM2) / rate.min) * 1.02);
        expect(step.workHoursRange.min).toBeLessThanOrEqual(step.workHours);
        expect(step.workHoursRange.max).toBeGreaterThanOrEqual(step.workHours);
      };
      for (const step of plan.steps) {
        const figure = BY_HAND[step.id];
        if (figure !== undefined) isWithin(step, rangeOf(figure), [1, 1]);
        const uses = (tool: RegExp): boolean => step.tools.some(({ id }) => tool.test(id));
        if (['cut', 'low-cut', 'first-mow'].includes(step.id))
          isWithin(step, { min: shears.min, max: machine('mower').max }, [1, 1]);
        if (step.id === 'scarify') {
          const isMachine = uses(/scarifier/);
          const rate = isMachine
            ? { min: machine('scarifier').min, max: machine('scarifier', 'petrol-scarifier').max }
            : rangeOf('hand-scarify-m2-per-h');
          isWithin(step, rate, isMachine ? [1, 3] : [1, 1]);
        }
      }
      return 0;
    });
    for (const id of [...Object.keys(BY_HAND), 'cut', 'first-mow', 'scarify'])
      expect([...seen], `no lawn had ${id}`).toContain(id);
  });

  it('begins on 29 February and at the turn of the year as on any other day', () => {
    const checked = forEvery(({ plan, today }) => {
      if (!/-(02-29|12-31|01-01)$/.test(today)) return 0;
      expect(plan.madeOn).toBe(today);
      for (const { parts } of plan.steps)
        for (const { startOn, endOn } of parts) expect(daysBetween(startOn, endOn)).toBeGreaterThanOrEqual(0);
      return plan.steps.some(({ startOn }) => startOn === today) ? 1 : 0;
    });
    expect(checked).toBeGreaterThan(times(5, 20));
  });
});
