/** The fewest demands that clash, held against trying every set of demands on every choice of days. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  brokenBesideIn,
  type Demand,
  type DemandingNet,
  demandsOf,
  isKept,
  startsKeeping,
} from '../../src/planner/demands.js';
import { smallestClash } from '../../src/planner/smallest-clash.js';
import { subsets } from '../../src/planner/smallest-sets.js';
import { times } from '../depth.js';

const IDS = ['a', 'b', 'c'];
/** Seasons come back every fortnight here; no wait is longer than 8 days. So whatever can hold, holds within 8 weeks. */
const [SEASON, DAYS] = [14, 56];

interface Draft {
  readonly seasons: readonly (readonly [number, number] | undefined)[];
  readonly waits: readonly {
    readonly from: number;
    readonly to: number;
    readonly minDays: number;
    readonly slack: number | undefined;
  }[];
  readonly weekends: boolean;
  readonly notBefore: number;
}

const anyDraft: fc.Arbitrary<Draft> = fc.record({
  seasons: fc.array(
    fc.option(
      fc.tuple(fc.nat(SEASON - 1), fc.nat(3)).map(([from, more]) => [from, from + more] as const),
      { nil: undefined },
    ),
    { minLength: 3, maxLength: 3 },
  ),
  waits: fc.array(
    fc
      .record({
        from: fc.nat(2),
        to: fc.nat(2),
        minDays: fc.integer({ min: -1, max: 5 }),
        slack: fc.option(fc.nat(3), { nil: undefined }),
      })
      .filter(({ from, to }) => from !== to),
    { minLength: 1, maxLength: 3 },
  ),
  weekends: fc.boolean(),
  notBefore: fc.nat(5),
});

/** Day 0 is a Monday. */
const isWeekend = (day: number): boolean => day % 7 >= 5;
const isInSeason = (season: Draft['seasons'][number], day: number): boolean => {
  if (season === undefined) return true;
  const [from, until] = season;
  const sinceOpening = (day - from + SEASON * DAYS) % SEASON;
  return sinceOpening <= until - from;
};

function netOf({ seasons, waits, weekends, notBefore }: Draft): DemandingNet {
  return {
    steps: IDS.map((id, index) => ({
      id,
      hasSeason: seasons[index] !== undefined,
      isForWeekends: weekends,
      notBefore: index === 1 ? notBefore : 0,
      nextFit: (day, counting) => {
        let fit = day;
        while (
          (counting.season && !isInSeason(seasons[index], fit)) ||
          (counting.weekends && weekends && !isWeekend(fit))
        )
          // A season without a weekend never comes.
          if (++fit > day + 5000) return fit;
        return fit;
      },
    })),
    waits: waits.map(({ from, to, minDays, slack }) => ({
      from: IDS[from] as string,
      to: IDS[to] as string,
      minDays,
      maxDays: slack === undefined ? undefined : minDays + slack,
    })),
  };
}

/** The meaning of a demand, written down a second time. */
function holds(demand: Demand, days: readonly number[], draft: Draft): boolean {
  const at = (id: string): number => days[IDS.indexOf(id)] as number;
  if (demand.kind === 'season') return isInSeason(draft.seasons[IDS.indexOf(demand.step)], at(demand.step));
  if (demand.kind === 'weekends') return days.every(isWeekend);
  if (demand.kind === 'no-sooner') return at(demand.step) >= draft.notBefore;
  const gap = at(demand.to) - at(demand.from);
  return demand.kind === 'least-wait' ? gap >= demand.days : gap <= demand.days;
}

/** Every choice of three days, tried one by one. */
function canBeKept(demands: readonly Demand[], draft: Draft): boolean {
  for (let a = 0; a < DAYS; a++)
    for (let b = 0; b < DAYS; b++)
      for (let c = 0; c < DAYS; c++)
        if (demands.every((demand) => holds(demand, [a, b, c], draft))) return true;
  return false;
}

describe('the smallest clash of waits and seasons', () => {
  const counts = { clashes: 0, sizes: new Set<number>() };

  it('is there just when no days keep all demands, is enough, holds nothing needless, and none is smaller', () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        const net = netOf(draft);
        const demands = demandsOf(net);
        const clash = smallestClash(demands, brokenBesideIn(net, demands), 1000);
        expect(clash === undefined).toBe(canBeKept(demands, draft));
        if (clash === undefined) return;
        counts.clashes++;
        counts.sizes.add(clash.demands.length);
        expect(clash.isSmallest).toBe(true);
        expect(canBeKept(clash.demands, draft)).toBe(false);
        for (let size = 1; size < clash.demands.length; size++)
          for (const fewer of subsets(demands, size)) expect(canBeKept(fewer, draft)).toBe(true);
      }),
      { numRuns: times(40, 150), seed: 20261125 },
    );
    // So many of them clash, and in so many ways, that this is no empty promise.
    expect(counts.clashes).toBeGreaterThan(30);
    expect(counts.sizes.size).toBeGreaterThan(2);
  });

  it('holds nothing needless even where there is no time to look for the fewest', () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        const net = netOf(draft);
        const demands = demandsOf(net);
        const clash = smallestClash(demands, brokenBesideIn(net, demands), 1);
        if (clash === undefined) return;
        expect(canBeKept(clash.demands, draft)).toBe(false);
        for (const demand of clash.demands)
          expect(
            canBeKept(
              clash.demands.filter((each) => each !== demand),
              draft,
            ),
          ).toBe(true);
      }),
      { numRuns: times(20, 60), seed: 20261125 },
    );
  });

  it('is judged by the same meaning of each demand as the search for days', () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        const net = netOf(draft);
        const starts = startsKeeping(net, []);
        if (starts === undefined) return;
        const days = IDS.map((id) => starts.get(id) as number);
        for (const demand of demandsOf(net))
          expect(isKept(demand, starts, net)).toBe(holds(demand, days, draft));
      }),
      { numRuns: times(30, 100), seed: 20261125 },
    );
  });

  // Dechter, Meiri, Pearl 1991: inconsistent exactly when the distance graph has a negative cycle; here 10 - 7 - 7 < 0.
  it('is A to B at least 7, B to C at least 7 and A to C at most 10, and nothing of what stands around them', () => {
    const net: DemandingNet = {
      ...netOf({ seasons: [[0, 3], undefined, undefined], waits: [], weekends: false, notBefore: 0 }),
      waits: [
        { from: 'a', to: 'b', minDays: 7, maxDays: 9 },
        { from: 'b', to: 'c', minDays: 7, maxDays: undefined },
        { from: 'a', to: 'c', minDays: 0, maxDays: 10 },
      ],
    };
    const demands = demandsOf(net);
    expect(smallestClash(demands, brokenBesideIn(net, demands), 1000)?.demands).toEqual([
      { kind: 'least-wait', from: 'a', to: 'b', days: 7 },
      { kind: 'least-wait', from: 'b', to: 'c', days: 7 },
      { kind: 'greatest-wait', from: 'a', to: 'c', days: 10 },
    ]);
  });
});
