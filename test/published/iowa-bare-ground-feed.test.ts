import { describe, it } from 'vitest';
import { labelNutrients } from '../../src/agronomy/feed.js';
import { MASS_IN_G } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Iowa State Extension, Horticulture and Home Pest News, 12 July 1996: 10 lb of 10-10-10 on 1,000 ft²
// where there is no soil test. A tenth of 10 lb is 1 lb.
describe('10 lb of 10-10-10', () => {
  const nutrients = labelNutrients({ massG: 10 * MASS_IN_G.lb, label: { n: 10, p2o5: 10, k2o: 10 } });
  it.each(['nG', 'p2o5G', 'k2oG'] as const)('hold 1 lb as %s', (name) => {
    expectPrinted(nutrients[name] / MASS_IN_G.lb, '1');
  });
});
