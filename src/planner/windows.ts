/** The days on which a step may be done: its yearly windows, moved by half a year in the south, and the weekend. */
import { growingDaysLeft } from '../agronomy/germination.js';
import {
  addDays,
  dayOfYear,
  daysBetween,
  type IsoDate,
  isInWindow,
  lastDateInWindow,
  lastOpening,
  nextDateInWindow,
  nextWeekend,
  parseIsoDate,
  type YearlyWindow,
} from '../base/dates.js';
import type { Expression, Step, WindowRule } from '../rules/schema.js';
import type { LocalClimate } from './climate.js';

export interface FitDays {
  readonly nextFitDay: (date: IsoDate) => IsoDate;
  readonly lastFitDay: (date: IsoDate) => IsoDate | undefined;
}

export interface Season {
  readonly southern: boolean;
  readonly warmSeasonGrass: boolean;
  readonly weekendsOnly: boolean;
  /** Nothing but rain waters what is sown. */
  readonly rainFed?: boolean;
  /** The warmth of the soil where the climate of the place is known. */
  readonly climate?: LocalClimate | undefined;
  /** By that climate the soil warms so late that a spring in print would be over before it begins. */
  readonly lateSpring?: boolean;
  /** Days of the year, `MM-DD`, on which the ground is frozen, or is likely to be where no climate is known. */
  readonly shutDays?: ReadonlySet<string> | undefined;
  /** As if every window were always open: to see what the season costs. */
  readonly anyTimeOfYear?: boolean;
}

/** A number of a rule, or undefined while it is open. */
export type NumberOf = (expression: Expression) => number | undefined;

/** Windows and weekends of one step; a step without work is not bound to weekends. */
export function fitDaysOf(step: Step, season: Season, numberOf: NumberOf): FitDays {
  const windows = windowsOf(step, season, numberOf);
  const onWeekend = season.weekendsOnly && step.labour !== undefined;
  const openOn = (date: IsoDate): IsoDate => {
    if (windows === undefined || windows.some((window) => isInWindow(date, window))) return date;
    return windows.map((window) => nextDateInWindow(date, window)).sort()[0] as IsoDate;
  };
  return {
    nextFitDay: (date) => {
      let day = date;
      // A weekend can fall past the end of a window, and a window can open on a Monday.
      for (;;) {
        const open = openOn(day);
        const fit = onWeekend ? nextWeekend(open) : open;
        if (fit === day) return fit;
        day = fit;
      }
    },
    lastFitDay: (date) => {
      // Frost puts off what has no season, and hurries nobody.
      if (step.window === undefined) return undefined;
      const ends = (windows ?? []).filter((window) => isInWindow(date, window));
      const last = ends
        .map((window) => lastDateInWindow(date, window))
        .sort()
        .at(-1);
      if (last === undefined || !onWeekend) return last;
      let day = last;
      while (day > date && nextWeekend(day) !== day) day = addDays(day, -1);
      return day;
    },
  };
}

/** Why the step has a season, for this kind of grass; null for a step that has none. */
export function windowWhy({ window }: Step, { warmSeasonGrass }: Season): string | null {
  if (window === undefined) return null;
  return (warmSeasonGrass ? window.whyWarmSeason : undefined) ?? window.why;
}

/** The windows of the step at the place, or undefined for a step that may be done on any day. */
export function windowsOf(
  step: Step,
  season: Season,
  numberOf: NumberOf,
): readonly YearlyWindow[] | undefined {
  if (season.anyTimeOfYear === true) return undefined;
  const windows = seasonsOf(step, season, numberOf);
  const { shutDays } = season;
  if (shutDays === undefined || shutDays.size === 0 || step.indoors === true) return windows;
  const thawed = (windows ?? [WHOLE_YEAR]).flatMap((window) => withoutShutDays(window, shutDays));
  // Where the ground never thaws in the season, nothing better can be said than the season.
  return thawed.length === 0 ? windows : thawed;
}

