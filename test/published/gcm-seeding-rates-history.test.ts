import { describe, it } from 'vitest';
import { convert, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Golf Course Management, "Verdure: a look back at seeding rates" (on trials at UC Davis in the
// 1960s), which prints each rate both ways. Tolerance: the rounding of the printed figure.
describe('pounds per 1,000 ft² in g/m²', () => {
  it.each([
    [1, '4.9'],
    [2, '9.8'],
    [4, '19.5'],
    [8, '39'],
    [10, '49'],
    [20, '98'],
  ] as const)('%d lb are %s g/m²', (pounds, printed) => {
    const rate = convert(MASS_RATE_IN_G_PER_M2, pounds, { from: 'lb/1000 ft2', to: 'g/m2' });
    expectPrinted(rate, printed);
  });
});
