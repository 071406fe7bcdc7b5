import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanSaturationVapourPressureKPa, saturationVapourPressureKPa } from '../../src/agronomy/vapour.js';
import {
  vapourPressureFromDewPointKPa,
  vapourPressureFromHumiditiesKPa,
  vapourPressureFromMaxHumidityKPa,
  vapourPressureFromMeanHumidityKPa,
  vapourPressureFromWetBulbKPa,
} from '../../src/agronomy/vapour-actual.js';

const temperatures = fc
  .tuple(fc.double({ min: -20, max: 35, noNaN: true }), fc.double({ min: 0, max: 15, noNaN: true }))
  .map(([tMinC, range]) => ({ tMinC, tMaxC: tMinC + range }));
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('vapour in the air', () => {
  it('is all that the air can hold when the humidity is 1, by every route', () => {
    fc.assert(
      fc.property(temperatures, (day) => {
        const full = meanSaturationVapourPressureKPa(day);
        expect(vapourPressureFromHumiditiesKPa({ ...day, rhMaxFraction: 1, rhMinFraction: 1 })).toBeCloseTo(
          full,
          12,
        );
        expect(vapourPressureFromMeanHumidityKPa({ ...day, rhMeanFraction: 1 })).toBeCloseTo(full, 12);
        expect(vapourPressureFromMaxHumidityKPa({ tMinC: day.tMinC, rhMaxFraction: 1 })).toBe(
          saturationVapourPressureKPa(day.tMinC),
        );
        expect(vapourPressureFromDewPointKPa(day.tMinC)).toBe(saturationVapourPressureKPa(day.tMinC));
      }),
    );
  });

  it('is never more than the air can hold', () => {
    fc.assert(
      fc.property(temperatures, share, share, (day, one, other) => {
        const humidities = { rhMaxFraction: Math.max(one, other), rhMinFraction: Math.min(one, other) };
        const held = vapourPressureFromHumiditiesKPa({ ...day, ...humidities });
        expect(held).toBeGreaterThanOrEqual(0);
        expect(held).toBeLessThanOrEqual(meanSaturationVapourPressureKPa(day) + 1e-12);
      }),
    );
  });

  it('is saturated when both bulbs agree, and falls as they part', () => {
    const wet = (dryBulbC: number) =>
      vapourPressureFromWetBulbKPa({ wetBulbC: 15, dryBulbC, pressureKPa: 101.3, coefficientPerC: 0.000662 });
    expect(wet(15)).toBe(saturationVapourPressureKPa(15));
    expect(wet(20)).toBeLessThan(wet(18));
  });

  it('refuses a percentage where a share is wanted, and humidities or bulbs the wrong way round', () => {
    const day = { tMinC: 10, tMaxC: 20 };
    expect(() => vapourPressureFromHumiditiesKPa({ ...day, rhMaxFraction: 82, rhMinFraction: 0.5 })).toThrow(
      '0.82',
    );
    expect(() => vapourPressureFromHumiditiesKPa({ ...day, rhMaxFraction: 0.4, rhMinFraction: 0.5 })).toThrow(
      'rhMaxFraction',
    );
    expect(() => vapourPressureFromMeanHumidityKPa({ ...day, rhMeanFraction: -0.1 })).toThrow(
      'rhMeanFraction',
    );
    expect(() =>
      vapourPressureFromWetBulbKPa({ wetBulbC: 16, dryBulbC: 15, pressureKPa: 101, coefficientPerC: 0.0007 }),
    ).toThrow('never warmer');
  });
});
