/** The days on which a step may be done: its yearly windows, moved by half a year in the south, and the weekend. */
import {
  addDays,
  type IsoDate,
  isInWindow,
  lastDateInWindow,
  nextDateInWindow,
  nextWeekend,
  type YearlyWindow,
} from '../base/dates.js';
import type { Step } from '../rules/schema.js';

export interface FitDays {
  readonly nextFitDay: (date: IsoDate) => IsoDate;
  readonly lastFitDay: (date: IsoDate) => IsoDate | undefined;
}

export interface Season {
  readonly southern: boolean;
  readonly warmSeasonGrass: boolean;
  readonly weekendsOnly: boolean;
  /** As if every window were always open: to see what the season costs. */
  readonly anyTimeOfYear?: boolean;
}

/** Windows and weekends of one step; a step without work is not bound to weekends. */
export function fitDaysOf(step: Step, season: Season): FitDays {
  const windows = windowsOf(step, season);
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

function windowsOf(step: Step, season: Season): readonly YearlyWindow[] | undefined {
  const { window } = step;
  if (window === undefined || season.anyTimeOfYear === true) return undefined;
  const windows =
    season.warmSeasonGrass && window.warmSeason !== undefined ? window.warmSeason : window.between;
  return season.southern
    ? windows.map((each) => ({ from: halfYearOn(each.from), until: halfYearOn(each.until) }))
    : windows;
}

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
