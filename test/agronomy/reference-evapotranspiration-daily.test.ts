import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DailyWeather,
  penmanMonteithWithFallbacks,
  referenceEvapotranspiration,
} from '../../src/agronomy/reference-evapotranspiration-daily.js';

const temperatures = { latitudeDeg: 52, dayOfYear: 250, tMinC: 9, tMaxC: 19 };
const measured = {
  ...temperatures,
  altitudeM: 63,
  rhMaxFraction: 0.95,
  rhMinFraction: 0.55,
  windMPerS: 3,
  windHeightM: 10,
  sunshineH: 5,
};
const without = (key: keyof typeof measured): DailyWeather =>
  Object.fromEntries(Object.entries(measured).filter(([name]) => name !== key)) as unknown as DailyWeather;

describe('a day of weather', () => {
  it('goes by Hargreaves when it has temperatures alone, even with an altitude', () => {
    expect(referenceEvapotranspiration(temperatures).method).toBe('hargreaves');
    expect(referenceEvapotranspiration({ ...temperatures, altitudeM: 63 }).method).toBe('hargreaves');
  });

  it('goes by Penman-Monteith, with nothing stood in for, when everything was measured', () => {
    expect(referenceEvapotranspiration(measured)).toMatchObject({ method: 'penman-monteith', fallbacks: [] });
  });

  it.each([
    ['altitudeM', 'altitude-sea-level'],
    ['rhMinFraction', 'humidity-from-maximum-only'],
    ['windMPerS', 'wind-2-m-per-s'],
    ['windHeightM', 'wind-height-2-m'],
    ['sunshineH', 'sunshine-from-temperatures'],
  ] as const)('that lacks %s says %s, and nothing else', (missing, fallback) => {
    expect(referenceEvapotranspiration(without(missing)).fallbacks).toEqual([fallback]);
  });

  it('that lacks both humidities takes the minimum temperature as dew point, and says so', () => {
    const { rhMaxFraction: _max, rhMinFraction: _min, ...dry } = measured;
    expect(referenceEvapotranspiration(dry).fallbacks).toEqual(['dew-point-is-minimum']);
  });

  it('that has the lowest humidity alone is refused, so that the value is not lost in silence', () => {
    expect(() => referenceEvapotranspiration(without('rhMaxFraction'))).toThrow('needs rhMaxFraction');
  });

  it('lists every fall-back, in one order, when only one thing was measured', () => {
    expect(referenceEvapotranspiration({ ...temperatures, sunshineH: 5 }).fallbacks).toEqual([
      'altitude-sea-level',
      'dew-point-is-minimum',
      'wind-2-m-per-s',
    ]);
    expect(penmanMonteithWithFallbacks(temperatures).fallbacks).toEqual([
      'altitude-sea-level',
      'dew-point-is-minimum',
      'wind-2-m-per-s',
      'sunshine-from-temperatures',
    ]);
  });

  it('uses the coast only where sunshine is missing', () => {
    const coast = { isNearCoast: true };
    expect(penmanMonteithWithFallbacks({ ...measured, ...coast })).toEqual(
      penmanMonteithWithFallbacks(measured),
    );
    const dull = without('sunshineH');
    expect(penmanMonteithWithFallbacks({ ...dull, ...coast }).et0Mm).toBeGreaterThan(
      penmanMonteithWithFallbacks(dull).et0Mm,
    );
  });

  it('gives a real number at every latitude and season, polar night included', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.integer({ min: 1, max: 366 }),
        fc.double({ min: -40, max: 35, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (latitudeDeg, dayOfYear, tMinC, swing) => {
          const weather = { latitudeDeg, dayOfYear, tMinC, tMaxC: tMinC + swing };
          for (const answer of [referenceEvapotranspiration(weather), penmanMonteithWithFallbacks(weather)]) {
            expect(answer.et0Mm).toBeGreaterThanOrEqual(0);
            expect(answer.et0Mm).toBeLessThan(30);
          }
        },
      ),
      { numRuns: 1_000 },
    );
  });
});
