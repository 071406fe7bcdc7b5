import { describe, it } from 'vitest';
import { tankLoads } from '../../src/agronomy/tank-loads.js';
import { layerL } from '../../src/agronomy/top-dressing.js';
import { convert, VOLUME_RATE_IN_ML_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: Ohio State University, turfgrass field day 2023, wetting agent trial: 6 fl oz in 2 gal per 1,000 ft²,
// then a quarter inch of water. The metric values are by hand from the unit definitions.
describe('the wetting agent trial on 100 m²', () => {
  const rateMlPerM2 = convert(VOLUME_RATE_IN_ML_PER_M2, 6, { from: 'US fl oz/1000 ft2', to: 'mL/m2' });
  const waterLPerM2 = convert(VOLUME_RATE_IN_ML_PER_M2, 2, { from: 'US gal/1000 ft2', to: 'L/m2' });
  const { total } = tankLoads({ areaM2: 100, waterLPerM2, tankL: 5, rateMlPerM2 });
  it('is 1.91 mL/m²', () => expectPrinted(rateMlPerM2, '1.91'));
  it('is 191 mL in all', () => expectPrinted(total.productMl, '191'));
  it('goes on in 8.15 L of water', () => expectPrinted(total.waterL, '8.15'));
  it('is watered in with 635 L', () => expectPrinted(layerL({ areaM2: 100, depthMm: 6.35 }), '635'));
});
