import { describe, expect, it } from 'vitest';
import { hoseFlowLPerMin, waterVolumeL } from '../../src/agronomy/watering.js';
import { AREA_IN_M2, convert, VOLUME_IN_L } from '../../src/base/units.js';

const INCH_MM = 25.4;
const inUsGallons = (volumeL: number) => volumeL / VOLUME_IN_L['US gal'];
const inchOver = (areaM2: number) => waterVolumeL({ depthMm: INCH_MM, areaM2 });

// Source: Purdue Landscape Report, "What is an Inch of Water?".
describe('an inch of water', () => {
  // The page multiplies by a rounded 0.62 gal/ft²; exact is 0.6234, so allow 0.6 %.
  it('is 124 gal on a bed of 10 × 20 ft', () => {
    const gallons = inUsGallons(inchOver(convert(AREA_IN_M2, 200, { from: 'ft2', to: 'm2' })));
    expect(Math.abs(gallons - 124) / 124).toBeLessThan(0.006);
  });
  it('comes from a hose that fills a gallon in 20 s, which is 3 gal/min', () => {
    const flowLPerMin = hoseFlowLPerMin({ bucketL: VOLUME_IN_L['US gal'], fillSeconds: 20 });
    expect(inUsGallons(flowLPerMin)).toBeCloseTo(3, 9);
  });
});
