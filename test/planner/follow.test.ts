/** A plan worked out again: dates worked by hand on a calendar, then what must hold on generated lawns. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, isInWindow, parseIsoDate, weekdayOf } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan, type PlanInput } from '../../src/planner/assemble-plan.js';
import type { Plan, PlanStep } from '../../src/planner/plan.js';
import type { FollowRecord } from '../../src/planner/progress.js';
import { movesOf, overdue, reworked, workEnd } from '../../src/planner/rework.js';
import { goesOnByItself } from '../../src/planner/steps.js';
import type { Step } from '../../src/rules/schema.js';
import { times } from '../depth.js';
import { anyAnswers, anyToday, pack } from './any-lawn.js';
import { publishedHere } from './seasons-here.js';

const on = parseIsoDate;
const file = readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8');
const { answers } = JSON.parse(file) as { answers: Answers };
/** The mossy family lawn, planned on 13 March 2027. */
const lawn: PlanInput = { pack, answers, today: on('2027-03-13'), assumeAll: false };

const done = (step: string, day: string, endOn = day): FollowRecord => ({
  kind: 'done',
  step,
  startOn: on(day),
  endOn: on(endOn),
  asItShould: true,
  note: '',
  toldOn: on(endOn),
});
const stepOf = (plan: Plan, id: string): PlanStep => {
  const found = plan.steps.find((step) => step.id === id);
  if (found === undefined) throw new Error(`no step ${id}`);
  return found;
};
const follow = (records: readonly FollowRecord[], today: string) => reworked(lawn, records, on(today));

/** All of the main day, and the sowing a day after. */
const renovatedOn = (day: string, sownOn: string): FollowRecord[] => [
  ...['cut', 'low-cut', 'scarify', 'clear', 'fork', 'soil-bed'].map((id) => done(id, day)),
  ...['sow', 'cover-seed'].map((id) => done(id, sownOn)),
];

describe('waits of a plan that is followed', () => {
  it('count from the day on which the moss was really treated: 14 days by this label', () => {
    // 10 April + 14 days = 24 April 2027, a Saturday; 23 April would be a day short.
    const { plan } = follow(
      [done('weed-by-hand', '2027-04-01'), done('treat-moss', '2027-04-10')],
      '2027-04-11',
    );
    expect(stepOf(plan, 'treat-moss')).toMatchObject({ startOn: '2027-04-10', doneOn: '2027-04-10' });
    expect(stepOf(plan, 'cut').startOn).toBe('2027-04-24');
    expect(stepOf(plan, 'scarify').startOn).toBe('2027-04-24');
  });

  it('do not keep seed that is sown dry while its cover is late', () => {
    const sown = renovatedOn('2027-04-14', '2027-04-15').filter(
      (record) => record.kind !== 'done' || record.step !== 'cover-seed',
    );
    const { plan } = follow([done('treat-moss', '2027-03-27'), ...sown], '2027-04-27');
    expect(stepOf(plan, 'cover-seed').startOn).toBe('2027-04-27');
    expect(stepOf(plan, 'water-in').startOn).toBe('2027-04-15');
    expect(plan.watering[0]?.fromOn).toBe('2027-04-15');
  });

  it('have washing out of patches behind them once the seed is in, whether or not anyone told of it', () => {
    const { plan } = follow(
      [done('treat-moss', '2027-03-27'), ...renovatedOn('2027-04-14', '2027-04-15')],
      '2027-06-20',
    );
    expect(plan.steps.find(({ id }) => id === 'flush-patches')?.doneOn ?? 'none').not.toBe('none');
  });

  it('count from the last day of work that took several', () => {
    const { plan } = follow([done('treat-moss', '2027-04-08', '2027-04-12')], '2027-04-13');
    // 12 April + 14 days.
    expect(stepOf(plan, 'cut').startOn).toBe('2027-04-26');
  });

  it('count from the real sowing: mowing after 21 days, feed after 30, weedkiller after 60', () => {
    const { plan } = follow(
      [done('treat-moss', '2027-04-09'), ...renovatedOn('2027-04-23', '2027-04-24')],
      '2027-04-26',
    );
    // 24 April + 21 days = 15 May, + 30 = 24 May, + 60 = 23 June.
    expect(stepOf(plan, 'first-mow').startOn).toBe('2027-05-15');
    expect(stepOf(plan, 'first-feed').startOn).toBe('2027-05-24');
    expect(stepOf(plan, 'weedkiller-later').startOn).toBe('2027-06-23');
    // They began by themselves on the day of sowing, two days before this was told.
    expect(stepOf(plan, 'keep-off').startOn).toBe('2027-04-24');
    expect(stepOf(plan, 'water-in').startOn).toBe('2027-04-24');
    expect(plan.watering[0]?.fromOn).toBe('2027-04-24');
  });

  it('hold back what waits for a sign that is not there, three days from the day it was told', () => {
    const sign = 'The moss is black or brown and pulls away dry.';
    const records: FollowRecord[] = [
      done('weed-by-hand', '2027-04-01'),
      done('treat-moss', '2027-04-03'),
      { kind: 'sign', step: 'treat-moss', sign, seen: false, toldOn: on('2027-04-20') },
    ];
    const { plan } = follow(records, '2027-04-20');
    expect(stepOf(plan, 'cut').startOn).toBe('2027-04-23');
    const seen: FollowRecord = {
      kind: 'sign',
      step: 'treat-moss',
      sign,
      seen: true,
      toldOn: on('2027-04-21'),
    };
    expect(stepOf(follow([...records, seen], '2027-04-21').plan, 'cut').startOn).toBe('2027-04-21');
  });

  it('are given a week more after a frost, or when the mower pulls seedlings out', () => {
    const sown = [done('treat-moss', '2027-04-09'), ...renovatedOn('2027-04-23', '2027-04-24')];
    for (const trouble of ['frost', 'pulled-by-mower']) {
      const seen: FollowRecord = { kind: 'trouble', trouble, note: '', toldOn: on('2027-05-15') };
      expect(stepOf(follow([...sown, seen], '2027-05-15').plan, 'first-mow').startOn).toBe('2027-05-22');
    }
  });

  it('are not cut short for work that nobody told of: it counts as done with what comes after it', () => {
    const after = follow([done('treat-moss', '2027-04-09'), done('cover-seed', '2027-04-24')], '2027-04-26');
    expect(after.progress.supposed).toContain('sow');
    expect(stepOf(after.plan, 'sow').startOn).toBe('2027-04-24');
    expect(stepOf(after.plan, 'weedkiller-later').startOn).toBe('2027-06-23');
  });
});