function seasonsOf(
  { window }: Step,
  season: Season,
  numberOf: NumberOf,
): readonly YearlyWindow[] | undefined {
  if (window === undefined) return undefined;
  const { climate, lateSpring } = season;
  const published = publishedFor(window, season).map((rule) => ({
    ...rule,
    from: rule.surelyFrom === undefined || knowsRain(climate) ? rule.from : rule.surelyFrom,
    until: climate !== undefined && lateSpring === true ? (rule.lateUntil ?? rule.until) : rule.until,
  }));
  const windows = season.southern
    ? published.map((rule) => ({ ...rule, from: halfYearOn(rule.from), until: halfYearOn(rule.until) }))
    : published;
  if (climate === undefined) return windows;
  const open = windows.flatMap((rule) => warmPart(rule, climate, numberOf) ?? []);
  if (open.some(isWholeYear)) return undefined;
  // Where the soil never warms in time, the published months still say when it is least bad.
  return open.length === 0 ? windows : open;
}

const WHOLE_YEAR: YearlyWindow = { from: '01-01', until: '12-31' };
const isWholeYear = ({ from, until }: YearlyWindow): boolean =>
  from === WHOLE_YEAR.from && until === WHOLE_YEAR.until;

/** The runs of days of a window on which the ground is open. */
const withoutShutDays = (window: YearlyWindow, shutDays: ReadonlySet<string>): YearlyWindow[] =>
  runsOf((day) => isInWindow(day, window) && !shutDays.has(day.slice(MONTH_AT)));

/** The runs of days of the year that hold, each as a window; a run over the new year is one. */
function runsOf(holds: (day: IsoDate) => boolean): YearlyWindow[] {
  const days = daysOfLeapYear();
  const isOpen = days.map(holds);
  if (isOpen.every((open) => open)) return [WHOLE_YEAR];
  const at = (index: number): number => (index + days.length) % days.length;
  const firsts = days.flatMap((_, index) => (isOpen[index] && !isOpen[at(index - 1)] ? [index] : []));
  return firsts.map((first) => {
    let last = first;
    while (isOpen[at(last + 1)]) last++;
    return { from: monthDayOf(days[first] as IsoDate), until: monthDayOf(days[at(last)] as IsoDate) };
  });
}

/** A leap year, so that 29 February has its place. */
export const daysOfLeapYear = (): readonly IsoDate[] => {
  const first = parseIsoDate('2028-01-01');
  const length = daysBetween(first, parseIsoDate('2029-01-01'));
  return Array.from({ length }, (_, index) => addDays(first, index));
};
const monthDayOf = (day: IsoDate): string => day.slice(MONTH_AT);

function knowsRain(climate: LocalClimate | undefined): boolean {
  if (climate === undefined) return false;
  const day = parseIsoDate(`${climate.year}-06-15`);
  return climate.rainMmOn(day) !== undefined && climate.waterUseMmOn(day) !== undefined;
}

const publishedFor = (window: NonNullable<Step['window']>, { warmSeasonGrass, rainFed }: Season) => {
  const ordinary = rainFed === true ? (window.rainFed ?? window.between) : window.between;
  return warmSeasonGrass ? (window.warmSeason ?? ordinary) : ordinary;
};

/** How warm the soil has to stay, and for how long, after what the step begins; undefined where that is no matter. */
export function closingOf({ window }: Step, season: Season): WindowRule['closes'] {
  return window === undefined
    ? undefined
    : publishedFor(window, season).find(({ closes }) => closes !== undefined)?.closes;
}

