import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { temperatureOnDayC } from '../../src/agronomy/soil-temperature.js';
import { fitYearlyWave } from '../../src/agronomy/soil-temperature-harmonic.js';

/** Sum of squared misses of a wave, by the definition of a best fit. */
function squaredMiss(
  wave: { meanC: number; amplitudeC: number; coldestDay: number },
  months: readonly number[],
) {
  return months.reduce(
    (total, mean, month) => total + (mean - temperatureOnDayC(wave, middle(month))) ** 2,
    0,
  );
}
const middle = (month: number) => ((month + 0.5) * 365) / 12;

// Middle of the mean minimum and maximum of each month at Oxford, 1991 to 2020, from rules/climate.
const oxfordC = [5.2, 5.45, 7.45, 9.85, 12.95, 15.9, 18.05, 17.75, 15.05, 11.55, 7.9, 5.4];

describe('the wave fitted to twelve months', () => {
  it('finds a pure wave again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 25, noNaN: true }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 364, noNaN: true }),
        (meanC, amplitudeC, coldestDay) => {
          const wave = { meanC, amplitudeC, coldestDay };
          const months = Array.from({ length: 12 }, (_, month) => temperatureOnDayC(wave, middle(month)));
          const fitted = fitYearlyWave(months);
          expect(fitted.meanC).toBeCloseTo(meanC, 9);
          expect(fitted.amplitudeC).toBeCloseTo(amplitudeC, 9);
          expect(fitted.coldestDay).toBeCloseTo(coldestDay, 6);
          expect(fitted.worstMissC).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('cannot be bettered by moving it a little in any way', () => {
    const fitted = fitYearlyWave(oxfordC);
    const best = squaredMiss(fitted, oxfordC);
    for (const step of [-0.1, 0.1]) {
      expect(squaredMiss({ ...fitted, meanC: fitted.meanC + step }, oxfordC)).toBeGreaterThan(best);
      expect(squaredMiss({ ...fitted, amplitudeC: fitted.amplitudeC + step }, oxfordC)).toBeGreaterThan(best);
      expect(squaredMiss({ ...fitted, coldestDay: fitted.coldestDay + 10 * step }, oxfordC)).toBeGreaterThan(
        best,
      );
    }
  });

  it('of British months is coldest in the second half of January and right to 1 °C', () => {
    const fitted = fitYearlyWave(oxfordC);
    expect(fitted.coldestDay).toBeGreaterThan(15);
    expect(fitted.coldestDay).toBeLessThan(31);
    expect(fitted.worstMissC).toBeLessThan(1);
  });

  it('of southern months is coldest half a year later', () => {
    const southern = [...oxfordC.slice(6), ...oxfordC.slice(0, 6)];
    const shift = fitYearlyWave(southern).coldestDay - fitYearlyWave(oxfordC).coldestDay;
    expect(shift).toBeCloseTo(182.5, 6);
  });

  it('of months all alike is flat', () => {
    const fitted = fitYearlyWave(Array.from({ length: 12 }, () => 10));
    expect(fitted.amplitudeC).toBeCloseTo(0, 9);
    expect(Number.isFinite(fitted.coldestDay)).toBe(true);
  });

  it('is refused for eleven months or a gap', () => {
    expect(() => fitYearlyWave(oxfordC.slice(1))).toThrow('twelve entries');
    expect(() => fitYearlyWave([...oxfordC.slice(1), Number.NaN])).toThrow('monthlyMeansC');
  });
});
