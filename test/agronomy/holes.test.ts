import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holesPerM2, openSurfaceFraction } from '../../src/agronomy/holes.js';
import { expectReal, expectRefusals } from './refusals.js';

describe('holes', () => {
  it('are counted from both spacings', () => {
    expect(holesPerM2({ spacingMm: 100 })).toBe(100);
    expect(holesPerM2({ spacingMm: 50, rowSpacingMm: 100 })).toBe(200);
  });
  it('are four times as many at half the spacing', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 500, noNaN: true }), (spacingMm) => {
        expect(holesPerM2({ spacingMm: spacingMm / 2 }) / holesPerM2({ spacingMm })).toBeCloseTo(4, 9);
      }),
    );
  });
  it('open π ÷ 4 of the surface when they touch one another, and no more', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 500, noNaN: true }), (spacingMm) => {
        const open = openSurfaceFraction({ holesPerM2: holesPerM2({ spacingMm }), diameterMm: spacingMm });
        expectReal(open);
        expect(open).toBeCloseTo(Math.PI / 4, 9);
      }),
    );
  });
  it('are refused when so many so wide do not fit', () => {
    expect(() => openSurfaceFraction({ holesPerM2: 400, diameterMm: 100 })).toThrow('do not fit');
  });
  it('are refused when a size cannot be', () => {
    expectRefusals(holesPerM2, { spacingMm: 50, rowSpacingMm: 60 }, { spacingMm: [0], rowSpacingMm: [0] });
    expectRefusals(openSurfaceFraction, { holesPerM2: 100, diameterMm: 12 }, { diameterMm: [0] });
  });
});