/** The part of a window in which the soil is as warm as the rule asks for; undefined when there is none. */
function warmPart(rule: WindowRule, climate: LocalClimate, numberOf: NumberOf): YearlyWindow | undefined {
  const { opensAtC, closes, rain, whileGrowing } = rule;
  const { soilCOn, year } = climate;
  const [growsFromC, growingDays] = limitsOf(whileGrowing, numberOf);
  if (growsFromC !== undefined && growingDays !== undefined)
    return runsOf((on) => {
      const growth = { day: dayOfYear(on), belowC: growsFromC, daysLeft: growingDays };
      return hasGrowthAhead(soilCOn, growth);
    })[0];
  const opens = opensAtC === undefined ? undefined : numberOf(opensAtC);
  const [belowC, daysLeft] = limitsOf(closes, numberOf);
  const [share, rainDays] = rain === undefined ? [] : [numberOf(rain.share), numberOf(rain.days)];
  const closesByWarmth = belowC !== undefined && daysLeft !== undefined;
  if (opens === undefined && !closesByWarmth && share === undefined) return rule;
  const first = lastOpening(parseIsoDate(`${year}-12-31`), rule);
  const length = daysBetween(first, lastDateInWindow(first, rule)) + 1;
  const days = Array.from({ length }, (_, index) => index);
  const isWarm = (index: number): boolean => {
    const day = dayOfYear(addDays(first, index));
    if (opens !== undefined && soilCOn(day) < opens) return false;
    if (share !== undefined && rainShareFrom(addDays(first, index), rainDays ?? 0, climate) < share)
      return false;
    return !closesByWarmth || hasGrowthAhead(soilCOn, { day, belowC, daysLeft });
  };
  const monthDay = (index: number): string => addDays(first, index).slice(MONTH_AT);
  // From both ends: what lies between need not be looked at.
  const [from, until] = [days.find(isWarm), days.findLast(isWarm)];
  return from === undefined || until === undefined
    ? undefined
    : { from: monthDay(from), until: monthDay(until) };
}

/** Rain over the days from the date on, as a share of what grass uses; without end where either is not known. */
function rainShareFrom(date: IsoDate, days: number, { rainMmOn, waterUseMmOn }: LocalClimate): number {
  let [rainMm, usedMm] = [0, 0];
  for (let day = 0; day < days; day++) {
    const on = addDays(date, day);
    rainMm += rainMmOn(on) ?? Number.POSITIVE_INFINITY;
    usedMm += waterUseMmOn(on) ?? 0;
  }
  return usedMm > 0 ? rainMm / usedMm : Number.POSITIVE_INFINITY;
}

const limitsOf = (closes: WindowRule['closes'], numberOf: NumberOf): readonly (number | undefined)[] =>
  closes === undefined ? [] : [numberOf(closes.belowC), numberOf(closes.daysLeft)];

/** Whether the soil stays as warm as that for so many days from the day of the year on. */
function hasGrowthAhead(
  soilCOn: LocalClimate['soilCOn'],
  { day, belowC, daysLeft }: { readonly day: number; readonly belowC: number; readonly daysLeft: number },
): boolean {
  const left = growingDaysLeft({
    soilCOn: (later) => soilCOn(day + later),
    thresholdC: belowC,
    limitDays: Math.max(1, Math.ceil(daysLeft)),
  });
  return left >= daysLeft;
}

/** Where `MM-DD` begins in a date. */
const MONTH_AT = 'YYYY-'.length;

const MONTHS_PER_YEAR = 12;
const MONTH_ENDS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** The same place in the season on the other half of the earth; the end of a month stays its end. */
export function halfYearOn(monthDay: string): string {
  const [month, day] = monthDay.split('-').map(Number) as [number, number];
  const shifted = ((month - 1 + MONTHS_PER_YEAR / 2) % MONTHS_PER_YEAR) + 1;
  const isMonthEnd = day >= (MONTH_ENDS[month - 1] as number);
  const moved = isMonthEnd
    ? (MONTH_ENDS[shifted - 1] as number)
    : Math.min(day, MONTH_ENDS[shifted - 1] as number);
  return `${String(shifted).padStart(2, '0')}-${String(moved).padStart(2, '0')}`;
}
