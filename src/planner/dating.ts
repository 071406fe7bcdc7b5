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
import { type Dated, type Dates, datedInOneSeason, datesFor, datesWithParting } from './parting.js';
import { lastAfterDone, netFrom, type Progress } from './progress.js';
import type { Placed } from './schedule.js';
import { type HoursOnDays, type NetChoice, type StepNet, seasonOf, stepNet } from './step-net.js';
import { activeSteps } from './steps.js';
import { openDiary, workPoint } from './work-days.js';

/** The steps that the whole work leads up to. */
const SOWINGS: readonly string[] = ['sow', 'patch-sow'];

export interface Dating {
  readonly timing: Timing;
  /** Of every step, part by part. */
  readonly dates: ReadonlyMap<string, readonly PartDates[]>;
  /** The hours that all of it takes on each day, with those taken before. */
  readonly hours: HoursOnDays;
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
 * @param scopeOf the scope with a timing in the rules
 * @returns undefined when no dates hold
 */
export function dateSteps(
  pack: Pack,
  scopeOf: (timing: Timing) => Scope,
  today: IsoDate,
  { progress, taken }: Standing = {},
): Dating | undefined {
  const leftOut = progress?.leftOut;
  const wholeNetOf = (timing: Timing, more: Partial<NetChoice> = {}): StepNet => {
    const scope = scopeOf(timing);
    return stepNet(pack, scope, { today, season: seasonOf(pack, scope, today), leftOut, taken, ...more });
  };
  const netOf: typeof wholeNetOf = (timing, more) => {
    const net = wholeNetOf(timing, more);
    return progress === undefined ? net : netFrom(net, pack, progress);
  };
  const first = datesWithParting(netOf(NO_TIMING), mostPeople(pack));
  if (first === undefined) return undefined;
  const season = { ...seasonOf(pack, scopeOf(NO_TIMING), today), anyTimeOfYear: true };
  const anyTime = datesFor(netOf(NO_TIMING, { season }), { ...first.parting, notBefore: 0 });
  const toDo = activeSteps(pack, scopeOf(NO_TIMING), leftOut).filter(
    ({ id }) => progress?.done.has(id) !== true,
  );
  const seasonWaitDays = anyTime === undefined ? 0 : seasonWaitOf(toDo, first.dates, anyTime);
  const timing = { seasonWaitDays, parting: first.parting };
  const net = netOf(timing);
  const dated = datedInOneSeason(net, first.parting) ?? datesWithParting(net, mostPeople(pack));
  if (dated === undefined) return undefined;
  const dates = asDates(dated.dates, net.startOn);
  return {
    timing: { seasonWaitDays, parting: dated.parting },
    dates: progress === undefined ? dates : asHappened(dates, wholeNetOf(timing), progress),
    hours: hoursTaken(net, dated),
  };
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

/** Days that the whole work is held back, so that nothing is begun long before the rest can follow. */
function seasonWaitOf(steps: readonly Step[], dates: Dates, anyTime: Dates): number {
  const isHeldBack = steps
    .filter(({ id }) => SOWINGS.includes(id))
    .some(({ id }) => firstPart(dates, id).start > firstPart(anyTime, id).start);
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
