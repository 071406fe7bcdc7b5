import { describe, expect, it } from 'vitest';
import {
  extraterrestrialRadiationMJPerM2,
  inverseRelativeDistance,
  solarDeclinationRad,
  sunsetHourAngleRad,
} from '../../src/agronomy/sun.js';
import { atmosphericPressureKPa } from '../../src/agronomy/vapour.js';

// Source: RefET, open reference library, test data conftest.py: 1 July 2015 (day 182), 39.4575° N, 1208.5 m.
// It uses the ASCE solar constant 4.92 MJ/m²/h, which is 0.0820 × 60, so all digits agree.
describe('the day of the RefET test data', () => {
  const place = { latitudeDeg: 39.4575, dayOfYear: 182 };
  it.each([
    ['inverse relative distance', inverseRelativeDistance(182), 0.96700122, 7],
    ['declination, rad', solarDeclinationRad(182), 0.40295172, 7],
    ['radiation above the air, MJ/m²/day', extraterrestrialRadiationMJPerM2(place), 41.64825, 4],
    ['pressure, kPa', atmosphericPressureKPa(1208.5), 87.80711, 4],
  ])('has the printed %s', (_quantity, value, printed, digits) => {
    expect(value).toBeCloseTo(printed, digits);
  });
});

// Source: RefET, tests of the sunset hour angle at the clamp.
describe('the sunset hour angle on day 182', () => {
  it('is half a turn at 70° N, where the sun stays up', () => {
    expect(sunsetHourAngleRad({ latitudeDeg: 70, dayOfYear: 182 })).toBe(Math.PI);
  });
  it('is nothing at 70° S, where it stays down', () => {
    expect(sunsetHourAngleRad({ latitudeDeg: -70, dayOfYear: 182 })).toBe(0);
  });
});
