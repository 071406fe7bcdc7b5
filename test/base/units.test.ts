import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  AREA_IN_M2,
  celsiusFromFahrenheit,
  convert,
  fahrenheitFromCelsius,
  LENGTH_IN_M,
  MASS_IN_G,
  MASS_RATE_IN_G_PER_M2,
  SPEED_IN_KM_PER_H,
  VOLUME_IN_L,
  VOLUME_RATE_IN_ML_PER_M2,
} from '../../src/base/units.js';

const TABLES: Record<string, Readonly<Record<string, number>>> = {
  length: LENGTH_IN_M,
  area: AREA_IN_M2,
  mass: MASS_IN_G,
  volume: VOLUME_IN_L,
  speed: SPEED_IN_KM_PER_H,
  'mass rate': MASS_RATE_IN_G_PER_M2,
  'volume rate': VOLUME_RATE_IN_ML_PER_M2,
};

describe.each(Object.entries(TABLES))('%s', (_, table) => {
  const unit = fc.constantFrom(...Object.keys(table));
  const value = fc.double({ min: 1e-6, max: 1e9, noNaN: true });

  it('comes back from any unit as it went', () => {
    fc.assert(
      fc.property(value, unit, unit, (start, from, to) => {
        const back = convert(table, convert(table, start, { from, to }), { from: to, to: from });
        expect(Math.abs(back / start - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('converts through a third unit to the same', () => {
    fc.assert(
      fc.property(value, unit, unit, unit, (start, from, via, to) => {
        const direct = convert(table, start, { from, to });
        const round = convert(table, convert(table, start, { from, to: via }), { from: via, to });
        expect(Math.abs(round / direct - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('leaves a value in its own unit untouched', () => {
    fc.assert(fc.property(value, unit, (start, from) => convert(table, start, { from, to: from }) === start));
  });
});

// By hand from the exact pound (453.59237 g), foot (0.3048 m), gallon (3.785411784 L) and yard (0.9144 m).
describe('factors that gardeners meet', () => {
  it.each([
    ['1 lb/1,000 ft²', MASS_RATE_IN_G_PER_M2['lb/1000 ft2'], 4.88243],
    ['1 oz/1,000 ft²', MASS_RATE_IN_G_PER_M2['oz/1000 ft2'], 0.305152],
    ['1 oz/yd²', MASS_RATE_IN_G_PER_M2['oz/yd2'], 33.906],
    ['1 lb/acre', MASS_RATE_IN_G_PER_M2['lb/acre'], 0.112085],
    ['1 US gal/1,000 ft²', VOLUME_RATE_IN_ML_PER_M2['US gal/1000 ft2'], 40.746],
    ['1 US fl oz/1,000 ft²', VOLUME_RATE_IN_ML_PER_M2['US fl oz/1000 ft2'], 0.31833],
  ])('%s', (_, factor, byHand) => expect(Math.abs(factor / byHand - 1)).toBeLessThan(2e-5));

  it('a weight ounce and a fluid ounce over the same ground are different amounts', () => {
    const weight = MASS_RATE_IN_G_PER_M2['oz/1000 ft2'];
    const fluid = VOLUME_RATE_IN_ML_PER_M2['US fl oz/1000 ft2'];
    expect(fluid / weight).toBeGreaterThan(1.04);
  });
});

// Fixed points of the two scales: water freezes at 32 °F and boils at 212 °F; the scales meet at −40.
describe('temperatures', () => {
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [50, 10],
    [59, 15],
    [68, 20],
    [77, 25],
    [86, 30],
  ])('%d °F is %d °C', (fahrenheit, celsius) => {
    expect(celsiusFromFahrenheit(fahrenheit)).toBeCloseTo(celsius, 12);
    expect(fahrenheitFromCelsius(celsius)).toBeCloseTo(fahrenheit, 12);
  });
});
