import { expect, it } from 'vitest';
import { turfWaterUseMm } from '../../src/agronomy/turf-water.js';

it('a lawn uses its coefficient times the reference: 0.95 × 4 mm is 3.8 mm', () => {
  expect(turfWaterUseMm({ et0Mm: 4, cropCoefficient: 0.95 })).toBeCloseTo(3.8, 12);
});

it('a lawn without sun uses nothing, and a negative use is refused', () => {
  expect(turfWaterUseMm({ et0Mm: 0, cropCoefficient: 0.95 })).toBe(0);
  expect(() => turfWaterUseMm({ et0Mm: -1, cropCoefficient: 0.95 })).toThrow('et0Mm');
  expect(() => turfWaterUseMm({ et0Mm: 1, cropCoefficient: Number.NaN })).toThrow('cropCoefficient');
});
