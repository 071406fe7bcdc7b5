/** Into how many parts a lawn must be divided, and how many people it takes, for the work to fit its waits and season. */
import { partNet, partsOf } from './parts.js';
import { type Placed, type ScheduleStep, schedule } from './schedule.js';
import type { StepNet } from './step-net.js';

export interface Parting {
  /** Parts of the lawn, each finished before the next is begun; 1 for a lawn done in one go. */
  readonly parts: number;
  /** At work at a time; one more than the most that an owner can gather means a contractor. */
  readonly people: number;
  /** Hours of work that fit into a day; without end for a contractor. */
  readonly dayHours: number;
  /** First day for the work that is parted, where the rest of this season is too short for it. */
  readonly notBefore: number;
}

/** Every step with the days of each of its parts. */
export type Dates = ReadonlyMap<string, readonly Placed[]>;

export interface Dated {
  readonly parting: Parting;
  readonly dates: Dates;
}

/**
 * The dates with as few people, and then as few parts, as the waits and windows allow; more parts rather than another
 * season. What is too much for the rest of a season waits for the next one before it asks for another pair of hands.
 * With one more than the most people it is work for a contractor, and the hours no longer count.
 *
 * @returns undefined when no dates hold whatever the hours
 */
export function datesWithParting(net: StepNet, mostPeople: number): Dated | undefined {
  const work = workOf(net);
  const seasonDays = Math.min(...work.map(daysInSeason));
  for (let people = 1; people <= mostPeople; people++) {
    const dayHours = net.dayHours * people;
    const mostParts = mostPartsOf(net, dayHours);
    if (mostParts > seasonDays) continue;
    const finest = datedInOneSeason(net, { parts: mostParts, people, dayHours });
    // What does not fit in parts of a day's work does not fit in larger ones.
    if (finest === undefined) continue;
    return thisSeasonFirst(net, { people, dayHours }) ?? finest;
  }
  return datedInOneSeason(net, { parts: 1, people: mostPeople + 1, dayHours: Number.POSITIVE_INFINITY });
}

/**
 * The dates of this season with as few more people as it takes, where the work would otherwise wait for a later one.
 *
 * @returns undefined where it does not wait, or where the most people would not do it sooner either
 */
export function datesWithHelp(
  net: StepNet,
  { parting, dates }: Dated,
  mostPeople: number,
): Dated | undefined {
  if (isThisSeason(net, dates)) return undefined;
  for (let people = parting.people + 1; people <= mostPeople; people++) {
    const found = thisSeasonFirst(net, { people, dayHours: net.dayHours * people });
    if (found !== undefined && isThisSeason(net, found.dates)) return found;
  }
  return undefined;
}

/** With the fewest parts that fit into what is left of this season; else with the fewest that fit at all. */
function thisSeasonFirst(
  net: StepNet,
  { people, dayHours }: Pick<Parting, 'people' | 'dayHours'>,
): Dated | undefined {
  const mostParts = mostPartsOf(net, dayHours);
  const daysLeft = Math.min(...workOf(net).map(daysLeftNow));
  let later: Dated | undefined;
  for (let parts = fewestParts(net, dayHours); parts <= mostParts; parts++) {
    // Parts are a day's work, so more of them than days are left would not fit either.
    if (later !== undefined && parts > daysLeft) break;
    const found = datedInOneSeason(net, { parts, people, dayHours });
    if (found !== undefined && isThisSeason(net, found.dates)) return found;
    later ??= found;
  }
  return later;
}

/** Whether all parts of the work lie in the window that each could begin in first. */
const isThisSeason = (net: StepNet, dates: Dates): boolean =>
  workOf(net).every(({ id, nextFit, lastFit }) => {
    const closes = lastFit(nextFit(0)) ?? Number.POSITIVE_INFINITY;
    return (dates.get(id) as readonly Placed[]).every(({ end }) => end <= closes);
  });

const workOf = ({ steps, inParts }: StepNet): ScheduleStep[] =>
  steps.filter(({ id, workHours }) => inParts.has(id) && workHours > 0);

const mostPartsOf = (net: StepNet, dayHours: number): number =>
  Math.max(1, Math.ceil(workOf(net).reduce((sum, { workHours }) => sum + workHours, 0) / dayHours));

/** Steps that must share a day, such as sowing and covering, have to fit into it together. */
function fewestParts({ steps, waits }: StepNet, dayHours: number): number {
  const hoursOf = new Map(steps.map(({ id, workHours }) => [id, workHours]));
  const sameDay = waits.filter(({ minDays, maxDays }) => minDays === 0 && maxDays === 0);
  const shared = steps.map(({ id, workHours }) =>
    sameDay
      .filter(({ from }) => from === id)
      .reduce((sum, { to }) => sum + (hoursOf.get(to) ?? 0), workHours),
  );
  const tied = shared.filter((hours, index) => hours > (steps[index] as ScheduleStep).workHours);
  return Math.max(1, Math.ceil(Math.max(0, ...tied) / dayHours));
}

/** The dates for a parting that is settled. */
export function datesFor(net: StepNet, parting: Parting): Dates | undefined {
  const { parts, dayHours, notBefore } = parting;
  const held = net.steps.map((step) =>
    net.inParts.has(step.id) ? { ...step, notBefore: Math.max(step.notBefore, notBefore) } : step,
  );
  const parted = partNet({ steps: held, waits: net.waits }, net, parts);
  const placed = schedule({ ...parted, dayHours, taken: net.taken });
  return (
    placed &&
    partsOf(
      placed,
      net.steps.map(({ id }) => id),
      parts,
    )
  );
}

/** From the first free day, or from the next season on where this one is too short; undefined when neither does. */
export function datedInOneSeason(net: StepNet, choice: Omit<Parting, 'notBefore'>): Dated | undefined {
  let notBefore = 0;
  for (let season = 0; season < 2; season++) {
    const parting = { ...choice, notBefore };
    const dates = datesFor(net, parting);
    if (dates === undefined) return undefined;
    const overrun = firstOverrun(net.steps, dates);
    if (overrun === undefined) return { parting, dates };
    notBefore = overrun;
  }
  return undefined;
}

/** The next opening for the first step that begins in one window and ends in another. */
function firstOverrun(steps: readonly ScheduleStep[], dates: Dates): number | undefined {
  for (const { id, lastFit, nextFit } of steps) {
    const parts = dates.get(id) as readonly Placed[];
    const [first, last] = [parts[0] as Placed, parts.at(-1) as Placed];
    const closes = lastFit(first.start);
    if (closes !== undefined && last.end > closes) return nextFit(closes + 1);
  }
  return undefined;
}

/** Working days in the window that the step could begin in first; no end without a window. */
function daysLeftNow({ nextFit, lastFit }: ScheduleStep): number {
  const opens = nextFit(0);
  const closes = lastFit(opens);
  return closes === undefined ? Number.POSITIVE_INFINITY : daysFrom(opens, closes, nextFit);
}

/** Working days in the next window that opens after the one around the day; no end without a window. */
function daysInSeason({ nextFit, lastFit }: ScheduleStep): number {
  const now = lastFit(nextFit(0));
  if (now === undefined) return Number.POSITIVE_INFINITY;
  const opens = nextFit(now + 1);
  const closes = lastFit(opens) ?? opens;
  return daysFrom(opens, closes, nextFit);
}

function daysFrom(opens: number, closes: number, nextFit: ScheduleStep['nextFit']): number {
  let days = 0;
  for (let day = opens; day <= closes; day = nextFit(day + 1)) days++;
  return days;
}
