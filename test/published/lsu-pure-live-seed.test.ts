import { describe, it } from 'vitest';
import { pureLiveFraction, seedMassG } from '../../src/agronomy/seed.js';
import { AREA_IN_M2, convert, MASS_IN_G, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: LSU AgCenter, "Pure live seed calculation", steps 1 to 5: 20,000 ft² at 1 lb of pure live seed
// per 1,000 ft², purity 48 %, germination 80 %.
describe('seed for 20,000 ft² from a bag of 48 % purity and 80 % germination', () => {
  const pureLive = pureLiveFraction({ purityFraction: 0.48, germinationFraction: 0.8 });
  const poundsWith = (pureLiveShare: number) =>
    convert(
      MASS_IN_G,
      seedMassG({
        areaM2: convert(AREA_IN_M2, 20_000, { from: 'ft2', to: 'm2' }),
        rateGPerM2: convert(MASS_RATE_IN_G_PER_M2, 1, { from: 'lb/1000 ft2', to: 'g/m2' }),
        pureLiveFraction: pureLiveShare,
      }),
      { from: 'g', to: 'lb' },
    );
  it('has 0.38 of pure live seed', () => expectPrinted(pureLive, '0.38'));
  it('takes the printed 52.6 lb when that share is rounded first, as the page does', () => {
    expectPrinted(poundsWith(0.38), '52.6');
  });
  it('takes 52.08 lb when it is rounded last, not the printed 52.6', () =>
    expectPrinted(poundsWith(pureLive), '52.08'));
  it('takes 20 lb if all of it were alive', () => expectPrinted(poundsWith(1), '20'));
});
