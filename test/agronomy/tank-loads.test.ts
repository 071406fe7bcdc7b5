import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { productMl, tankLoads } from '../../src/agronomy/tank-loads.js';
import { AREA_IN_M2, VOLUME_IN_L } from '../../src/base/units.js';
import { amountOrNone, expectReal, expectRefusals } from './refusals.js';

describe('tankLoads', () => {
  // By hand: 180 m² at 10 L to 100 m² is 18 L; a can of 5 L goes three times full and once with 3 L.
  it('counts full cans and the last one apart', () => {
    const loads = tankLoads({ areaM2: 180, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 });
    expect(loads).toMatchObject({ loadCount: 4, fullCount: 3 });
    expect(loads.last?.waterL).toBeCloseTo(3, 9);
  });
  it('puts product for its own water into the last load, not for a whole tank', () => {
    const { full, last, total } = tankLoads({ areaM2: 180, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 });
    expect(full.productMl).toBeCloseTo(100, 9);
    expect(last?.productMl).toBeCloseTo(60, 9);
    expect(total.productMl).toBeCloseTo(360, 9);
  });
  it('has no last load when the tanks come out even', () => {
    const loads = tankLoads({ areaM2: 150, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 });
    expect(loads).toMatchObject({ loadCount: 3, fullCount: 3, last: null });
  });
  it('is one part load for a small lawn', () => {
    const loads = tankLoads({ areaM2: 20, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 });
    expect(loads).toMatchObject({ loadCount: 1, fullCount: 0 });
    expect(loads.last?.productMl).toBeCloseTo(40, 9);
  });

  // A gardening question-and-answer page (its name was not kept) prints: a gallon covers 200 ft², the tank holds
  // 10 gal, the label asks for 2 fl oz per 1,000 ft²: 2,000 ft² and 4 fl oz to the tank.
  it('puts 4 fl oz in 10 gal for 2,000 ft²', () => {
    const usGal = VOLUME_IN_L['US gal'];
    const usFlOzMl = 1000 * VOLUME_IN_L['US fl oz'];
    const loads = tankLoads({
      areaM2: 2000 * AREA_IN_M2.ft2,
      waterLPerM2: usGal / (200 * AREA_IN_M2.ft2),
      tankL: 10 * usGal,
      rateMlPerM2: (2 * usFlOzMl) / (1000 * AREA_IN_M2.ft2),
    });
    expect(loads).toMatchObject({ loadCount: 1, fullCount: 1, last: null });
    expect(loads.full.productMl / usFlOzMl).toBeCloseTo(4, 9);
  });

  const rate = fc.double({ min: 0.01, max: 10, noNaN: true });
  it('adds up to the whole area at the label rates', () => {
    const area = fc.double({ min: 1, max: 5000, noNaN: true });
    const tank = fc.double({ min: 1, max: 20, noNaN: true });
    fc.assert(
      fc.property(area, rate, tank, amountOrNone, (areaM2, waterLPerM2, tankL, rateMlPerM2) => {
        const { fullCount, full, last, total, loadCount } = tankLoads({
          areaM2,
          waterLPerM2,
          tankL,
          rateMlPerM2,
        });
        const waterL = fullCount * full.waterL + (last?.waterL ?? 0);
        expect(Math.abs(waterL - areaM2 * waterLPerM2)).toBeLessThanOrEqual(2e-6 * tankL);
        expect(Math.abs(total.productMl - areaM2 * rateMlPerM2)).toBeLessThanOrEqual(1e-9 * total.productMl);
        expect(last?.waterL ?? 0).toBeLessThan(tankL);
        expect(loadCount).toBe(fullCount + (last ? 1 : 0));
        expect(loadCount).toBeGreaterThan(0);
        for (const load of [full, total, last ?? full]) expectReal(load.productMl);
      }),
    );
  });

  it('refuses what cannot be', () => {
    expectRefusals(
      tankLoads,
      { areaM2: 84, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 },
      { areaM2: [0], waterLPerM2: [0], tankL: [0] },
    );
    expectRefusals(productMl, { waterL: 5, waterLPerM2: 0.1, rateMlPerM2: 2 }, { waterLPerM2: [0] });
  });
});
