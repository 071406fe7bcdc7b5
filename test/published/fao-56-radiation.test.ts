import { describe, expect, it } from 'vitest';
import {
  netLongwaveMJPerM2,
  netRadiationMJPerM2,
  netShortwaveMJPerM2,
  soilHeatFluxBetweenMonthsMJPerM2,
} from '../../src/agronomy/radiation-net.js';
import {
  clearSkyRadiationMJPerM2,
  solarRadiationFromTemperaturesMJPerM2,
} from '../../src/agronomy/radiation-solar.js';
import {
  dayLengthH,
  evaporationEquivalentMm,
  extraterrestrialRadiationMJPerM2,
  inverseRelativeDistance,
  isLowWinterSun,
  solarDeclinationRad,
  sunsetHourAngleRad,
} from '../../src/agronomy/sun.js';

// Source: Allen, Pereira, Raes, Smith, 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56.
// Tolerance: half a step of the last printed digit (what toBeCloseTo allows), unless a line says otherwise.

describe('FAO-56, example 8, p. 80: 20° S on 3 September', () => {
  const place = { latitudeDeg: -20, dayOfYear: 246 };
  it('has an inverse relative distance of 0.985', () => {
    expect(inverseRelativeDistance(246)).toBeCloseTo(0.985, 3);
  });
  it('has a declination of 0.120 rad', () => {
    expect(solarDeclinationRad(246)).toBeCloseTo(0.12, 3);
  });
  it('has a sunset hour angle of 1.527 rad', () => {
    expect(sunsetHourAngleRad(place)).toBeCloseTo(1.527, 3);
  });
  it('has 32.2 MJ/m²/day above the air', () => {
    expect(extraterrestrialRadiationMJPerM2(place)).toBeCloseTo(32.2, 1);
  });
  it('could evaporate 13.1 mm/day with that', () => {
    expect(evaporationEquivalentMm(extraterrestrialRadiationMJPerM2(place))).toBeCloseTo(13.1, 1);
  });
});

describe('FAO-56, example 9, p. 83: the same day', () => {
  it('is 11.7 h long', () => {
    expect(dayLengthH({ latitudeDeg: -20, dayOfYear: 246 })).toBeCloseTo(11.7, 1);
  });
});

describe('FAO-56, examples 11 and 12, p. 87: 19.1 to 25.1 °C, vapour 2.1 kPa, Rs 14.5 of 18.8', () => {
  const rnlMJPerM2 = netLongwaveMJPerM2({
    tMinC: 19.1,
    tMaxC: 25.1,
    vapourPressureKPa: 2.1,
    rsMJPerM2: 14.5,
    rsoMJPerM2: 18.8,
  });
  it('radiates away 3.5 MJ/m²/day', () => {
    expect(rnlMJPerM2).toBeCloseTo(3.5, 1);
  });
  // 0.77 × 14.5 = 11.165; the paper cuts it to 11.1, so one step of the last digit instead of half.
  it('takes in 11.1 MJ/m²/day', () => {
    expect(Math.abs(netShortwaveMJPerM2(14.5) - 11.1)).toBeLessThan(0.1);
  });
  it('keeps 7.6 MJ/m²/day', () => {
    expect(netRadiationMJPerM2({ rnsMJPerM2: netShortwaveMJPerM2(14.5), rnlMJPerM2 })).toBeCloseTo(7.6, 1);
  });
});

describe('FAO-56, example 13, p. 90: March, April and May of 14.1, 16.1 and 18.8 °C', () => {
  const fluxMJPerM2 = soilHeatFluxBetweenMonthsMJPerM2({ previousC: 14.1, nextC: 18.8 });
  it('put 0.33 MJ/m²/day into the soil in April', () => {
    expect(fluxMJPerM2).toBeCloseTo(0.33, 2);
  });
  it('which is 0.13 mm/day of water', () => {
    expect(evaporationEquivalentMm(fluxMJPerM2)).toBeCloseTo(0.13, 2);
  });
});

describe('FAO-56, example 15, p. 98: Lyon, 45.72° N, July, 14.8 to 26.6 °C', () => {
  const raMJPerM2 = extraterrestrialRadiationMJPerM2({ latitudeDeg: 45.72, dayOfYear: 196 });
  it('has 40.6 MJ/m²/day above the air', () => {
    expect(raMJPerM2).toBeCloseTo(40.6, 1);
  });
  it('has 22.3 MJ/m²/day at the ground from its range of temperature, inland', () => {
    const rsoMJPerM2 = clearSkyRadiationMJPerM2({ raMJPerM2, altitudeM: 200 });
    const inputs = { tMinC: 14.8, tMaxC: 26.6, raMJPerM2, rsoMJPerM2, isNearCoast: false };
    expect(solarRadiationFromTemperaturesMJPerM2(inputs)).toBeCloseTo(22.3, 1);
  });
});

describe('FAO-56, example 16, p. 99', () => {
  it('keeps 13.9 of 16.9 MJ/m²/day when 3.0 are radiated away', () => {
    expect(netRadiationMJPerM2({ rnsMJPerM2: 16.9, rnlMJPerM2: 3.0 })).toBeCloseTo(13.9, 1);
  });
});

describe('FAO-56, annex 2, tables 2.6 and 2.7, middle of the month at 48° N', () => {
  it.each([
    [15, 10.1],
    [46, 15.7],
    [74, 23.3],
    [105, 32.2],
    [135, 38.8],
    [166, 41.8],
  ])('has on day %i a radiation of %d MJ/m²/day above the air', (dayOfYear, printed) => {
    expect(extraterrestrialRadiationMJPerM2({ latitudeDeg: 48, dayOfYear })).toBeCloseTo(printed, 1);
  });
  it.each([
    [15, 8.6],
    [46, 10.0],
    [74, 11.6],
    [105, 13.4],
    [135, 15.0],
  ])('has on day %i a length of %d h', (dayOfYear, printed) => {
    expect(dayLengthH({ latitudeDeg: 48, dayOfYear })).toBeCloseTo(printed, 1);
  });
});

describe('FAO-56, note to the radiation equations: doubtful beyond 55 degrees in winter', () => {
  it.each([
    [60.1, 15, true],
    [60.1, 196, false],
    [54.8, 15, false],
    [-56, 196, true],
    [-56, 15, false],
  ])('says so at %d degrees on day %i: %s', (latitudeDeg, dayOfYear, isDoubtful) => {
    expect(isLowWinterSun({ latitudeDeg, dayOfYear, limitDeg: 55 })).toBe(isDoubtful);
  });
});
