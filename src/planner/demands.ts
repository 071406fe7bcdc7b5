/** A net of steps taken apart into single demands, each of which can be kept or dropped by itself. */
import { type Link, networkOf, type Point, type Starts } from './network.js';
import type { BrokenBeside } from './smallest-clash.js';

export type Demand =
  /** The step is begun inside its season. */
  | { readonly kind: 'season'; readonly step: string }
  /** All work is done at weekends. */
  | { readonly kind: 'weekends' }
  /** A day before which the step cannot be begun, counted from the first free day. */
  | { readonly kind: 'no-sooner'; readonly step: string; readonly day: number }
  | { readonly kind: 'least-wait'; readonly from: string; readonly to: string; readonly days: number }
  | { readonly kind: 'greatest-wait'; readonly from: string; readonly to: string; readonly days: number };

/** What of a step's days counts. */
export interface Counting {
  readonly season: boolean;
  readonly weekends: boolean;
}

export interface DemandingStep {
  readonly id: string;
  readonly hasSeason: boolean;
  /** It is work, and the days for work are weekends. */
  readonly isForWeekends: boolean;
  readonly notBefore: number;
  /** Nearest day on or after the one given that is fit by what counts. */
  readonly nextFit: (day: number, counting: Counting) => number;
}

export interface DemandingNet {
  /** In the order of the trade. */
  readonly steps: readonly DemandingStep[];
  readonly waits: readonly Link[];
}

/** Every demand of the net, in the order of its steps. */
export function demandsOf({ steps, waits }: DemandingNet): Demand[] {
  const ofSteps = steps.flatMap(({ id, hasSeason, notBefore }): Demand[] => [
    ...(hasSeason ? [{ kind: 'season', step: id } as const] : []),
    ...(notBefore > 0 ? [{ kind: 'no-sooner', step: id, day: notBefore } as const] : []),
    ...waits.filter(({ to }) => to === id).flatMap(demandsOfWait),
  ]);
  return steps.some(({ isForWeekends }) => isForWeekends) ? [...ofSteps, { kind: 'weekends' }] : ofSteps;
}

function demandsOfWait({ from, to, minDays, maxDays }: Link): Demand[] {
  return [
    { kind: 'least-wait', from, to, days: minDays },
    ...(maxDays === undefined ? [] : [{ kind: 'greatest-wait', from, to, days: maxDays } as const]),
  ];
}

/** The least starts that keep the demands and whatever else does not count; undefined where there are none. */
export function startsKeeping(net: DemandingNet, kept: readonly Demand[]): Starts | undefined {
  const hasSeason = (id: string): boolean =>
    kept.some((demand) => demand.kind === 'season' && demand.step === id);
  const firstDayOf = (id: string): number =>
    Math.max(
      0,
      ...kept.map((demand) => (demand.kind === 'no-sooner' && demand.step === id ? demand.day : 0)),
    );
  const weekends = kept.some(({ kind }) => kind === 'weekends');
  const points = net.steps.map((step): Point => {
    const counting = { season: hasSeason(step.id), weekends };
    return {
      id: step.id,
      notBefore: firstDayOf(step.id),
      nextFit: (day) => step.nextFit(day, counting),
      endOf: (start) => start,
    };
  });
  return networkOf(points, kept.flatMap(linkFor)).leastStarts();
}

function linkFor(demand: Demand): Link[] {
  if (demand.kind === 'least-wait') return [{ ...demand, minDays: demand.days, maxDays: undefined }];
  if (demand.kind === 'greatest-wait')
    return [{ ...demand, minDays: Number.NEGATIVE_INFINITY, maxDays: demand.days }];
  return [];
}

export function isKept(demand: Demand, starts: Starts, net: DemandingNet): boolean {
  const at = (id: string): number => starts.get(id) as number;
  const isFit = ({ id, nextFit }: DemandingStep, counting: Counting): boolean =>
    nextFit(at(id), counting) === at(id);
  switch (demand.kind) {
    case 'season':
      return net.steps
        .filter(({ id }) => id === demand.step)
        .every((step) => isFit(step, { season: true, weekends: false }));
    case 'weekends':
      return net.steps.every((step) => isFit(step, { season: false, weekends: true }));
    case 'no-sooner':
      return at(demand.step) >= demand.day;
    case 'least-wait':
      return at(demand.to) - at(demand.from) >= demand.days;
    case 'greatest-wait':
      return at(demand.to) - at(demand.from) <= demand.days;
    default:
      return demand satisfies never;
  }
}

/** For the search of a smallest clash among all the demands of the net. */
export function brokenBesideIn(net: DemandingNet, all: readonly Demand[]): BrokenBeside<Demand> {
  return (kept) => {
    const starts = startsKeeping(net, kept);
    return starts && all.filter((demand) => !kept.includes(demand) && !isKept(demand, starts, net));
  };
}
