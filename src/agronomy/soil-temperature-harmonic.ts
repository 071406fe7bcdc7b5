/** The yearly wave that fits twelve monthly mean temperatures best. */
import { refuse, requireFinite } from '../base/refuse.js';
import { temperatureOnDayC, type YearlyWave } from './soil-temperature.js';

export interface FittedWave extends YearlyWave {
  /** Largest miss of a month, °C. */
  readonly worstMissC: number;
}

const DAYS_PER_YEAR = 365;
const MONTHS = 12;

/**
 * First harmonic of twelve monthly means, each taken at the middle of its twelfth of the year.
 *
 *   mean = Σ T ÷ 12; a = Σ T cos x ÷ 6; b = Σ T sin x ÷ 6; x = 2π (month − 0.5) ÷ 12
 *   amplitude = √(a² + b²); the coldest day is where a cos x + b sin x is least
 *
 * @param monthlyMeansC January to December, °C
 * @returns the wave, its coldest day from 0 up to 365, and the largest miss of a month
 * @throws {RangeError} when there are not twelve finite numbers
 */
export function fitYearlyWave(monthlyMeansC: readonly number[]): FittedWave {
  if (monthlyMeansC.length !== MONTHS) {
    refuse('monthlyMeansC', 'must have twelve entries, January to December', monthlyMeansC.length);
  }
  for (const mean of monthlyMeansC) requireFinite('monthlyMeansC', mean);
  const average = (weight: (angle: number) => number) =>
    monthlyMeansC.reduce((total, mean, month) => total + mean * weight(middleAngle(month)), 0) / MONTHS;
  const meanC = average(() => 1);
  const cosine = 2 * average(Math.cos);
  const sine = 2 * average(Math.sin);
  const warmestAngle = Math.atan2(sine, cosine);
  const coldestTurn = (warmestAngle / (2 * Math.PI) + 1.5) % 1;
  const wave = { meanC, amplitudeC: Math.hypot(cosine, sine), coldestDay: coldestTurn * DAYS_PER_YEAR };
  const misses = monthlyMeansC.map((mean, month) =>
    Math.abs(mean - temperatureOnDayC(wave, (middleAngle(month) / (2 * Math.PI)) * DAYS_PER_YEAR)),
  );
  return { ...wave, worstMissC: Math.max(...misses) };
}

/** Angle of the middle of a month, 0 for January, on a year of 2π. */
function middleAngle(month: number): number {
  return (2 * Math.PI * (month + 0.5)) / MONTHS;
}
