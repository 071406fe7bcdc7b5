/** The answers named for a change are enough for it, and no part of them is: tried by brute force on real lawns. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { answersContext } from '../../src/cli/answers-context.js';
import type { Answers } from '../../src/interview/answers.js';
import { checkAnswers } from '../../src/interview/check-answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import { comparePlans } from '../../src/planner/compare-plans.js';
import type { Plan } from '../../src/planner/plan.js';
import { pack } from './any-lawn.js';

const today = parseIsoDate('2027-03-13');
const context = answersContext(pack, today);
const isPossible = (answers: Answers): boolean => checkAnswers(answers, context).ok;
const lawn = (name: string): Answers =>
  JSON.parse(readFileSync(`transcripts-examples/${name}/answers.json`, 'utf8')).answers;
const compared = (before: Answers, after: Answers, mostPlans = 2000) =>
  comparePlans({ pack, before, after, today, isPossible, mostPlans });
const planOf = (answers: Answers): Plan => assemblePlan({ pack, answers, today, assumeAll: true });

/** The thing that a change is about, read straight off a plan. */
function readOff(plan: Plan, kind: string, id: string): unknown {
  const [stepId, amountId] = id.split('/');
  const step = plan.steps.find((each) => each.id === stepId);
  switch (kind) {
    case 'verdict':
      return plan.verdict.title;
    case 'finding':
      return plan.findings.some((each) => each.id === id && each.verdict === 'found');
    case 'step':
      return step !== undefined;
    case 'days':
      return step && [step.startOn, step.endOn];
    case 'hours':
      return step?.workHours;
    case 'amount': {
      const amount = step?.amounts.find((each) => each.id === amountId);
      return amount && [amount.materialId, amount.amount];
    }
    case 'buy': {
      const line = plan.shopping.find(({ materialId }) => materialId === id);
      return line && [line.need?.amount, line.need?.unit, line.cost];
    }
    case 'caution':
      return plan.cautions.some((each) => each.id === id);
    case 'left-out':
      return plan.notDone.some((each) => each.id === id);
    default:
      throw new Error(`no such kind: ${kind}`);
  }
}

const CASES: readonly (readonly [string, string, Answers])[] = [
  ['a dog and a thinner felt', 'mossy-family-lawn', { dog: false, thatchDepthMm: 8, scarifier: 'petrol' }],
  [
    'little moss, thin felt and a later start',
    'mossy-family-lawn',
    { mossFraction: 0.02, thatchDepthMm: 6, startOn: '2027-04-20', spreader: 'drop' },
  ],
  [
    'packed soil after all',
    'mossy-family-lawn',
    { puddles: 'hours', hardWear: true, soilTexture: 'clay', screwdriver: 'stops', lastRainDaysAgo: 1 },
  ],
  [
    'less wear',
    'worn-play-lawn',
    { hardWear: false, bareFraction: 0.02, puddles: 'none', soilTexture: 'sand' },
  ],
  ['sun for the strip', 'shady-strip', { sunHoursPerDay: 8, mossFraction: 0.1, areaM2: 30 }],
  [
    'rain on the brown lawn',
    'drought-brown-lawn',
    { lastRainDaysAgo: 2, lawnColour: 'green', mossFraction: 0.3 },
  ],
];

