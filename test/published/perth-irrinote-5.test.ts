import { expect, it } from 'vitest';
import { waterDepthMm, waterVolumeL } from '../../src/agronomy/watering.js';
import { AREA_IN_M2, convert } from '../../src/base/units.js';

// Source: Irrinote factsheet 5, "1 mm = 1 L/m²", Perth Region NRM.
it('one litre on one square metre is one millimetre', () => {
  expect(waterDepthMm({ volumeL: 1, areaM2: 1 })).toBe(1);
  expect(waterVolumeL({ depthMm: 1, areaM2: 1 })).toBe(1);
});

// Printed to a tenth: half a step.
it('45 kL over 1.4 ha are 3.2 mm', () => {
  const areaM2 = convert(AREA_IN_M2, 1.4, { from: 'ha', to: 'm2' });
  expect(waterDepthMm({ volumeL: 45_000, areaM2 })).toBeCloseTo(3.2, 1);
});
