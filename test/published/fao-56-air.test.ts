import { describe, expect, it } from 'vitest';
import {
  atmosphericPressureKPa,
  meanSaturationVapourPressureKPa,
  psychrometricConstantKPaPerC,
  saturationVapourPressureKPa,
} from '../../src/agronomy/vapour.js';
import {
  vapourPressureFromHumiditiesKPa,
  vapourPressureFromMeanHumidityKPa,
  vapourPressureFromWetBulbKPa,
} from '../../src/agronomy/vapour-actual.js';

// Source: Allen, Pereira, Raes, Smith, 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56.
// Tolerance: half a step of the last printed digit (what toBeCloseTo allows), unless a line says otherwise.

describe('FAO-56, example 2, p. 63: air at 1800 m', () => {
  it('has a pressure of 81.8 kPa', () => {
    expect(atmosphericPressureKPa(1800)).toBeCloseTo(81.8, 1);
  });
  it('has a psychrometric constant of 0.054 kPa/°C', () => {
    expect(psychrometricConstantKPaPerC(atmosphericPressureKPa(1800))).toBeCloseTo(0.054, 3);
  });
});

describe('FAO-56, example 3, p. 69: saturation vapour pressure of a day of 15.0 to 24.5 °C', () => {
  it.each([
    [24.5, 3.075, 3],
    [15, 1.705, 3],
    [19.75, 2.3, 2],
  ])('is at %d °C %d kPa', (temperatureC, printedKPa, digits) => {
    expect(saturationVapourPressureKPa(temperatureC)).toBeCloseTo(printedKPa, digits);
  });
  it('is 2.39 kPa as the mean of both ends, not the 2.30 of the mean temperature', () => {
    expect(meanSaturationVapourPressureKPa({ tMinC: 15, tMaxC: 24.5 })).toBeCloseTo(2.39, 2);
  });
});

describe('FAO-56, example 4, p. 70: wet bulb 19.5, dry bulb 25.6 °C at 1200 m', () => {
  it('has a pressure of 87.9 kPa', () => {
    expect(atmosphericPressureKPa(1200)).toBeCloseTo(87.9, 1);
  });
  // 0.000662 is the coefficient of a ventilated instrument, equation 16.
  it('has an actual vapour pressure of 1.91 kPa', () => {
    const pressureKPa = atmosphericPressureKPa(1200);
    expect(
      vapourPressureFromWetBulbKPa({
        wetBulbC: 19.5,
        dryBulbC: 25.6,
        pressureKPa,
        coefficientPerC: 0.000662,
      }),
    ).toBeCloseTo(1.91, 2);
  });
});

describe('FAO-56, example 5, p. 72: 18 to 25 °C, humidity 54 to 82 %', () => {
  const day = { tMinC: 18, tMaxC: 25 };
  it('has 1.70 kPa of vapour from both humidities', () => {
    expect(vapourPressureFromHumiditiesKPa({ ...day, rhMaxFraction: 0.82, rhMinFraction: 0.54 })).toBeCloseTo(
      1.7,
      2,
    );
  });
  it('has 1.78 kPa of vapour from the mean humidity', () => {
    expect(vapourPressureFromMeanHumidityKPa({ ...day, rhMeanFraction: 0.68 })).toBeCloseTo(1.78, 2);
  });
});