describe('what a follow-up says', () => {
  it('names the step, the day and the wait behind each move', () => {
    const records = [done('weed-by-hand', '2027-04-01'), done('treat-moss', '2027-04-10')];
    const moves = movesOf(assemblePlan(lawn), follow(records, '2027-04-11'));
    const cut = moves.find(({ step }) => step === 'cut');
    expect(cut?.from).toBe('2027-04-14');
    expect(cut?.to).toBe('2027-04-24');
    expect(cut?.why).toBe('it comes 14 days after "Treat the moss", done on Saturday 10 April 2027');
    expect(moves.some(({ step }) => step === 'treat-moss')).toBe(false);
  });

  it('says what comes too late after something done', () => {
    const records = [
      done('weed-by-hand', '2027-04-01'),
      done('treat-moss', '2027-04-01'),
      ...['cut', 'low-cut', 'scarify'].map((id) => done(id, '2027-04-16')),
    ];
    const late = overdue(follow(records, '2027-04-20'));
    expect(late.find(({ title }) => title === 'Clear the debris')?.says).toMatch(
      /should follow "Scarify" within 1 day, and comes 4 days after it/,
    );
  });

  it('leaves out of the shopping list what was bought for work that is done', () => {
    const { plan } = follow(
      [done('treat-moss', '2027-04-09'), ...renovatedOn('2027-04-23', '2027-04-24')],
      '2027-04-26',
    );
    const ids = plan.shopping.map(({ materialId }) => materialId);
    expect(ids.some((id) => id.startsWith('seed'))).toBe(false);
    expect(ids.some((id) => id.startsWith('moss-product'))).toBe(false);
  });
});

interface Told {
  readonly lawnInput: PlanInput;
  readonly before: Plan;
  readonly records: readonly FollowRecord[];
  readonly today: Plan['madeOn'];
}

/** Work done in the order of the plan, each some days late, with things left out and signs not seen. */
function told(given: Answers, madeOn: Plan['madeOn'], delays: readonly number[]): Told {
  const lawnInput: PlanInput = { pack, answers: given, today: madeOn, assumeAll: true };
  const before = assemblePlan(lawnInput);
  const doable = before.steps.filter(({ id }) => !goesOnByItself(pack.stepById.get(id) as Step));
  const records: FollowRecord[] = [];
  let day = madeOn;
  for (const [index, delay] of delays.entries()) {
    const step = doable[index];
    if (step === undefined) break;
    const startOn = [addDays(step.startOn, delay), day].sort()[1] as Plan['madeOn'];
    const isWork = pack.stepById.get(step.id)?.labour !== undefined;
    if (delay === 9 && isWork) records.push({ kind: 'left-out', step: step.id, toldOn: startOn });
    else {
      const endOn = addDays(startOn, daysBetween(step.startOn, workEnd(step)));
      records.push({ ...done(step.id, startOn, endOn), toldOn: endOn });
      day = endOn;
      const sign = pack.steps.flatMap(({ after }) => after).find((wait) => wait.step === step.id)?.sign;
      if (delay === 7 && sign !== undefined)
        records.push({ kind: 'sign', step: step.id, sign, seen: false, toldOn: endOn });
    }
  }
  return { lawnInput, before, records, today: addDays(day, delays.at(-1) ?? 0) };
}

