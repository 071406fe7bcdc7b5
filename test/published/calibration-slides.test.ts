import { describe, it } from 'vitest';
import { caughtVolumeLPerHa } from '../../src/agronomy/spray.js';
import { productMl } from '../../src/agronomy/tank-loads.js';
import { AREA_IN_M2, convert, VOLUME_IN_L, VOLUME_RATE_IN_ML_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';
import { usGalPerAcre } from './us-sprayer.js';

// Source: sprayer calibration slides (slidegur document 5284, author not shown): 340 ft² take 51 s, in which
// 40 fl oz come out; product 1 quart to the acre; tank 1 gal.
describe('the calibration slides', () => {
  const areaM2 = 340 * AREA_IN_M2.ft2;
  const volumeLPerHa = caughtVolumeLPerHa({ areaM2, caughtL: 40 * VOLUME_IN_L['US fl oz'] });
  const inTankMl = productMl({
    waterL: VOLUME_IN_L['US gal'],
    waterLPerM2: convert(VOLUME_RATE_IN_ML_PER_M2, 40, { from: 'US gal/acre', to: 'L/m2' }),
    rateMlPerM2: (1000 * VOLUME_IN_L['US quart']) / AREA_IN_M2.acre,
  });
  // 340 ft² stands for 1/128 acre, which is 340.3 ft²: allow 0.1 %.
  it('find 40 gal to the acre', () => expectPrinted(usGalPerAcre(volumeLPerHa), '40', 0.001));
  it('put 0.8 fl oz in the gallon', () => expectPrinted(inTankMl / 1000 / VOLUME_IN_L['US fl oz'], '0.8'));
  it('put 24 mL in the gallon', () => expectPrinted(inTankMl, '24'));
  // By hand: 43,560 ÷ 40.
  it('cover 1,089 ft² with it', () => {
    const coveredM2 =
      VOLUME_IN_L['US gal'] / convert(VOLUME_RATE_IN_ML_PER_M2, 40, { from: 'US gal/acre', to: 'L/m2' });
    expectPrinted(coveredM2 / AREA_IN_M2.ft2, '1089');
  });
});
