import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  layerKg,
  layerL,
  layerLimitMm,
  layerRangeKg,
  layersNeeded,
  looseL,
} from '../../src/agronomy/top-dressing.js';
import { amount, amountOrNone, expectReal, expectRefusals } from './refusals.js';

describe('a layer', () => {
  // A millimetre on a square metre is a litre; a tonne to the cubic metre is a kilogram to the litre.
  it('of 6 mm on 150 m² is 900 L', () => expect(layerL({ areaM2: 150, depthMm: 6 })).toBe(900));
  it('of 2 L at 1.2 t/m³ weighs 2.4 kg', () =>
    expect(layerKg({ volumeL: 2, bulkDensityTPerM3: 1.2 })).toBeCloseTo(2.4, 12));
  it('weighs from dry to damp', () => {
    const { min, max } = layerRangeKg({ volumeL: 100, bulkDensityTPerM3: { min: 1.0, max: 1.4 } });
    expect(min).toBeCloseTo(100, 9);
    expect(max).toBeCloseTo(140, 9);
  });
  it('weighs one figure when dry and damp are the same', () => {
    expect(layerRangeKg({ volumeL: 100, bulkDensityTPerM3: { min: 1, max: 1 } })).toEqual({
      min: 100,
      max: 100,
    });
  });
  it('is linear in area and depth', () => {
    fc.assert(
      fc.property(amount, amount, (areaM2, depthMm) => {
        const one = layerL({ areaM2, depthMm });
        expectReal(one);
        expect(layerL({ areaM2: 2 * areaM2, depthMm }) / one).toBeCloseTo(2, 9);
        expect(layerL({ areaM2, depthMm: 2 * depthMm }) / one).toBeCloseTo(2, 9);
      }),
    );
  });
  it('takes more loose material than it lies thick', () => {
    expect(looseL({ volumeL: 900, settlingFraction: 0.1 })).toBeCloseTo(1000, 9);
    expect(looseL({ volumeL: 900, settlingFraction: 0 })).toBe(900);
  });
});

describe('layerLimitMm', () => {
  it('is the cap in long grass and less in short grass', () => {
    expect(layerLimitMm({ capMm: 10, grassHeightMm: 40, tipsShowingMm: 15 })).toBe(10);
    expect(layerLimitMm({ capMm: 10, grassHeightMm: 20, tipsShowingMm: 15 })).toBe(5);
  });
  it('is 0 where the tips would vanish under anything', () => {
    expect(layerLimitMm({ capMm: 10, grassHeightMm: 10, tipsShowingMm: 15 })).toBe(0);
  });
  it('never buries the tips', () => {
    fc.assert(
      fc.property(amount, amount, amountOrNone, (capMm, grassHeightMm, tipsShowingMm) => {
        const limit = layerLimitMm({ capMm, grassHeightMm, tipsShowingMm });
        expectReal(limit);
        if (limit > 0) expect(grassHeightMm - limit).toBeGreaterThanOrEqual(tipsShowingMm - 1e-6);
      }),
    );
  });
});

describe('layersNeeded', () => {
  it('splits a deep hollow into equal thin layers', () => {
    expect(layersNeeded({ depthMm: 25, limitMm: 10 })).toEqual({ count: 3, each: 25 / 3 });
    expect(layersNeeded({ depthMm: 10, limitMm: 10 })).toEqual({ count: 1, each: 10 });
  });
  it('says to let the grass grow when there is no room at all', () => {
    expect(() => layersNeeded({ depthMm: 25, limitMm: 0 })).toThrow('Let the grass grow first');
  });
});

describe('refusals', () => {
  it('come for amounts that cannot be', () => {
    expectRefusals(layerL, { areaM2: 84, depthMm: 5 }, { areaM2: [0] });
    expectRefusals(layerKg, { volumeL: 100, bulkDensityTPerM3: 1.2 }, { bulkDensityTPerM3: [0] });
    expectRefusals(looseL, { volumeL: 100, settlingFraction: 0.1 }, { settlingFraction: [1, 10] });
    expectRefusals(
      layerLimitMm,
      { capMm: 10, grassHeightMm: 40, tipsShowingMm: 15 },
      { capMm: [0], grassHeightMm: [0] },
    );
    expectRefusals(layersNeeded, { depthMm: 25, limitMm: 10 }, { limitMm: [0] });
  });
  it('come for a density range that runs backwards', () => {
    expect(() => layerRangeKg({ volumeL: 1, bulkDensityTPerM3: { min: 1.4, max: 1 } })).toThrow(
      'bulkDensityTPerM3.max',
    );
  });
});
