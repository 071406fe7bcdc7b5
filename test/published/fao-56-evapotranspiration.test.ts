import { describe, expect, it } from 'vitest';
import {
  netLongwaveMJPerM2,
  netRadiationMJPerM2,
  netShortwaveMJPerM2,
  soilHeatFluxSincePreviousMonthMJPerM2,
} from '../../src/agronomy/radiation-net.js';
import {
  clearSkyRadiationMJPerM2,
  solarRadiationFromSunshineMJPerM2,
} from '../../src/agronomy/radiation-solar.js';
import {
  hargreavesMm,
  penmanMonteithMm,
  windAt2MMPerS,
} from '../../src/agronomy/reference-evapotranspiration.js';
import {
  penmanMonteithWithFallbacks,
  referenceEvapotranspiration,
} from '../../src/agronomy/reference-evapotranspiration-daily.js';
import { dayLengthH, extraterrestrialRadiationMJPerM2 } from '../../src/agronomy/sun.js';
import { meanSaturationVapourPressureKPa, saturationSlopeKPaPerC } from '../../src/agronomy/vapour.js';
import { vapourPressureFromDewPointKPa } from '../../src/agronomy/vapour-actual.js';

// Source: Allen, Pereira, Raes, Smith, 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56.
// Tolerance: half a step of the last printed digit (what toBeCloseTo allows), unless a line says otherwise.

describe('FAO-56, example 14, p. 92', () => {
  it('brings 3.2 m/s at 10 m to 2.4 m/s at 2 m', () => {
    expect(windAt2MMPerS({ windMPerS: 3.2, heightM: 10 })).toBeCloseTo(2.4, 1);
  });
});

describe('FAO-56, example 17, p. 110: Bangkok in April, by Penman-Monteith', () => {
  const place = { latitudeDeg: 13.73, dayOfYear: 105 };
  const temperatures = { tMinC: 25.6, tMaxC: 34.8 };
  const raMJPerM2 = extraterrestrialRadiationMJPerM2(place);
  const rsMJPerM2 = solarRadiationFromSunshineMJPerM2({
    sunshineH: 8.5,
    dayLengthH: dayLengthH(place),
    raMJPerM2,
  });
  const rsoMJPerM2 = clearSkyRadiationMJPerM2({ raMJPerM2, altitudeM: 2 });
  const rnlMJPerM2 = netLongwaveMJPerM2({ ...temperatures, vapourPressureKPa: 2.85, rsMJPerM2, rsoMJPerM2 });
  const rnMJPerM2 = netRadiationMJPerM2({ rnsMJPerM2: netShortwaveMJPerM2(rsMJPerM2), rnlMJPerM2 });
  const gMJPerM2 = soilHeatFluxSincePreviousMonthMJPerM2({ previousC: 29.2, monthC: 30.2 });
  const et0Mm = penmanMonteithMm({
    ...temperatures,
    vapourPressureKPa: 2.85,
    windAt2MMPerS: 2,
    netRadiationMJPerM2: rnMJPerM2,
    soilHeatFluxMJPerM2: gMJPerM2,
    altitudeM: 2,
  });

  it.each([
    ['saturation vapour pressure, kPa', meanSaturationVapourPressureKPa(temperatures), 4.42, 2],
    ['slope of the saturation curve, kPa/°C', saturationSlopeKPaPerC(30.2), 0.246, 3],
    ['radiation above the air, MJ/m²/day', raMJPerM2, 38.06, 2],
    ['day length, h', dayLengthH(place), 12.31, 2],
    ['solar radiation, MJ/m²/day', rsMJPerM2, 22.65, 2],
    ['clear-sky radiation, MJ/m²/day', rsoMJPerM2, 28.54, 2],
    ['net longwave radiation, MJ/m²/day', rnlMJPerM2, 3.11, 2],
    ['net radiation, MJ/m²/day', rnMJPerM2, 14.33, 2],
    ['soil heat flux, MJ/m²/day', gMJPerM2, 0.14, 2],
    ['evapotranspiration, mm/day', et0Mm, 5.72, 2],
  ])('has the printed %s', (_quantity, value, printed, digits) => {
    expect(value).toBeCloseTo(printed, digits);
  });

  it('comes to the same 5.72 mm/day through the one function that takes a day of weather', () => {
    const answer = referenceEvapotranspiration({
      ...place,
      ...temperatures,
      altitudeM: 2,
      vapourPressureKPa: 2.85,
      windMPerS: 2,
      windHeightM: 2,
      sunshineH: 8.5,
      soilHeatFluxMJPerM2: gMJPerM2,
    });
    expect(answer.et0Mm).toBeCloseTo(5.72, 2);
    expect(answer.method).toBe('penman-monteith');
    expect(answer.fallbacks).toEqual([]);
  });
});

describe('FAO-56, example 20, p. 121: Lyon in July, temperatures alone', () => {
  const lyon = { latitudeDeg: 45.72, dayOfYear: 196, tMinC: 14.8, tMaxC: 26.6 };

  it('takes 1.68 kPa of vapour from the minimum temperature', () => {
    expect(vapourPressureFromDewPointKPa(lyon.tMinC)).toBeCloseTo(1.68, 2);
  });
  it('could hold 2.58 kPa', () => {
    expect(meanSaturationVapourPressureKPa(lyon)).toBeCloseTo(2.58, 2);
  });
  it('lacks 0.90 kPa', () => {
    const deficitKPa = meanSaturationVapourPressureKPa(lyon) - vapourPressureFromDewPointKPa(lyon.tMinC);
    expect(deficitKPa).toBeCloseTo(0.9, 2);
  });
  it('uses 4.6 mm/day by Penman-Monteith, with humidity, wind and sunshine all stood in for', () => {
    const answer = penmanMonteithWithFallbacks({ ...lyon, altitudeM: 200 });
    expect(answer.et0Mm).toBeCloseTo(4.6, 1);
    expect(answer.fallbacks).toEqual([
      'dew-point-is-minimum',
      'wind-2-m-per-s',
      'sunshine-from-temperatures',
    ]);
  });
  it('uses 5.0 mm/day by Hargreaves', () => {
    expect(hargreavesMm({ ...lyon, raMJPerM2: extraterrestrialRadiationMJPerM2(lyon) })).toBeCloseTo(5.0, 1);
  });
  it('is given by Hargreaves when nothing but temperatures is known', () => {
    const answer = referenceEvapotranspiration(lyon);
    expect(answer.et0Mm).toBeCloseTo(5.0, 1);
    expect(answer).toMatchObject({ method: 'hargreaves', fallbacks: [] });
  });
});
