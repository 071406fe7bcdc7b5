import { describe, expect, it } from 'vitest';
import { rectangleM2, triangleM2 } from '../../src/agronomy/area.js';
import { outlineM2 } from '../../src/agronomy/outline.js';
import { AREA_IN_M2 } from '../../src/base/units.js';

// Source: FAO, Irrigation Water Management Training Manual 1 (1985), chapter 1: a triangle with a base of 3 cm
// and a height of 2 cm is 3 cm², whichever way it leans. In metres here.
describe('triangles with a base of 3 and a height of 2', () => {
  it.each([0, 1.2, 3, 5, -2])('the top above %d: area 3', (top) => {
    const pointsM = [
      [0, 0],
      [3, 0],
      [top, 2],
    ] as const;
    expect(outlineM2({ pointsM })).toBeCloseTo(3, 12);
  });
});

// Source: FAO, Better Farming 14 and 17: plots of one hectare and less, and a square corner from 3, 4 and 5 m.
describe('plots of Better Farming', () => {
  it.each([
    [100, 100, 10_000],
    [200, 50, 10_000],
    [71, 71, 5041],
    [100, 50, 5000],
  ])('%d × %d m are %d m²', (lengthM, widthM, areaM2) => {
    expect(rectangleM2({ lengthM, widthM })).toBe(areaM2);
  });
  it('10,000 m² are a hectare', () => expect(AREA_IN_M2.ha).toBe(10_000));
  it('sides of 3, 4 and 5 m close on half of 3 × 4 m', () => {
    expect(triangleM2({ sidesM: [3, 4, 5] })).toBe(rectangleM2({ lengthM: 3, widthM: 4 }) / 2);
  });
});
