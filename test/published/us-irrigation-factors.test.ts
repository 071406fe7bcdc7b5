import { describe, expect, it } from 'vitest';
import { waterVolumeL } from '../../src/agronomy/watering.js';
import { AREA_IN_M2, convert, VOLUME_IN_L } from '../../src/base/units.js';

const inUsGallons = (volumeL: number) => volumeL / VOLUME_IN_L['US gal'];
const inchOver = (areaM2: number) => waterVolumeL({ depthMm: 25.4, areaM2 });

// Source: factors printed alike on several public irrigation pages; rounded to the digits shown, so half a step.
describe('an inch of water in larger units', () => {
  const thousandFt2 = inchOver(convert(AREA_IN_M2, 1000, { from: 'ft2', to: 'm2' }));
  it('is 623 gal on 1000 ft²', () => {
    expect(inUsGallons(thousandFt2)).toBeCloseTo(623, 0);
  });
  it('is 2360 L on 1000 ft²', () => {
    expect(thousandFt2).toBeCloseTo(2360, 0);
  });
  it('is 27 154 gal on an acre', () => {
    expect(inUsGallons(inchOver(AREA_IN_M2.acre))).toBeCloseTo(27_154, 0);
  });
});
