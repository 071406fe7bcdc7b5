import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  atmosphericPressureKPa,
  meanSaturationVapourPressureKPa,
  psychrometricConstantKPaPerC,
  saturationSlopeKPaPerC,
  saturationVapourPressureKPa,
} from '../../src/agronomy/vapour.js';

const air = fc.double({ min: -40, max: 50, noNaN: true });

describe('air', () => {
  it('has 101.3 kPa at the sea, and less the higher it is', () => {
    expect(atmosphericPressureKPa(0)).toBeCloseTo(101.3, 9);
    fc.assert(
      fc.property(fc.double({ min: -400, max: 8_000, noNaN: true }), (altitudeM) => {
        expect(atmosphericPressureKPa(altitudeM + 100)).toBeLessThan(atmosphericPressureKPa(altitudeM));
      }),
    );
  });

  // The exact slope is 17.27 × 237.3 = 4098.17 times e0 ÷ (T + 237.3)²; the paper prints 4098, so 0.01 %.
  it('has a slope of saturation that is the change over a small step of temperature', () => {
    fc.assert(
      fc.property(air, (temperatureC) => {
        const step = 1e-3;
        const change =
          (saturationVapourPressureKPa(temperatureC + step) -
            saturationVapourPressureKPa(temperatureC - step)) /
          (2 * step);
        expect(Math.abs(saturationSlopeKPaPerC(temperatureC) / change - 1)).toBeLessThan(1e-4);
      }),
    );
  });

  it('could hold more as the mean of both ends than at the mean temperature', () => {
    fc.assert(
      fc.property(air, fc.double({ min: 1, max: 15, noNaN: true }), (tMinC, range) => {
        const ends = meanSaturationVapourPressureKPa({ tMinC, tMaxC: tMinC + range });
        expect(ends).toBeGreaterThan(saturationVapourPressureKPa(tMinC + range / 2));
      }),
    );
  });

  it('refuses a maximum below the minimum, and temperatures and altitudes of no weather on earth', () => {
    expect(() => meanSaturationVapourPressureKPa({ tMinC: 20, tMaxC: 10 })).toThrow('Are the two swapped?');
    expect(() => saturationVapourPressureKPa(-237.3)).toThrow(RangeError);
    expect(() => saturationVapourPressureKPa(Number.NaN)).toThrow(RangeError);
    expect(() => atmosphericPressureKPa(50_000)).toThrow('altitudeM');
    expect(() => psychrometricConstantKPaPerC(-1)).toThrow('pressureKPa');
  });
});
