/** The facts that no condition can work out: area from parts, days since a date, the wait for a season. */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import { daysBetween, type IsoDate, isIsoDate } from '../base/dates.js';
import { asShown } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { LawnPart } from '../interview/answers.js';
import type { Outcome } from '../rules/evaluate.js';
import type { ComputedFact } from '../rules/scope.js';
import type { Parting } from './parting.js';

/** What only the dates can tell the rules. */
export interface Timing {
  /** Days that the season and the hours hold the sowing back, d. */
  readonly seasonWaitDays: number;
  readonly parting: Parting;
}

/** Before anything is dated. */
export const NO_TIMING: Timing = {
  seasonWaitDays: 0,
  parting: { parts: 1, people: 1, dayHours: Number.POSITIVE_INFINITY, notBefore: 0 },
};

/** The first free day: the answer, or today; a day that is past cannot be worked on any more. */
export function startOf(answer: unknown, today: IsoDate): IsoDate {
  const answered = dateOr(answer, today);
  return answered < today ? today : answered;
}

export function dateOr(answer: unknown, otherwise: IsoDate): IsoDate {
  return typeof answer === 'string' && isIsoDate(answer) ? answer : otherwise;
}

/**
 * The computed facts of a session.
 *
 * @param today day that stands for an open first free day
 * @param timing what the first dating found out, or that nothing is dated
 * @param units those of the reader: the area counts as it is printed
 */
export function computedFacts(
  today: IsoDate,
  timing: Timing | 'open',
  units: Units = 'metric',
): Readonly<Record<string, ComputedFact>> {
  return {
    area: (read, raw) => areaOutcome(read, raw('lawnParts'), units),
    'days-since-weedkiller': (read, raw) => {
      const last = read('weedkillerLastOn');
      if (!last.known) return last;
      const start = startOf(raw('startOn'), today);
      const lastOn = dateOr(last.value, start);
      return { known: true, value: daysBetween(lastOn, start), used: last.used, from: last.used };
    },
    'days-until-start': (_read, raw) => {
      const days = Math.max(0, daysBetween(today, startOf(raw('startOn'), today)));
      return { known: true, value: days, used: ['startOn'], from: ['startOn'] };
    },
    ...(timing === 'open' ? UNDATED : datedFacts(timing)),
  };
}

const datedFacts = ({ seasonWaitDays, parting }: Timing): Readonly<Record<string, ComputedFact>> => ({
  'season-wait': () => settled(seasonWaitDays),
  parts: () => settled(parting.parts),
  people: () => settled(parting.people),
});

const undated = (): Outcome => ({ known: false, open: [] });
const UNDATED = { 'season-wait': undated, parts: undated, people: undated };

const settled = (value: number): Outcome => ({ known: true, value, used: [], from: [] });

/**
 * The area, with the spread that the way of measuring leaves. It is taken as it is printed, so that whoever multiplies
 * what stands in the plan comes to what stands beside it.
 */
function areaOutcome(read: (name: string) => Outcome, parts: unknown, units: Units): Outcome {
  const area = Array.isArray(parts) ? ofParts(parts as LawnPart[]) : read('areaM2');
  const error = read('facts.areaErrorFraction');
  if (!area.known) return error.known ? area : { known: false, open: [...area.open, ...error.open] };
  if (!error.known) return error;
  const areaM2 = asShown(area.value as number, 'm2', units);
  const fraction = error.value as number;
  return {
    known: true,
    value: areaM2,
    least: (area.least ?? areaM2) * (1 - fraction),
    most: (area.most ?? areaM2) * (1 + fraction),
    used: [...area.used, ...error.used],
    from: [...area.from, ...error.from],
  };
}

function ofParts(lawnParts: readonly LawnPart[]): Outcome {
  return {
    known: true,
    value: lawnPartsArea({ lawnParts }).areaM2,
    used: ['lawnParts'],
    from: ['lawnParts'],
  };
}
