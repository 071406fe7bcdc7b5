import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  hargreavesMm,
  type PenmanMonteithInputs,
  penmanMonteithMm,
  windAt2MMPerS,
} from '../../src/agronomy/reference-evapotranspiration.js';

const day: PenmanMonteithInputs = {
  tMinC: 8,
  tMaxC: 18,
  vapourPressureKPa: 1,
  windAt2MMPerS: 2,
  netRadiationMJPerM2: 10,
  soilHeatFluxMJPerM2: 0,
  altitudeM: 50,
};

describe('Penman-Monteith', () => {
  it('is never negative and always a number', () => {
    const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        range(-40, 40),
        range(0, 25),
        range(0, 4),
        range(0, 20),
        range(-10, 30),
        range(0, 3000),
        (tMinC, swing, vapourPressureKPa, windAt2MMPerS, netRadiation, altitudeM) => {
          const et0Mm = penmanMonteithMm({
            tMinC,
            tMaxC: tMinC + swing,
            vapourPressureKPa,
            windAt2MMPerS,
            netRadiationMJPerM2: netRadiation,
            soilHeatFluxMJPerM2: 0,
            altitudeM,
          });
          expect(et0Mm).toBeGreaterThanOrEqual(0);
          expect(et0Mm).toBeLessThan(60);
        },
      ),
      { numRuns: 1_000 },
    );
  });

  // The radiation stands alone in the numerator, so equal steps of it give equal steps of water.
  it('rises in a straight line with net radiation, and soil heat takes the same away', () => {
    const at = (netRadiationMJPerM2: number, soilHeatFluxMJPerM2 = 0) =>
      penmanMonteithMm({ ...day, netRadiationMJPerM2, soilHeatFluxMJPerM2 });
    expect(at(14) - at(12)).toBeCloseTo(at(12) - at(10), 12);
    expect(at(14, 2)).toBeCloseTo(at(12), 12);
  });

  it('is higher in drier air and, in dry air, in more wind', () => {
    expect(penmanMonteithMm({ ...day, vapourPressureKPa: 0.6 })).toBeGreaterThan(penmanMonteithMm(day));
    const dry = { ...day, vapourPressureKPa: 0.4 };
    expect(penmanMonteithMm({ ...dry, windAt2MMPerS: 4 })).toBeGreaterThan(penmanMonteithMm(dry));
  });

  it('is nothing on a night of dew', () => {
    expect(penmanMonteithMm({ ...day, vapourPressureKPa: 1.5, netRadiationMJPerM2: -5 })).toBe(0);
  });
});

describe('Hargreaves', () => {
  // 0.0023 × (15 + 17.8) × √(20 − 10) × 0.408 × 40 = 0.07544 × 3.16228 × 16.32 = 3.8933.
  it('gives 3.89 mm for 10 to 20 °C and 40 MJ, worked out by hand', () => {
    expect(hargreavesMm({ tMinC: 10, tMaxC: 20, raMJPerM2: 40 })).toBeCloseTo(3.8933, 3);
  });

  it('rises in a straight line with the sun, and is never negative or not a number', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 24, noNaN: true }),
        fc.double({ min: 0, max: 24, noNaN: true }),
        (tMinC, swing, raMJPerM2) => {
          const once = hargreavesMm({ tMinC, tMaxC: tMinC + swing, raMJPerM2 });
          const twice = hargreavesMm({ tMinC, tMaxC: tMinC + swing, raMJPerM2: 2 * raMJPerM2 });
          expect(once).toBeGreaterThanOrEqual(0);
          expect(twice).toBeCloseTo(2 * once, 9);
        },
      ),
    );
  });

  it('is nothing when the mean is below -17.8 °C', () => {
    expect(hargreavesMm({ tMinC: -30, tMaxC: -10, raMJPerM2: 20 })).toBe(0);
  });

  it('refuses a maximum below the minimum', () => {
    expect(() => hargreavesMm({ tMinC: 20, tMaxC: 10, raMJPerM2: 20 })).toThrow('Are the two swapped?');
  });
});

describe('wind brought to 2 m', () => {
  // ln(67.8 × 2 − 5.42) = 4.8689, so the factor at 2 m is 1.0002: the constants of the paper are rounded.
  it('stays as it was when measured at 2 m, to 0.03 %', () => {
    expect(Math.abs(windAt2MMPerS({ windMPerS: 3, heightM: 2 }) / 3 - 1)).toBeLessThan(0.0003);
  });

  it('is less than at 10 m', () => {
    expect(windAt2MMPerS({ windMPerS: 3, heightM: 10 })).toBeLessThan(3);
  });

  it('refuses a height in the grass', () => {
    expect(() => windAt2MMPerS({ windMPerS: 3, heightM: 0.1 })).toThrow('grass itself');
    expect(() => windAt2MMPerS({ windMPerS: -1, heightM: 2 })).toThrow('windMPerS');
  });
});
