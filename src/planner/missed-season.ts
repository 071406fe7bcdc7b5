/** A clash told by its dates: the last day for one step, and the first for another that must come before it. */
import { addDays, type IsoDate } from '../base/dates.js';
import type { Undatable } from './clash.js';
import { type Demand, type DemandingNet, startsKeeping } from './demands.js';
import type { Starts } from './network.js';

export interface MissedSeason {
  readonly last: string;
  /** Last day of a season of it. */
  readonly byOn: IsoDate;
  readonly first: string;
  /** First day on which that can be begun, for that season. */
  readonly fromOn: IsoDate;
  /** Days that the waits between them take. */
  readonly days: number;
  /** The day that the last one then comes to, when its season is over. */
  readonly wouldBeOn: IsoDate;
}

/** Weekends can put off every step on the way by less than a week. */
const DAYS_PER_WEEK = 7;

/** Takes a season of the last step that has one, and looks how late the others bring it. */
export function missedSeason(
  clash: readonly Demand[],
  { net, startOn }: Undatable,
): MissedSeason | undefined {
  const order = new Map(net.steps.map(({ id }, index) => [id, index]));
  const seasons = clash
    .flatMap((demand) => (demand.kind === 'season' ? [demand] : []))
    .sort((a, b) => (order.get(b.step) as number) - (order.get(a.step) as number));
  for (const season of seasons) {
    const others = clash.filter((demand) => demand !== season);
    const opens = inSeason(net, season.step, 0);
    const starts = startsKeeping(net, [...others, { kind: 'no-sooner', step: season.step, day: opens }]);
    const would = starts?.get(season.step);
    if (starts === undefined || would === undefined) continue;
    const by = lastFitBefore(net, season.step, would);
    const { first, days } = traced(season.step, starts, others);
    const from = starts.get(first) as number;
    if (first === season.step || !isByItself(first, from, others, net)) continue;
    const [byOn, fromOn, wouldBeOn] = [by, from, would].map((day) => addDays(startOn, day)) as Days;
    return { last: season.step, byOn, first, fromOn, days, wouldBeOn };
  }
  return undefined;
}

type Days = [IsoDate, IsoDate, IsoDate];

/** Nearest day of its season on or after the one given. */
const inSeason = ({ steps }: DemandingNet, id: string, day: number): number =>
  steps.find((each) => each.id === id)?.nextFit(day, { season: true, weekends: false }) ?? day;

function lastFitBefore(net: DemandingNet, id: string, start: number): number {
  let day = start - 1;
  while (day > 0 && inSeason(net, id, day) !== day) day--;
  return day;
}

/** Back from a step along the waits that hold it where it is, to one that is held by none. */
function traced(
  id: string,
  starts: Starts,
  demands: readonly Demand[],
): { readonly first: string; readonly days: number } {
  const at = (step: string): number => starts.get(step) as number;
  const slack = demands.some(({ kind }) => kind === 'weekends') ? DAYS_PER_WEEK - 1 : 0;
  const seen = new Set([id]);
  let [first, days] = [id, 0];
  for (;;) {
    const holding = demands
      .flatMap((demand) => (demand.kind === 'least-wait' && demand.to === first ? [demand] : []))
      .filter(({ from, days: wait }) => !seen.has(from) && at(first) - (at(from) + wait) <= slack)
      .sort((a, b) => at(b.from) + b.days - (at(a.from) + a.days))[0];
    if (holding === undefined) return { first, days };
    seen.add(holding.from);
    days += holding.days;
    first = holding.from;
  }
}

/** Whether its own season, its first day or the weekends keep the step from being begun a day sooner. */
function isByItself(id: string, start: number, demands: readonly Demand[], net: DemandingNet): boolean {
  const own = demands.filter(
    (demand) => demand.kind === 'weekends' || ('step' in demand && demand.step === id),
  );
  const sooner: Demand = { kind: 'no-sooner', step: id, day: Math.max(0, start - 1) };
  return startsKeeping(net, [...own, sooner])?.get(id) === start;
}
