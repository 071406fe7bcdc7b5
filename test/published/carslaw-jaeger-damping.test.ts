import { describe, expect, it } from 'vitest';
import { dampingDepthM, thermalDiffusivityM2PerS } from '../../src/agronomy/soil-temperature.js';

// Source: damping-depth formula of Carslaw and Jaeger, worked in the public notebook thermique_appart for
// four materials, printed to centimetres. Tolerance: half a step of the last digit.
const materials = [
  {
    material: 'wood wool',
    conductivityWPerMK: 0.04,
    densityKgPerM3: 160,
    heatJPerKgK: 2100,
    yearM: 1.09,
    dayM: 0.06,
  },
  {
    material: 'clay',
    conductivityWPerMK: 1.28,
    densityKgPerM3: 880,
    heatJPerKgK: 1450,
    yearM: 3.17,
    dayM: 0.17,
  },
  {
    material: 'foam',
    conductivityWPerMK: 0.04,
    densityKgPerM3: 34,
    heatJPerKgK: 145,
    yearM: 9.02,
    dayM: 0.47,
  },
  {
    material: 'concrete',
    conductivityWPerMK: 1.8,
    densityKgPerM3: 2300,
    heatJPerKgK: 1000,
    yearM: 2.8,
    dayM: 0.15,
  },
];

describe('damping depth', () => {
  it.each(materials)('of the yearly wave in $material is $yearM m', ({ yearM, ...material }) => {
    const diffusivityM2PerS = thermalDiffusivityM2PerS(material);
    expect(dampingDepthM({ diffusivityM2PerS, periodDays: 365 })).toBeCloseTo(yearM, 2);
  });
  it.each(materials)('of the daily wave in $material is $dayM m', ({ dayM, ...material }) => {
    const diffusivityM2PerS = thermalDiffusivityM2PerS(material);
    expect(dampingDepthM({ diffusivityM2PerS, periodDays: 1 })).toBeCloseTo(dayM, 2);
  });
});
