/**
 * Dates of all active steps, and what only the dates can tell the rules: the wait for a season, the parts, the people.
 *
 * The steps are dated twice: once to see what the season and the hours ask for, then with that in the rules.
 */
import { addDays, type IsoDate } from '../base/dates.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { NO_TIMING, type Timing } from './computed-facts.js';
import { type Dated, type Dates, datedInOneSeason, datesFor, datesWithParting } from './parting.js';
import type { Placed } from './schedule.js';
import { type StepNet, seasonOf, stepNet } from './step-net.js';
import { activeSteps } from './steps.js';

/** The steps that the whole work leads up to. */
const SOWINGS: readonly string[] = ['sow', 'patch-sow'];

export interface Dating {
  readonly timing: Timing;
  /** Of every step, part by part. */
  readonly dates: ReadonlyMap<string, readonly PartDates[]>;
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
): Dating | undefined {
  const netOf = (timing: Timing): StepNet => {
    const scope = scopeOf(timing);
    return stepNet(pack, scope, { today, season: seasonOf(pack, scope, today) });
  };
  const first = datesWithParting(netOf(NO_TIMING), mostPeople(pack));
  if (first === undefined) return undefined;
  const seasonWaitDays = seasonWaitOf(pack, scopeOf(NO_TIMING), { today, first });
  const timing = { seasonWaitDays, parting: first.parting };
  const net = netOf(timing);
  const dated = datedInOneSeason(net, first.parting) ?? datesWithParting(net, mostPeople(pack));
  return (
    dated && { timing: { seasonWaitDays, parting: dated.parting }, dates: asDates(dated.dates, net.startOn) }
  );
}

/** Days that the whole work is held back, so that nothing is begun long before the rest can follow. */
function seasonWaitOf(
  pack: Pack,
  scope: Scope,
  { today, first }: { readonly today: IsoDate; readonly first: Dated },
): number {
  const season = { ...seasonOf(pack, scope, today), anyTimeOfYear: true };
  const anyTime = datesFor(stepNet(pack, scope, { today, season }), { ...first.parting, notBefore: 0 });
  if (anyTime === undefined) return 0;
  const active = activeSteps(pack, scope);
  const isHeldBack = active
    .filter(({ id }) => SOWINGS.includes(id))
    .some(({ id }) => firstPart(first.dates, id).start > firstPart(anyTime, id).start);
  if (!isHeldBack) return 0;
  const waits = active
    .filter(({ after }) => after.some(({ step }) => step === 'wait-for-season'))
    .map(({ id }) => waitOf(firstPart(first.dates, id), firstPart(anyTime, id).start));
  return Math.min(...waits);
}

/** Days that a step must or, where nothing makes it wait, may be held back and still be in time. */
function waitOf({ start, latest }: Placed, anyTimeStart: number): number {
  return (start > anyTimeStart ? start : (latest ?? Number.POSITIVE_INFINITY)) - anyTimeStart;
}

const firstPart = (dates: Dates, id: string): Placed => (dates.get(id) as readonly Placed[])[0] as Placed;

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
