import { describe, expect, it } from 'vitest';
import { labelSum, mixPureLiveFraction } from '../../src/agronomy/mix.js';
import { pureLiveFraction } from '../../src/agronomy/seed.js';
import { expectPrinted } from './printed.js';

// Source: University of Minnesota Extension SULIS, new lawns, table 5.2: a seed label with four grasses,
// inert matter, other crop and weed seed.
const LABEL = [0.44, 0.31, 0.09, 0.12, 0.0156, 0.0211, 0.0033];

describe('the seed label of table 5.2', () => {
  it('adds up to the whole bag', () => {
    const { sumFraction, isWhole } = labelSum({ fractions: LABEL, toleranceFraction: 0 });
    expectPrinted(100 * sumFraction, '100.00');
    expect(isWhole).toBe(true);
  });
  it('no longer does without its weed line', () => {
    expect(labelSum({ fractions: LABEL.slice(0, -1), toleranceFraction: 0.001 }).isWhole).toBe(false);
  });
  it('holds 24.8 % of pure live meadow-grass: 31 % of which 80 % grow', () => {
    expectPrinted(100 * pureLiveFraction({ purityFraction: 0.31, germinationFraction: 0.8 }), '24.8');
  });
  // The sum of the table's own products, by hand: 37.40 + 24.80 + 7.65 + 10.80.
  it('is 80.65 % pure live seed in all', () => {
    const kinds = [
      { massFraction: 0.44, germinationFraction: 0.85 },
      { massFraction: 0.31, germinationFraction: 0.8 },
      { massFraction: 0.09, germinationFraction: 0.85 },
      { massFraction: 0.12, germinationFraction: 0.9 },
    ];
    expectPrinted(100 * mixPureLiveFraction({ kinds }), '80.65');
  });
});
