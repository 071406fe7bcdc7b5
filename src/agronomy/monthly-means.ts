/** Daily weather reduced to twelve monthly means. */
import { daysInMonth } from '../base/dates.js';

export interface MonthlyMeans {
  /** Twelve values each, January to December. */
  readonly tMinC: readonly number[];
  readonly tMaxC: readonly number[];
  /** False where only mean temperatures are known: then both of the above are the mean. */
  readonly hasRange: boolean;
  /** mm a month. */
  readonly rainMm?: readonly number[] | undefined;
  /** Days in the month with a minimum below the frost temperature. */
  readonly airFrostDays?: readonly number[] | undefined;
}

/** One day; what was not measured is missing. */
export interface WeatherDay {
  /** 1 to 12. */
  readonly month: number;
  readonly tMinC?: number | undefined;
  readonly tMaxC?: number | undefined;
  readonly tMeanC?: number | undefined;
  readonly rainMm?: number | undefined;
}

export interface ThinMonth {
  readonly month: number;
  readonly days: number;
}

/**
 * Monthly means of daily weather: each calendar month over all years.
 *
 * @param days at least one
 * @param leastDays days with a temperature that a month must have
 * @param frostC a minimum below it is an air frost, C
 * @returns the means, or the months that have too few days
 */
export function monthlyMeans(
  days: readonly WeatherDay[],
  { leastDays, frostC }: { readonly leastDays: number; readonly frostC: number },
): { readonly means: MonthlyMeans } | { readonly thin: readonly ThinMonth[] } {
  const hasRange = days.some(({ tMinC, tMaxC }) => tMinC !== undefined && tMaxC !== undefined);
  const warmth = days.flatMap(({ month, tMinC, tMaxC, tMeanC }) => {
    if (!hasRange) return tMeanC === undefined ? [] : [{ month, least: tMeanC, most: tMeanC }];
    return tMinC === undefined || tMaxC === undefined ? [] : [{ month, least: tMinC, most: tMaxC }];
  });
  const thin = MONTHS.map((month) => ({ month, days: warmth.filter((day) => day.month === month).length }));
  const tooThin = thin.filter((month) => month.days < leastDays);
  if (tooThin.length > 0) return { thin: tooThin };
  const inMonth = (values: readonly { month: number; value: number }[], month: number): number =>
    mean(values.filter((each) => each.month === month).map(({ value }) => value));
  const rain = days.flatMap(({ month, rainMm }) => (rainMm === undefined ? [] : [{ month, value: rainMm }]));
  const hasRain = MONTHS.every((month) => rain.filter((day) => day.month === month).length >= leastDays);
  const frost = warmth.map(({ month, least }) => ({ month, value: least < frostC ? 1 : 0 }));
  return {
    means: {
      hasRange,
      tMinC: MONTHS.map((month) =>
        mean(warmth.filter((day) => day.month === month).map(({ least }) => least)),
      ),
      tMaxC: MONTHS.map((month) => mean(warmth.filter((day) => day.month === month).map(({ most }) => most))),
      rainMm: hasRain ? MONTHS.map((month) => inMonth(rain, month) * lengthOf(month)) : undefined,
      airFrostDays: hasRange ? MONTHS.map((month) => inMonth(frost, month) * lengthOf(month)) : undefined,
    },
  };
}

/** Whether the warm half of the year is that of the south: October to March. */
export const isSouthernYear = (means: Pick<MonthlyMeans, 'tMinC' | 'tMaxC'>): boolean =>
  halfYearDifferenceC(means) > 0;

/**
 * How much warmer October to March is than April to September.
 *
 * @returns C, the mean of the half-year's monthly means less that of the other; below 0 in the north
 */
export function halfYearDifferenceC({ tMinC, tMaxC }: Pick<MonthlyMeans, 'tMinC' | 'tMaxC'>): number {
  const warmthC = (month: number): number =>
    ((tMinC[month - 1] as number) + (tMaxC[month - 1] as number)) / 2;
  const isSummerHalf = (month: number): boolean =>
    month > MONTHS.length / 4 && month <= (MONTHS.length * 3) / 4;
  const half = (inSummer: boolean): number =>
    mean(MONTHS.filter((month) => isSummerHalf(month) === inSummer).map(warmthC));
  return half(false) - half(true);
}

const MONTHS = Array.from({ length: 12 }, (_, index) => index + 1);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
/** In a year that is no leap year. */
const COMMON_YEAR = 2027;
const lengthOf = (month: number): number => daysInMonth(COMMON_YEAR, month);