describe.each(CASES)('%s', (_, name, change) => {
  const before = lawn(name);
  const after: Answers = { ...before, ...change };
  const ids = Object.keys(change).filter((id) => before[id] !== change[id]);
  const plans = new Map<number, Plan | undefined>();
  for (let mask = 0; mask < 2 ** ids.length; mask++) {
    const mixed = { ...before };
    for (const [bit, id] of ids.entries()) if ((mask >> bit) % 2 === 1) mixed[id] = change[id] as never;
    plans.set(mask, isPossible(mixed) ? planOf(mixed) : undefined);
  }
  const all = 2 ** ids.length - 1;
  const sizeOf = (mask: number): number => ids.filter((__, bit) => (mask >> bit) % 2 === 1).length;
  const setOf = (mask: number): string[] => ids.filter((__, bit) => (mask >> bit) % 2 === 1);
  const { changes, answers, withoutEffect } = compared(before, after);

  it('names every change with all the smallest sets of answers that bring it about', () => {
    expect(changes.length).toBeGreaterThan(0);
    for (const { kind, id, by, isComplete } of changes) {
      const read = (mask: number): string => {
        const plan = plans.get(mask);
        return plan === undefined ? 'none' : JSON.stringify(readOff(plan, kind, id) ?? null);
      };
      const enough = [...plans.keys()].filter((mask) => mask > 0 && read(mask) === read(all));
      const least = Math.min(...enough.map(sizeOf));
      const wanted = enough.filter((mask) => sizeOf(mask) === least).map((mask) => setOf(mask).sort().join());
      expect([kind, id, isComplete, by.map((set) => [...set].sort().join()).sort()]).toEqual([
        kind,
        id,
        true,
        wanted.sort(),
      ]);
      expect(read(0)).not.toBe(read(all));
    }
  });

  it('misses no step that comes, goes or moves, and no amount', () => {
    const named = new Set(changes.map(({ kind, id }) => `${kind} ${id}`));
    const [first, last] = [plans.get(0) as Plan, plans.get(all) as Plan];
    for (const step of [...first.steps, ...last.steps]) {
      const [was, is] = [first, last].map((plan) => plan.steps.find(({ id }) => id === step.id));
      if (was === undefined || is === undefined) expect(named).toContain(`step ${step.id}`);
      else {
        expect(named.has(`days ${step.id}`)).toBe(was.startOn !== is.startOn || was.endOn !== is.endOn);
        for (const amount of is.amounts) {
          const old = was.amounts.find(({ id }) => id === amount.id);
          const differs = old?.amount !== amount.amount || old?.materialId !== amount.materialId;
          expect(named.has(`amount ${step.id}/${amount.id}`)).toBe(differs);
        }
      }
    }
  });

  it('lists the answers that differ, and those that nothing needs', () => {
    expect(answers.map(({ questionId }) => questionId).sort()).toEqual([...ids].sort());
    const blamed = new Set(changes.flatMap(({ by }) => by.flat()));
    expect([...withoutEffect].sort()).toEqual(ids.filter((id) => !blamed.has(id)).sort());
  });
});

describe('a comparison', () => {
  it('of a lawn with itself has nothing to say', () => {
    const same = compared(lawn('shady-strip'), lawn('shady-strip'));
    expect([same.answers, same.changes]).toEqual([[], []]);
  });

  it('names the rule and the finding that it turned', () => {
    const { changes } = compared(lawn('mossy-family-lawn'), {
      ...lawn('mossy-family-lawn'),
      dogPatches: false,
    });
    const step = changes.find(({ kind, id }) => kind === 'step' && id === 'flush-patches');
    expect(step).toMatchObject({
      how: 'out',
      by: [['dogPatches']],
      rules: ['step flush-patches', 'finding dog-patches'],
      because: 'Dog patches: no.',
    });
  });

  it('takes an area for one answer, whether it is given whole or in parts', () => {
    const { areaM2: _, ...rest } = lawn('mossy-family-lawn');
    const parts = [{ shape: 'rectangle', lengthM: 10, widthM: 5 }] as const;
    const { changes } = compared(lawn('mossy-family-lawn'), { ...rest, lawnParts: parts });
    const seed = changes.find(({ kind, id }) => kind === 'amount' && id.startsWith('sow/'));
    expect(seed?.by).toEqual([['areaM2', 'lawnParts']]);
  });

  it('of two quite different lawns names sets that are enough, though not all can be tried', () => {
    const [before, after] = [lawn('mossy-family-lawn'), lawn('worn-play-lawn')];
    const { changes } = compared(before, after, 60);
    const last = planOf(after);
    for (const { kind, id, by } of changes.filter((_each, index) => index % 4 === 0)) {
      for (const set of by) {
        const mixed = { ...before };
        for (const each of set) {
          delete mixed[each];
          if (after[each] !== undefined) mixed[each] = after[each] as never;
        }
        expect([kind, id, readOff(planOf(mixed), kind, id)]).toEqual([kind, id, readOff(last, kind, id)]);
      }
    }
  });
});
