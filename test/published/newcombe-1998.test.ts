import { describe, it } from 'vitest';
import { pointCover } from '../../src/agronomy/cover.js';
import { expectPrinted } from './printed.js';

// Source: R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17
// (1998) 857–872, table I, method 3 (Wilson's score without continuity correction). From memory.
describe('the 95 % Wilson interval', () => {
  it.each([
    [81, 263, '0.2553', '0.3662'],
    [15, 148, '0.0624', '0.1605'],
    [0, 20, '0.0000', '0.1611'],
    [1, 29, '0.0061', '0.1718'],
  ] as const)('of %d in %d is %s to %s', (hits, points, low, high) => {
    const { lowFraction, highFraction } = pointCover({ hits, points });
    expectPrinted(lowFraction, low);
    expectPrinted(highFraction, high);
  });
});
