import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dampingDepthM,
  soilTemperatureC,
  temperatureOnDayC,
  thermalDiffusivityM2PerS,
  waveAtDepth,
} from '../../src/agronomy/soil-temperature.js';

// An invented place: mean 10 °C, half range 8 °C, coldest on day 15, damping depth 2 m.
const surface = { meanC: 10, amplitudeC: 8, coldestDay: 15 };
const at = (depthM: number) => waveAtDepth(surface, { depthM, dampingDepthM: 2 });

describe('the yearly wave', () => {
  it('is 10 − 8 on the coldest day and 10 + 8 half a year later', () => {
    expect(temperatureOnDayC(surface, 15)).toBeCloseTo(2, 12);
    expect(temperatureOnDayC(surface, 15 + 182.5)).toBeCloseTo(18, 12);
  });

  // At one damping depth: 8 ÷ e = 2.943 °C, and 365 ÷ 2π = 58.1 days late.
  it('is 2.94 °C high and 58.1 days late at its damping depth', () => {
    expect(at(2).amplitudeC).toBeCloseTo(2.943, 3);
    expect(at(2).coldestDay - 15).toBeCloseTo(58.1, 1);
    expect(at(2).meanC).toBe(10);
  });

  // 10 cm: z ÷ d = 0.05; A = 8 e^−0.05 = 7.6098; angle 2π × 85 ÷ 365 − 0.05 − π ÷ 2 = −0.1576, its sine −0.1570;
  // 10 − 1.194 = 8.806. Delay 0.05 × 58.09 = 2.9 days.
  it('is 8.81 °C on day 100 at 10 cm, 2.9 days behind the surface', () => {
    expect(temperatureOnDayC(at(0.1), 100)).toBeCloseTo(8.806, 3);
    expect(at(0.1).coldestDay - 15).toBeCloseTo(2.9, 1);
  });

  it('repeats every 365 days, stays within its range, and has the mean of its surface', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.integer({ min: -800, max: 800 }),
        (depthM, day) => {
          const wave = at(depthM);
          const now = temperatureOnDayC(wave, day);
          expect(temperatureOnDayC(wave, day + 365)).toBeCloseTo(now, 9);
          expect(Math.abs(now - 10)).toBeLessThanOrEqual(wave.amplitudeC + 1e-12);
          expect((now + temperatureOnDayC(wave, day + 182.5)) / 2).toBeCloseTo(10, 9);
        },
      ),
    );
  });

  // The wave must solve the heat equation dT/dt = D d²T/dz²; both sides by small differences.
  it('obeys the equation of heat in soil', () => {
    const diffusivityM2PerS = 5e-7;
    const T = (depthM: number, dayOfYear: number) =>
      soilTemperatureC({ ...surface, depthM, diffusivityM2PerS, dayOfYear });
    for (const depthM of [0.1, 0.5, 1.5]) {
      for (const day of [30, 120, 250]) {
        const perSecond = (T(depthM, day + 0.5) - T(depthM, day - 0.5)) / 86_400;
        const step = 0.02;
        const curvature = (T(depthM + step, day) - 2 * T(depthM, day) + T(depthM - step, day)) / step ** 2;
        expect(Math.abs(perSecond - diffusivityM2PerS * curvature)).toBeLessThan(1e-9);
      }
    }
  });
});

describe('the damping depth', () => {
  // d = √(D × 365 × 86 400 ÷ π): for 2e-7 √(6.3072 ÷ π) = 1.417; the others scale with the root of D.
  it.each([
    [2e-7, 1.417, 0.074],
    [4e-7, 2.004, 0.105],
    [5e-7, 2.24, 0.117],
    [8e-7, 2.834, 0.148],
  ])(
    'for a diffusivity of %d m²/s is %d m in the year and %d m in the day',
    (diffusivityM2PerS, yearM, dayM) => {
      expect(dampingDepthM({ diffusivityM2PerS, periodDays: 365 })).toBeCloseTo(yearM, 3);
      expect(dampingDepthM({ diffusivityM2PerS, periodDays: 1 })).toBeCloseTo(dayM, 3);
    },
  );

  it('is √365 times as large for the year as for the day', () => {
    const diffusivityM2PerS = 6e-7;
    const ratio =
      dampingDepthM({ diffusivityM2PerS, periodDays: 365 }) /
      dampingDepthM({ diffusivityM2PerS, periodDays: 1 });
    expect(ratio).toBeCloseTo(Math.sqrt(365), 9);
  });

  // e^−3 = 0.0498, so 5 % of the swing is left at ln 20 = 2.996 damping depths: 2.996 × 1.417 = 4.245 m.
  it('leaves 5 % of the swing at 4.245 m for 2e-7 m²/s', () => {
    const yearlyM = dampingDepthM({ diffusivityM2PerS: 2e-7, periodDays: 365 });
    expect(waveAtDepth(surface, { depthM: 4.245, dampingDepthM: yearlyM }).amplitudeC / 8).toBeCloseTo(
      0.05,
      4,
    );
  });

  it('comes from conductivity, density and heat: 1.2 ÷ (1500 × 1600) is 5e-7', () => {
    const soil = { conductivityWPerMK: 1.2, densityKgPerM3: 1500, heatJPerKgK: 1600 };
    expect(thermalDiffusivityM2PerS(soil)).toBeCloseTo(5e-7, 15);
    expect(() => thermalDiffusivityM2PerS({ ...soil, heatJPerKgK: 0 })).toThrow('heatJPerKgK');
  });
});

describe('soil temperature', () => {
  it('refuses days outside the year, negative depths and negative swings', () => {
    const soil = { ...surface, depthM: 0.1, diffusivityM2PerS: 5e-7, dayOfYear: 100 };
    expect(() => soilTemperatureC({ ...soil, dayOfYear: 367 })).toThrow('dayOfYear');
    expect(() => soilTemperatureC({ ...soil, coldestDay: 0 })).toThrow('coldestDay');
    expect(() => soilTemperatureC({ ...soil, depthM: -0.1 })).toThrow('depthM');
    expect(() => soilTemperatureC({ ...soil, amplitudeC: -1 })).toThrow('amplitudeC');
    expect(() => soilTemperatureC({ ...soil, diffusivityM2PerS: 0 })).toThrow('diffusivityM2PerS');
  });
});
