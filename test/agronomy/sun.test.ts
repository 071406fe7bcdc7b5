import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayLengthH,
  evaporationEquivalentMm,
  extraterrestrialRadiationMJPerM2,
  inverseRelativeDistance,
  isLowWinterSun,
  solarDeclinationRad,
} from '../../src/agronomy/sun.js';

const latitude = fc.double({ min: -90, max: 90, noNaN: true });
const day = fc.integer({ min: 1, max: 366 });

describe('the sun', () => {
  it('gives a real day and a real amount of radiation everywhere, poles and polar nights included', () => {
    fc.assert(
      fc.property(latitude, day, (latitudeDeg, dayOfYear) => {
        const hours = dayLengthH({ latitudeDeg, dayOfYear });
        const radiation = extraterrestrialRadiationMJPerM2({ latitudeDeg, dayOfYear });
        expect(hours).toBeGreaterThanOrEqual(0);
        expect(hours).toBeLessThanOrEqual(24);
        expect(radiation).toBeGreaterThanOrEqual(0);
        expect(radiation).toBeLessThan(50);
      }),
      { numRuns: 2_000 },
    );
  });

  // Polar day and night from the tilt of the axis: beyond 67° the sun stays up or down at the solstices.
  it.each([
    [80, 172, 24],
    [80, 355, 0],
    [-80, 172, 0],
    [-80, 355, 24],
    [90, 172, 24],
    [-90, 172, 0],
  ])('at %i degrees on day %i shines for %i h', (latitudeDeg, dayOfYear, hours) => {
    expect(dayLengthH({ latitudeDeg, dayOfYear })).toBeCloseTo(hours, 9);
  });

  it.each([
    [68, 1],
    [80, 55],
    [90, 355],
  ])('brings nothing at %i degrees north on day %i', (latitudeDeg, dayOfYear) => {
    expect(extraterrestrialRadiationMJPerM2({ latitudeDeg, dayOfYear })).toBe(0);
  });

  it('shines for twelve hours at the equator on every day', () => {
    fc.assert(
      fc.property(day, (dayOfYear) => {
        expect(dayLengthH({ latitudeDeg: 0, dayOfYear })).toBeCloseTo(12, 9);
      }),
    );
  });

  // Declination half a year apart is the exact opposite in this equation, so only the distance to the sun,
  // at most 3.3 % either way, tells the hemispheres apart.
  it('treats the south like the north half a year later, but for the distance to the sun', () => {
    fc.assert(
      fc.property(latitude, fc.integer({ min: 1, max: 183 }), (latitudeDeg, dayOfYear) => {
        const later = dayOfYear + 182.5;
        const north = extraterrestrialRadiationMJPerM2({ latitudeDeg, dayOfYear });
        const south = extraterrestrialRadiationMJPerM2({ latitudeDeg: -latitudeDeg, dayOfYear: later });
        const distances = inverseRelativeDistance(dayOfYear) / inverseRelativeDistance(later);
        expect(Math.abs(north - south * distances)).toBeLessThan(1e-9);
        expect(Math.abs(north - south)).toBeLessThanOrEqual(0.0683 * Math.max(north, south) + 1e-9);
      }),
    );
  });

  // The equation is the integral of the sine of the sun's height over the hours of day; summing that
  // minute by minute is a second way to the same number.
  it('brings what its height above the horizon adds up to, minute by minute', () => {
    fc.assert(
      fc.property(latitude, day, (latitudeDeg, dayOfYear) => {
        const phi = (latitudeDeg * Math.PI) / 180;
        const declination = solarDeclinationRad(dayOfYear);
        let summed = 0;
        for (let minute = 0; minute < 1440; minute++) {
          const hourAngle = (2 * Math.PI * (minute + 0.5)) / 1440 - Math.PI;
          const sineOfHeight =
            Math.sin(phi) * Math.sin(declination) +
            Math.cos(phi) * Math.cos(declination) * Math.cos(hourAngle);
          summed += 0.082 * inverseRelativeDistance(dayOfYear) * Math.max(0, sineOfHeight);
        }
        const closed = extraterrestrialRadiationMJPerM2({ latitudeDeg, dayOfYear });
        expect(Math.abs(closed - summed)).toBeLessThan(0.01);
      }),
      { numRuns: 60 },
    );
  });

  it('could evaporate 0.408 mm with each MJ/m²', () => {
    expect(evaporationEquivalentMm(10)).toBeCloseTo(4.08, 12);
  });

  it('is never called low inside the limit, whatever the season', () => {
    fc.assert(
      fc.property(fc.double({ min: -55, max: 55, noNaN: true }), day, (latitudeDeg, dayOfYear) => {
        expect(isLowWinterSun({ latitudeDeg, dayOfYear, limitDeg: 55 })).toBe(false);
      }),
    );
  });

  it('refuses places and days that do not exist', () => {
    expect(() => dayLengthH({ latitudeDeg: 91, dayOfYear: 1 })).toThrow('latitudeDeg must be from -90 to 90');
    expect(() => dayLengthH({ latitudeDeg: Number.NaN, dayOfYear: 1 })).toThrow(RangeError);
    expect(() => dayLengthH({ latitudeDeg: 50, dayOfYear: 0 })).toThrow('dayOfYear must be from 1 to 366');
    expect(() => extraterrestrialRadiationMJPerM2({ latitudeDeg: 50, dayOfYear: 367 })).toThrow(RangeError);
    expect(() => isLowWinterSun({ latitudeDeg: 50, dayOfYear: 1, limitDeg: -1 })).toThrow('limitDeg');
  });
});
