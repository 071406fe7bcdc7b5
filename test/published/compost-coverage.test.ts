import { describe, expect, it } from 'vitest';
import { layerKg, layerL } from '../../src/agronomy/top-dressing.js';
import { AREA_IN_M2, convert, MASS_IN_G, VOLUME_IN_L } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: coverage table of a cubic yard, as sellers of compost and mulch print it; exact, 324 ÷ inches.
const yardsOver = (areaFt2: number, depthIn: number) =>
  layerL({ areaM2: areaFt2 * AREA_IN_M2.ft2, depthMm: depthIn * 25.4 }) / VOLUME_IN_L.yd3;

describe('a cubic yard', () => {
  it.each([
    [324, 1],
    [162, 2],
    [108, 3],
    [81, 4],
    [54, 6],
  ])('covers %d ft² at %d in', (areaFt2, depthIn) => {
    expect(yardsOver(areaFt2, depthIn)).toBeCloseTo(1, 9);
  });
  it('does not cover the 120 ft² at 3 in that one page prints: that takes 1.11 yd³', () => {
    expectPrinted(yardsOver(120, 3), '1.11');
  });
});

// Source: US Composting Council guidelines, as quoted: 1,200 lb to the cubic yard; the metric value by hand.
it('compost of 1,200 lb to the cubic yard weighs 712 kg to the cubic metre', () => {
  const tPerM3 = convert(MASS_IN_G, 1200, { from: 'lb', to: 't' }) / (VOLUME_IN_L.yd3 / 1000);
  expectPrinted(layerKg({ volumeL: 1000, bulkDensityTPerM3: tPerM3 }), '712');
});

// Source: City of Greeley (Colorado), soil preparation: 4 yd³ per 1,000 ft²; the metric value by hand.
it('4 yd³ on 1,000 ft² are 32.9 L on each square metre', () => {
  const perM2 = (4 * VOLUME_IN_L.yd3) / convert(AREA_IN_M2, 1000, { from: 'ft2', to: 'm2' });
  expectPrinted(layerL({ areaM2: 1, depthMm: perM2 }), '32.9');
});
