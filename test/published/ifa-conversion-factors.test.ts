import { describe, it } from 'vitest';
import { K_PER_K2O, P_PER_P2O5 } from '../../src/agronomy/feed.js';
import { convert, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: International Fertilizer Association conversion factors, as printed at fertilizer.sgs.com.
describe('fertiliser conversion factors', () => {
  // The table prints 1.1208, cut off and not rounded (exact 1.12085): allow one in the last place.
  it('1 lb/acre is 1.1208 kg/ha', () => {
    const rate = convert(MASS_RATE_IN_G_PER_M2, 1, { from: 'lb/acre', to: 'kg/ha' });
    expectPrinted(rate, '1.1208', 0.0001);
  });
  it('P₂O₅ times 0.4364 is P', () => expectPrinted(P_PER_P2O5, '0.4364'));
  // 2.2914 in print, 2.2913 from today's atomic weights.
  it('P times 2.2914 is P₂O₅', () => expectPrinted(1 / P_PER_P2O5, '2.2914', 0.0001));
  it('K₂O times 0.8302 is K', () => expectPrinted(K_PER_K2O, '0.8302'));
  it('K times 1.2046 is K₂O', () => expectPrinted(1 / K_PER_K2O, '1.2046'));
});
