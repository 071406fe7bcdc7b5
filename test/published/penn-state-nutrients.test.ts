import { describe, it } from 'vitest';
import { K_PER_K2O, labelNutrients, P_PER_P2O5 } from '../../src/agronomy/feed.js';
import { expectPrinted } from './printed.js';

// Source: Penn State, Center for Turfgrass Science, "How much fertilizer" (19 December 2022).
describe('oxides on the label as elements', () => {
  const { pG, kG } = labelNutrients({ massG: 100, label: { n: 0, p2o5: 20, k2o: 10 } });
  it('P is 0.44 of P₂O₅', () => expectPrinted(P_PER_P2O5, '0.44'));
  it('K is 0.83 of K₂O', () => expectPrinted(K_PER_K2O, '0.83'));
  // The page multiplies by the rounded 0.44; exact is 8.73, so allow 1 %.
  it('20 % P₂O₅ is 8.8 % P', () => expectPrinted(pG, '8.8', 0.01));
  it('10 % K₂O is 8.3 % K', () => expectPrinted(kG, '8.3'));
});
