import { describe, expect, it } from 'vitest';
import { rectangleM2 } from '../../src/agronomy/area.js';
import { caughtVolumeLPerHa } from '../../src/agronomy/spray.js';
import { AREA_IN_M2, LENGTH_IN_M, VOLUME_IN_L } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';
import { usGalPerAcre } from './us-sprayer.js';

// Source: UF/IFAS Extension Alachua County, 4 February 2022, calibrating a hand sprayer on 1/128 acre;
// Larimer County (Colorado) prints the same method.
const ft2 = (lengthFt: number, widthFt: number) =>
  rectangleM2({ lengthM: lengthFt * LENGTH_IN_M.ft, widthM: widthFt * LENGTH_IN_M.ft }) / AREA_IN_M2.ft2;

describe('a test plot of 1/128 acre', () => {
  it('is 340 ft²', () => expectPrinted(AREA_IN_M2.acre / 128 / AREA_IN_M2.ft2, '340'));
  // Exact, but for binary rounding.
  it.each([20, 40, 64])('%d fl oz caught on it are as many gallons to the acre', (floz) => {
    const caughtL = floz * VOLUME_IN_L['US fl oz'];
    expect(usGalPerAcre(caughtVolumeLPerHa({ areaM2: AREA_IN_M2.acre / 128, caughtL }))).toBeCloseTo(floz, 9);
  });
  // A square of 18.5 ft is 342.25 ft², within 1 % of 340.
  it('is a square of 18.5 ft', () => expectPrinted(ft2(18.5, 18.5), '340', 0.01));
  it('is not 8.5 × 18.5 ft, as the page prints: that is 157 ft², less than half', () => {
    expectPrinted(ft2(8.5, 18.5), '157');
    expect(ft2(8.5, 18.5)).toBeLessThan(340 / 2);
  });
});