const anyTold = fc
  .tuple(anyAnswers, anyToday, fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 14 }))
  .map(([given, madeOn, delays]) => told(given, madeOn, delays));

const LAWNS = times(120, 600);
const SEED = 20_261_128;
const cases = fc
  .sample(anyTold, { numRuns: LAWNS, seed: SEED })
  .map((each) => ({ ...each, after: reworked(each.lawnInput, each.records, each.today) }));

function forEveryCase(check: (each: (typeof cases)[number]) => void): void {
  for (const each of cases) {
    try {
      check(each);
    } catch (error) {
      const { lawnInput, records, today } = each;
      throw new Error(
        `for ${JSON.stringify(lawnInput.answers)} of ${lawnInput.today}, ${JSON.stringify(records)}, on ${today}`,
        { cause: error },
      );
    }
  }
}

const toDo = (plan: Plan): PlanStep[] =>
  plan.steps.filter(({ id, doneOn }) => doneOn === null && !goesOnByItself(pack.stepById.get(id) as Step));

function gapsBetween(before: PlanStep, step: PlanStep): number[] {
  if (before.parts.length > 1 && step.parts.length > 1)
    return step.parts.map(({ startOn }, index) =>
      daysBetween((before.parts[index] as PlanStep['parts'][number]).endOn, startOn),
    );
  return step.parts.map(({ startOn }) => daysBetween(workEnd(before), startOn));
}

describe('every plan that is worked out again', () => {
  it('is made from lawns on which something was done', () => {
    expect(cases.filter(({ records }) => records.length > 2).length).toBeGreaterThan(LAWNS / 3);
  });

  it('leaves every step that was done on its day', () => {
    forEveryCase(({ records, after: { plan } }) => {
      for (const record of records) {
        if (record.kind !== 'done') continue;
        const step = plan.steps.find(({ id }) => id === record.step);
        if (step !== undefined)
          expect([step.startOn, workEnd(step), step.doneOn]).toEqual([
            record.startOn,
            record.endOn,
            record.endOn,
          ]);
      }
    });
  });

  it('puts nothing that is still to do into the past', () => {
    forEveryCase(({ today, after: { plan } }) => {
      for (const { id, startOn } of toDo(plan)) expect(startOn >= today, id).toBe(true);
    });
  });

  it('keeps every least wait, and every greatest one that can still be kept', () => {
    forEveryCase(({ after }) => {
      const late = overdue(after).map(({ title }) => title);
      for (const step of after.plan.steps) {
        if (step.doneOn !== null) continue;
        for (const { step: id, minDays, maxDays } of step.after) {
          const before = stepOf(after.plan, id);
          // Seed that lies in the ground is watered, however late its cover is and however many days it takes.
          const isLate =
            before.doneOn === null && (late.includes(before.title) || before.startOn !== workEnd(before));
          if (isLate && goesOnByItself(pack.stepById.get(step.id) as Step)) continue;
          for (const gap of gapsBetween(before, step)) {
            expect(gap, `${id} to ${step.id}`).toBeGreaterThanOrEqual(minDays);
            if (maxDays === null || gap <= maxDays) continue;
            expect(before.doneOn, `${id} to ${step.id}`).not.toBeNull();
            expect(late).toContain(step.title);
          }
        }
      }
    });
  });

  it('puts every step that is still to do inside its season and on its working days', () => {
    forEveryCase(({ lawnInput, after: { plan } }) => {
      const { workDays } = lawnInput.answers;
      for (const step of toDo(plan)) {
        const { labour } = pack.stepById.get(step.id) as Step;
        if (workDays === 'weekends' && labour !== undefined)
          for (const { startOn, endOn } of step.parts)
            for (const day of [startOn, endOn]) expect([6, 7]).toContain(weekdayOf(day));
        if (step.latestOn !== null) expect(step.latestOn >= step.startOn).toBe(true);
        const here = publishedHere(pack.stepById.get(step.id) as Step, lawnInput.answers);
        if (here === undefined) continue;
        expect(
          here.some((each) => isInWindow(step.startOn, each)),
          `${step.id} on ${step.startOn}`,
        ).toBe(true);
      }
    });
  });

  it('holds only finite numbers and words without holes', () => {
    forEveryCase(({ after: { plan } }) => {
      expect(JSON.stringify(plan)).not.toMatch(/NaN|Infinity|undefined|\{figures|\{facts/);
    });
  });

  it('says nothing new when it is asked again on the same day', () => {
    for (const { lawnInput, records, today, after } of cases.slice(0, 100))
      expect(movesOf(after.plan, reworked(lawnInput, records, today))).toEqual([]);
  });

  it('is the plan as it was first made while nothing is told on the day it was made', () => {
    for (const { lawnInput, before } of cases.slice(0, 100)) {
      const { plan } = reworked(lawnInput, [], lawnInput.today);
      expect(JSON.stringify(plan)).toBe(JSON.stringify(before));
    }
  });
});
