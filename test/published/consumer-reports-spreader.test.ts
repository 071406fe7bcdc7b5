import { it } from 'vitest';
import { spreadRateGPerM2 } from '../../src/agronomy/spreader.js';
import { AREA_IN_M2, convert, MASS_IN_G, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Consumer Reports, October 2006, testing a spreader by weight.
it('0.5 lb over 50 ft² are 10 lb per 1,000 ft²', () => {
  const rateGPerM2 = spreadRateGPerM2({ massG: 0.5 * MASS_IN_G.lb, areaM2: 50 * AREA_IN_M2.ft2 });
  expectPrinted(convert(MASS_RATE_IN_G_PER_M2, rateGPerM2, { from: 'g/m2', to: 'lb/1000 ft2' }), '10');
});
