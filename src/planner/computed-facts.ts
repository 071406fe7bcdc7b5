/** The facts that no condition can work out: area from parts, days since a date, the wait for a season. */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import { addDays, daysBetween, type IsoDate, isIsoDate } from '../base/dates.js';
import { asShown } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { LawnPart } from '../interview/answers.js';
import type { Outcome } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { ComputedFact } from '../rules/scope.js';
import type { Parting } from './parting.js';
import {
  halfTold,
  isFound,
  isHalfKnown,
  PLACE,
  type Whereabouts,
  warmGrassSleepsOn,
  whereabouts,
} from './whereabouts.js';

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
 * @param pack for the climate of the place
 * @param today day that stands for an open first free day
 * @param timing what the first dating found out, or that nothing is dated
 * @param units those of the reader: the area counts as it is printed
 */
export function computedFacts(
  pack: Pack,
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
    'days-since-date': (read, raw, [dateName = '', , withoutDate = '']) => {
      const last = read(dateName);
      if (!last.known) return last;
      const date = last.value;
      if (typeof date === 'string' && isIsoDate(date)) {
        const days = Math.max(0, daysBetween(date, startOf(raw('startOn'), today)));
        return { known: true, value: days, used: last.used, from: last.from };
      }
      // "Not in that time" is an answer as well, and stands at the days that the fact names for it.
      const days = read(withoutDate);
      return days.known ? { known: true, value: days.value, used: last.used, from: last.from } : days;
    },
    'days-until-start': (_read, raw) => {
      const days = Math.max(0, daysBetween(today, startOf(raw('startOn'), today)));
      return { known: true, value: days, used: ['startOn'], from: ['startOn'] };
    },
    ...placeFacts(pack, today),
    ...(timing === 'open' ? UNDATED : datedFacts(timing)),
  };
}

/** What the place tells; open for as long as the place, or the half of the earth in its stead, can still be answered. */
function placeFacts(pack: Pack, today: IsoDate): Readonly<Record<string, ComputedFact>> {
  const byPlace =
    (tell: (at: Whereabouts) => Value | undefined): ComputedFact =>
    (read) =>
      // An own climate stands, whatever the place.
      told(pack.ownClimate === undefined ? [read(PLACE)] : [], tell(whereabouts(pack, read, today)));
  const byHalf =
    (tell: (at: Whereabouts) => Value | undefined): ComputedFact =>
    (read) => {
      const place = read(PLACE);
      const half = halfTold(pack, read);
      // A place that can still be told would overrule the half.
      const stands = isFound(pack, place) ? [place] : isHalfKnown(pack, place) ? [] : [place, half];
      return told(stands, tell(whereabouts(pack, read, today)));
    };
  return {
    // Without the whereabouts: those ask for the half themselves.
    'half-known': (read) => {
      const isKnown = isHalfKnown(pack, read(PLACE));
      return told(isKnown ? [] : [read(PLACE)], isKnown);
    },
    'southern-half': byHalf(({ southern }) => southern),
    'winter-known': byPlace(({ climate }) => climate?.coldestTMinC !== undefined),
    'coldest-month': byPlace(({ climate }) => climate?.coldestTMinC),
    'warm-grass-sleeps': byHalf((at) => warmGrassSleepsOn(today, pack, at)),
    'days-until-green': (read, raw) => {
      const start = startOf(raw('startOn'), today);
      return byHalf((at) => daysAsleep(start, (day) => warmGrassSleepsOn(day, pack, at)))(read, raw, []);
    },
  };
}

const DAYS_PER_YEAR = 365;

/** Days from the one given to the first that is not slept through; a year where there is none. */
function daysAsleep(from: IsoDate, sleeps: (day: IsoDate) => boolean): number {
  let days = 0;
  while (days < DAYS_PER_YEAR && sleeps(addDays(from, days))) days++;
  return days;
}

type Value = string | number | boolean;
const NOT_KNOWN: Outcome = { known: false, open: [] };

/** The value, unless an answer that it stands on can still be given. */
function told(stands: readonly Outcome[], value: Value | undefined): Outcome {
  const open = stands.flatMap((outcome) => (outcome.known ? [] : outcome.open));
  if (open.length > 0) return { known: false, open };
  if (value === undefined) return NOT_KNOWN;
  const names = [...new Set(stands.flatMap((outcome) => (outcome.known ? outcome.from : [])))];
  return { known: true, value, used: names, from: names };
}

const datedFacts = ({ seasonWaitDays, parting }: Timing): Readonly<Record<string, ComputedFact>> => ({
  'season-wait': () => settled(seasonWaitDays),
  parts: () => settled(parting.parts),
  people: () => settled(parting.people),
});

const undated = (): Outcome => ({ known: false, open: [] });
const UNDATED = { 'season-wait': undated, parts: undated, people: undated };

const settled = (value: number | boolean): Outcome => ({ known: true, value, used: [], from: [] });

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
