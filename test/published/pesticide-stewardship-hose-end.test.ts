import { it } from 'vitest';
import { caughtVolumeLPerHa, testStripS } from '../../src/agronomy/spray.js';
import { AREA_IN_M2, convert, VOLUME_IN_L, VOLUME_RATE_IN_ML_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Pesticide Environmental Stewardship, homeowner sheet on hose-end sprayers: 250 ft² take 20 s, in which
// 1.25 gal run into the bucket. The rate is by hand: 1.25 × 4.
const areaM2 = 250 * AREA_IN_M2.ft2;
const caughtL = 1.25 * VOLUME_IN_L['US gal'];

it('1.25 gal over 250 ft² are 5 gal per 1,000 ft²', () => {
  const volumeLPerHa = caughtVolumeLPerHa({ areaM2, caughtL });
  const rate = convert(VOLUME_RATE_IN_ML_PER_M2, volumeLPerHa, { from: 'L/ha', to: 'US gal/1000 ft2' });
  expectPrinted(rate, '5');
});

it('that hose needs the 20 s of the sheet to lay 5 gal per 1,000 ft² on 250 ft²', () => {
  const waterLPerM2 = convert(VOLUME_RATE_IN_ML_PER_M2, 5, { from: 'US gal/1000 ft2', to: 'L/m2' });
  expectPrinted(testStripS({ areaM2, waterLPerM2, flowLPerMin: caughtL * 3 }), '20');
});
