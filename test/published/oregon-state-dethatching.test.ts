import { it } from 'vitest';
import { mossLeftFraction } from '../../src/agronomy/debris.js';
import { expectPrinted } from './printed.js';

// Source: R. Golembiewski (Oregon State University) in the Register-Guard: dethatching takes about 75 % of the
// moss. The example lawn is by hand: 80 × 0.25.
it('raking a lawn of 80 % moss leaves 20 % moss', () => {
  expectPrinted(100 * mossLeftFraction({ mossFraction: 0.8, removedFraction: 0.75 }), '20');
});
