import { describe, expect, it } from 'vitest';
import { degreeDays, degreeDaysOfDay } from '../../src/agronomy/degree-days.js';
import { celsiusFromFahrenheit } from '../../src/base/units.js';

// Source: growing degree days as Michigan State and Purdue Universities word them: the mean of the day's
// highest and lowest temperature less a base, and nothing when the mean is below the base. Turf models use
// bases of 22, 32 and 50 °F, printed as -5.6, 0 and 10 °C.
describe('growing degree days of turf models', () => {
  it.each([
    [22, -5.6],
    [32, 0],
    [50, 10],
  ])('have a base of %i °F, which is %d °C', (baseF, baseC) => {
    expect(celsiusFromFahrenheit(baseF)).toBeCloseTo(baseC, 1);
  });

  it.each([
    [-5.6, 12.6],
    [0, 7],
    [10, 0],
  ])('on a day of 4 to 10 °C over a base of %d °C are %d °C day', (baseC, expected) => {
    expect(degreeDaysOfDay({ tMinC: 4, tMaxC: 10, baseC })).toBeCloseTo(expected, 9);
  });

  it('take nothing back on a day whose mean is below the base', () => {
    expect(degreeDaysOfDay({ tMinC: 1, tMaxC: 9, baseC: 10 })).toBe(0);
    expect(degreeDays({ tMinC: [8, 1, 8], tMaxC: [16, 9, 16], baseC: 10 })).toBe(4);
  });
});
