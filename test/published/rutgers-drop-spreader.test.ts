import { it } from 'vitest';
import { ratePerPassGPerM2 } from '../../src/agronomy/spreader.js';
import { convert, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Rutgers, Snyder Research Farm, drop-spreader sheet.
it('0.9 lb of nitrogen in two passes at right angles is 0.45 lb in each', () => {
  const rateGPerM2 = convert(MASS_RATE_IN_G_PER_M2, 0.9, { from: 'lb/1000 ft2', to: 'g/m2' });
  const each = ratePerPassGPerM2({ rateGPerM2, passCount: 2 });
  expectPrinted(convert(MASS_RATE_IN_G_PER_M2, each, { from: 'g/m2', to: 'lb/1000 ft2' }), '0.45');
});
