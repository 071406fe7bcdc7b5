import { expect, it } from 'vitest';
import { startingDepletionMm } from '../../src/agronomy/soil-water.js';

// Source: CropWaterBalance, package for the R language, test-InitialD.R, on equation 87 of FAO-56:
// field capacity 0.30, water content 0.17, 0.3048 m of roots. A product of three, so exact but for binary.
it('a root zone of 304.8 mm at 0.17 of 0.30 lacks 39.624 mm (CropWaterBalance)', () => {
  const depletionMm = startingDepletionMm({
    fieldCapacityFraction: 0.3,
    waterFraction: 0.17,
    rootDepthMm: 304.8,
  });
  expect(depletionMm).toBeCloseTo(39.624, 9);
});
