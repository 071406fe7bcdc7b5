import { describe, it } from 'vitest';
import { caughtVolumeLPerHa, meanRunS, testStripM } from '../../src/agronomy/spray.js';
import { productMl } from '../../src/agronomy/tank-loads.js';
import {
  AREA_IN_M2,
  convert,
  LENGTH_IN_M,
  VOLUME_IN_L,
  VOLUME_RATE_IN_ML_PER_M2,
} from '../../src/base/units.js';
import { expectPrinted } from './printed.js';
import { usGalPerAcre } from './us-sprayer.js';

// Source: North Carolina State University, sprayer calibration worksheet (1/128 acre method).
const COURSE_M2 = 340 * AREA_IN_M2.ft2;

describe('the calibration worksheet', () => {
  it('makes a course 57 ft long for a swath of 6 ft', () => {
    const lengthM = testStripM({ areaM2: COURSE_M2, swathM: 6 * LENGTH_IN_M.ft });
    expectPrinted(lengthM / LENGTH_IN_M.ft, '57');
  });
  it('averages runs of 16 and 18 s to 17 s', () => expectPrinted(meanRunS({ runsS: [16, 18] }), '17'));
  // 340 ft² stands for 1/128 acre, which is 340.3 ft²: allow 0.1 %.
  it('reads 7.5 fl oz caught as 7.5 gal to the acre', () => {
    const caughtL = convert(VOLUME_IN_L, 7.5, { from: 'US fl oz', to: 'L' });
    expectPrinted(usGalPerAcre(caughtVolumeLPerHa({ areaM2: COURSE_M2, caughtL })), '7.5', 0.001);
  });
});

describe('8 fl oz of product to the acre at 7.5 gal to the acre', () => {
  const floz = (usGallons: number) => {
    const mL = productMl({
      waterL: usGallons * VOLUME_IN_L['US gal'],
      waterLPerM2: convert(VOLUME_RATE_IN_ML_PER_M2, 7.5, { from: 'US gal/acre', to: 'L/m2' }),
      rateMlPerM2: (8000 * VOLUME_IN_L['US fl oz']) / AREA_IN_M2.acre,
    });
    return mL / 1000 / VOLUME_IN_L['US fl oz'];
  };
  it('is 1.07 fl oz in each gallon, not the 1.06 that the worksheet prints', () =>
    expectPrinted(floz(1), '1.07'));
  it('is 3.2 fl oz in a tank of 3 gal', () => expectPrinted(floz(3), '3.2'));
  // The worksheet counts 30 mL to the fluid ounce (29.57): allow 1.5 %.
  it('is 96 mL in a tank of 3 gal', () => {
    expectPrinted(floz(3) * 1000 * VOLUME_IN_L['US fl oz'], '96', 0.015);
  });
});
