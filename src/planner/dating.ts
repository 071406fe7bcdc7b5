/**
 * Dates of all active steps, and what only the dates can tell the rules: the wait for a season, the parts, the people.
 *
 * The steps are dated twice: once to see what the season and the hours ask for, then with that in the rules.
 */
import { addDays, type IsoDate } from '../base/dates.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import { NO_TIMING, type Timing } from './computed-facts.js';
import {
  type Dated,
  type Dates,
  datedInOneSeason,
  datesFor,
  datesWithHelp,
  datesWithParting,
} from './parting.js';
import { lastAfterDone, netFrom, type Progress } from './progress.js';
import type { Placed } from './schedule.js';
import { type HoursOnDays, type StepNet, seasonOf, stepNet } from './step-net.js';
import { activeSteps } from './steps.js';
import type { Season } from './windows.js';
import { openDiary, workPoint } from './work-days.js';

/** The steps that the whole work leads up to. */
export const SOWINGS: readonly string[] = ['sow', 'patch-sow'];

/** The day of the first sowing; null where nothing is sown. */
export function firstSowingIn({ dates }: Pick<Dating, 'dates'>, active: readonly Step[]): IsoDate | null {
  // Steps that are not in the plan have dates too: they only carry order.
  const sowings = active.filter(({ id }) => SOWINGS.includes(id));
  const days = sowings.flatMap(({ id }) => (dates.get(id) ?? []).map(({ startOn }) => startOn));
  return days.sort()[0] ?? null;
}

export interface Dating {
  readonly timing: Timing;
  /** The scope with that timing in the rules, and the season it makes. */
  readonly scope: Scope;
  readonly season: Season;
  /** Of every step, part by part. */
  readonly dates: ReadonlyMap<string, readonly PartDates[]>;
  /** Where the work waits for the next season because one pair of hands is too few for this one. */
  readonly sooner: { readonly people: number; readonly sowOn: IsoDate } | undefined;
  /** The hours that all of it takes on each day, with those taken before. */
  readonly hours: HoursOnDays;
}

/** No dates hold with this in the rules, whatever the hours and hands. */
export interface Undated {
  readonly undatedWith: Timing;
}

/** What else bears on the dates. */
export interface Standing {
  /** What has happened since; those steps stand where they were done. */
  readonly progress?: Progress | undefined;
  /** Hours that are given away already. */
  readonly taken?: HoursOnDays | undefined;
}

/**
 * Dates all steps.
 *
 * @param scopeOf the scope with a timing in the rules; the same scope where the rules are told the same
 */
export function dateSteps(
  pack: Pack,
  scopeOf: (timing: Timing) => Scope,
  today: IsoDate,
  { progress, taken }: Standing = {},
): Dating | Undated {
  const leftOut = progress?.leftOut;
  const wholeNetOf = (scope: Scope, season: Season): StepNet =>
    stepNet(pack, scope, { today, season, leftOut, taken });
  const netOf: typeof wholeNetOf = (scope, season) => {
    const net = wholeNetOf(scope, season);
    return progress === undefined ? net : netFrom(net, pack, progress);
  };
  const undated = scopeOf(NO_TIMING);
  const undatedSeason = seasonOf(pack, undated, today);
  const undatedNet = netOf(undated, undatedSeason);
  const first = datesWithParting(undatedNet, mostPeople(pack));
  if (first === undefined) return { undatedWith: NO_TIMING };
  const toDo = activeSteps(pack, undated, leftOut).filter(({ id }) => progress?.done.has(id) !== true);
  const seasonWaitDays = seasonWaitOf(toDo, first.dates, () =>
    datesFor(netOf(undated, { ...undatedSeason, anyTimeOfYear: true }), { ...first.parting, notBefore: 0 }),
  );
  const toldTiming = { seasonWaitDays, parting: first.parting };
  const told = scopeOf(toldTiming);
  // Where the dates tell the rules nothing new, they stand.
  const isSettled = told === undated;
  const season = isSettled ? undatedSeason : seasonOf(pack, told, today);
  const net = isSettled ? undatedNet : netOf(told, season);
  const dated = isSettled
    ? first
    : (datedInOneSeason(net, first.parting) ?? datesWithParting(net, mostPeople(pack)));
  if (dated === undefined) return { undatedWith: toldTiming };
  const timing = { seasonWaitDays, parting: dated.parting };
  const dates = asDates(dated.dates, net.startOn);
  return {
    timing,
    scope: scopeOf(timing),
    season,
    sooner: soonerWithHelp(undatedNet, first, mostPeople(pack)),
    dates: progress === undefined ? dates : asHappened(dates, wholeNetOf(told, season), progress),
    hours: hoursTaken(net, dated),
  };
}

