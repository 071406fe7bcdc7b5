import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  clearSkyRadiationMJPerM2,
  solarRadiationFromSunshineMJPerM2,
  solarRadiationFromTemperaturesMJPerM2,
} from '../../src/agronomy/radiation-solar.js';

describe('solar radiation at the ground', () => {
  // 0.25 of Ra under a closed sky, 0.75 with sun all day; half the sun gives 0.50.
  it.each([
    [0, 10],
    [6, 20],
    [12, 30],
  ])('with %i of 12 h of sun is %i of 40 MJ', (sunshineH, expected) => {
    expect(solarRadiationFromSunshineMJPerM2({ sunshineH, dayLengthH: 12, raMJPerM2: 40 })).toBeCloseTo(
      expected,
      12,
    );
  });

  it('is nothing in polar night', () => {
    expect(solarRadiationFromSunshineMJPerM2({ sunshineH: 0, dayLengthH: 0, raMJPerM2: 0 })).toBe(0);
  });

  // (0.75 + 0.00002 × 100) × 40 = 30.08; without the altitude it would be 30.
  it('under a clear sky counts the altitude', () => {
    expect(clearSkyRadiationMJPerM2({ raMJPerM2: 40, altitudeM: 100 })).toBeCloseTo(30.08, 12);
  });

  // √(25 − 9) = 4: inland 0.16 × 4 × 30 = 19.2, coast 0.19 × 4 × 30 = 22.8.
  it('by the range of temperature is higher on a coast', () => {
    const inputs = { tMinC: 9, tMaxC: 25, raMJPerM2: 30, rsoMJPerM2: 25 };
    expect(solarRadiationFromTemperaturesMJPerM2({ ...inputs, isNearCoast: false })).toBeCloseTo(19.2, 12);
    expect(solarRadiationFromTemperaturesMJPerM2({ ...inputs, isNearCoast: true })).toBeCloseTo(22.8, 12);
  });

  it('by the range of temperature never passes the clear-sky limit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 45, noNaN: true }),
        fc.boolean(),
        (tMinC, range, raMJPerM2, isNearCoast) => {
          const rsoMJPerM2 = clearSkyRadiationMJPerM2({ raMJPerM2, altitudeM: 0 });
          const inputs = { tMinC, tMaxC: tMinC + range, raMJPerM2, rsoMJPerM2, isNearCoast };
          expect(solarRadiationFromTemperaturesMJPerM2(inputs)).toBeLessThanOrEqual(rsoMJPerM2);
        },
      ),
    );
  });

  it('refuses more sunshine than there is day', () => {
    const inputs = { sunshineH: 13, dayLengthH: 12, raMJPerM2: 40 };
    expect(() => solarRadiationFromSunshineMJPerM2(inputs)).toThrow('cannot shine longer than the day');
  });
});
