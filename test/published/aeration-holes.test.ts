import { describe, it } from 'vitest';
import { holesPerM2, openSurfaceFraction } from '../../src/agronomy/holes.js';
import { AREA_IN_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: GCSAA forum, 20 August 2013: tine of 5/8 in outside and 0.470 in inside on a grid of 1.5 in.
describe('surface opened on a grid of 1.5 in', () => {
  const holes = holesPerM2({ spacingMm: 1.5 * 25.4 });
  // The post cuts 13.635 off: allow one in the last place.
  it('is 13.63 % by the outside of the tine', () => {
    expectPrinted(
      100 * openSurfaceFraction({ holesPerM2: holes, diameterMm: (5 / 8) * 25.4 }),
      '13.63',
      0.0005,
    );
  });
  it('is 7.71 % by the inside of the tine', () => {
    expectPrinted(100 * openSurfaceFraction({ holesPerM2: holes, diameterMm: 0.47 * 25.4 }), '7.71');
  });
});

// Source: Iowa State Extension, "What is the proper way to aerate a lawn?": holes of 3/4 in, 20 to 40 to the
// square foot. The shares and metric counts are by hand.
describe('Iowa State cores', () => {
  it.each([
    [20, '215', '6.1'],
    [40, '431', '12.3'],
  ] as const)('%d to the square foot are %s to the square metre and open %s %%', (perFt2, perM2, percent) => {
    const holes = perFt2 / AREA_IN_M2.ft2;
    expectPrinted(holes, perM2);
    expectPrinted(100 * openSurfaceFraction({ holesPerM2: holes, diameterMm: 0.75 * 25.4 }), percent);
  });
});

// Source: South Taranaki District Council: fork holes 100 to 150 mm apart; counts by hand.
describe('fork holes', () => {
  it.each([
    [100, '100'],
    [150, '44'],
  ] as const)('%d mm apart: %s to the square metre', (spacingMm, count) => {
    expectPrinted(holesPerM2({ spacingMm }), count);
  });
});

// Source: Colorado State fact sheet 7.202, as quoted: half-inch tines 2 in apart take about a tenth of the
// thatch. The surface they open is by hand, and is less.
it('half-inch holes 2 in apart open 4.9 % of the surface', () => {
  const holes = holesPerM2({ spacingMm: 2 * 25.4 });
  expectPrinted(holes * AREA_IN_M2.ft2, '36');
  expectPrinted(100 * openSurfaceFraction({ holesPerM2: holes, diameterMm: 12.7 }), '4.9');
});