function soonerWithHelp(net: StepNet, first: Dated, most: number): Dating['sooner'] {
  const sowing = net.steps.find(
    ({ id }) => SOWINGS.includes(id) && net.inPlan.has(id) && net.inParts.has(id),
  );
  const helped = sowing && datesWithHelp(net, first, most);
  if (sowing === undefined || helped === undefined) return undefined;
  const { start } = firstPart(helped.dates, sowing.id);
  return start < firstPart(first.dates, sowing.id).start
    ? { people: helped.parting.people, sowOn: addDays(net.startOn, start) }
    : undefined;
}

/** What is done on its real days; what must follow it soon, with the last day for that. */
function asHappened(dates: Dating['dates'], net: StepNet, progress: Progress): Dating['dates'] {
  return new Map(
    [...dates].map(([id, parts]) => {
      const past = progress.done.get(id);
      if (past !== undefined) return [id, [{ ...past, latestOn: undefined }]];
      const last = lastAfterDone(net, id, progress);
      if (last === undefined) return [id, parts];
      const by = ({ startOn, latestOn = last }: PartDates): IsoDate =>
        [startOn, latestOn < last ? latestOn : last].sort()[1] as IsoDate;
      return [id, parts.map((part) => ({ ...part, latestOn: by(part) }))];
    }),
  );
}

/**
 * Days that the whole work is held back, so that nothing is begun long before the rest can follow.
 *
 * @param datesAnyTime the dates as if every window were always open
 */
function seasonWaitOf(steps: readonly Step[], dates: Dates, datesAnyTime: () => Dates | undefined): number {
  const sowings = steps.filter(({ id }) => SOWINGS.includes(id));
  const anyTime = sowings.length === 0 ? undefined : datesAnyTime();
  if (anyTime === undefined) return 0;
  const isHeldBack = sowings.some(({ id }) => firstPart(dates, id).start > firstPart(anyTime, id).start);
  if (!isHeldBack) return 0;
  const waits = steps
    .filter(({ after }) => after.some(({ step }) => step === 'wait-for-season'))
    .map(({ id }) => waitOf(firstPart(dates, id), firstPart(anyTime, id).start));
  return Math.min(...waits);
}

/** Days that a step must or, where nothing makes it wait, may be held back and still be in time. */
function waitOf({ start, latest }: Placed, anyTimeStart: number): number {
  return (start > anyTimeStart ? start : (latest ?? Number.POSITIVE_INFINITY)) - anyTimeStart;
}

const firstPart = (dates: Dates, id: string): Placed => (dates.get(id) as readonly Placed[])[0] as Placed;

function hoursTaken(net: StepNet, { dates, parting }: Dated): HoursOnDays {
  const diary = openDiary(parting.dayHours, net.taken);
  for (const step of net.steps) {
    const parts = dates.get(step.id) as readonly Placed[];
    const { workOn } = workPoint({ ...step, workHours: step.workHours / parts.length }, parting.dayHours);
    for (const { start } of parts) diary.take(workOn(start));
  }
  return new Map([...diary.taken].map(([day, hours]) => [addDays(net.startOn, day), hours]));
}

/** Without the figure nobody comes to help. */
const mostPeople = (pack: Pack): number => pack.figureById.get('most-people')?.typical ?? 1;

/** The days of one part of a step. */
export interface PartDates {
  readonly startOn: IsoDate;
  /** Last day of the work. */
  readonly endOn: IsoDate;
  readonly latestOn: IsoDate | undefined;
}

function asDates(dates: Dates, startOn: IsoDate): ReadonlyMap<string, readonly PartDates[]> {
  const on = (day: number): IsoDate => addDays(startOn, day);
  const partDates = ({ start, end, latest }: Placed): PartDates => ({
    startOn: on(start),
    endOn: on(end),
    latestOn: latest === undefined ? undefined : on(latest),
  });
  return new Map([...dates].map(([id, parts]) => [id, parts.map(partDates)]));
}
