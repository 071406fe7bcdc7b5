import { it } from 'vitest';
import { pureLiveFraction } from '../../src/agronomy/seed.js';
import { expectPrinted } from './printed.js';

// Source: East Lothian Council, grass seed specification, section 6.2.2: germination 85 % and purity 95 % at
// least. The product of the two is by hand, so it is exact to the printed place.
it('seed that just meets the council specification is 80.75 % pure live seed', () => {
  expectPrinted(100 * pureLiveFraction({ purityFraction: 0.95, germinationFraction: 0.85 }), '80.75');
});
