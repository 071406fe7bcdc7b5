import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupsOf, productMl, tankLoads } from '../../src/agronomy/tank-loads.js';
import { AREA_IN_M2, VOLUME_IN_L } from '../../src/base/units.js';
import { expectRefusals } from './refusals.js';

describe('tankLoads', () => {
  // By hand: 8.4 L of water and 840 mL are 9.24 L, two fills of 5 L; half of each is 4.62 L for 42 m².
  it('leaves room for the product and shares evenly', () => {
    const { loads, total } = tankLoads({ areaM2: 84, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 10 });
    expect(loads).toEqual([
      { areaM2: 42, waterL: 4.2, productMl: 420 },
      { areaM2: 42, waterL: 4.2, productMl: 420 },
    ]);
    expect(total).toEqual({ areaM2: 84, waterL: 8.4, productMl: 840 });
  });
  // By hand: 18 L and 0.36 L are 18.36 L, four fills of 5 L; a quarter is 4.5 L and 90 mL for 45 m².
  it('makes all loads alike where they come out even', () => {
    const { loads } = tankLoads({ areaM2: 180, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 });
    expect(groupsOf(loads)).toEqual([{ from: 1, to: 4, load: { areaM2: 45, waterL: 4.5, productMl: 90 } }]);
  });
  // By hand: 10 L of water alone would fill two tanks of 5 L to the mark; with 1 L of product it takes three.
  it('takes one more load where water alone would have filled the tank', () => {
    const { loads } = tankLoads({ areaM2: 100, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 10 });
    expect(loads).toHaveLength(3);
  });
  it('is one load for a small lawn', () => {
    const { loads } = tankLoads({ areaM2: 20, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 });
    expect(loads).toEqual([{ areaM2: 20, waterL: 2, productMl: 40 }]);
  });

  // A gardening question-and-answer page (its name was not kept) prints: a gallon covers 200 ft², the tank holds
  // 10 gal, the label asks for 2 fl oz per 1,000 ft²: 2,000 ft² and 4 fl oz to 10 gal of water.
  it('puts 4 fl oz to 10 gal of water', () => {
    const usGal = VOLUME_IN_L['US gal'];
    const usFlOzMl = 1000 * VOLUME_IN_L['US fl oz'];
    const product = productMl({
      waterL: 10 * usGal,
      waterLPerM2: usGal / (200 * AREA_IN_M2.ft2),
      rateMlPerM2: (2 * usFlOzMl) / (1000 * AREA_IN_M2.ft2),
    });
    expect(product / usFlOzMl).toBeCloseTo(4, 9);
  });

  const any = {
    areaM2: fc.double({ min: 1, max: 3000, noNaN: true }),
    waterLPerM2: fc.double({ min: 0.02, max: 1.5, noNaN: true }),
    tankL: fc.double({ min: 0.5, max: 20, noNaN: true }),
    rateMlPerM2: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 60, noNaN: true })),
  };
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

  it('never passes the top mark, is alike to 0.1 L, and adds up to the whole area at the label rates', () => {
    fc.assert(
      fc.property(fc.record(any), (job) => {
        const { areaM2, waterLPerM2, tankL, rateMlPerM2 } = job;
        const { loads } = tankLoads(job);
        const waters = loads.map(({ waterL }) => waterL);
        for (const { waterL, productMl: product } of loads)
          expect(waterL + product / 1000).toBeLessThanOrEqual(tankL * (1 + 1e-9));
        expect(span(waters)).toBeLessThanOrEqual(0.1 + 1e-9);
        expect(sum(waters)).toBeCloseTo(areaM2 * waterLPerM2, 6);
        expect(sum(loads.map((load) => load.areaM2))).toBeCloseTo(areaM2, 6);
        const dose = sum(loads.map((load) => load.productMl));
        expect(dose).toBeLessThanOrEqual(areaM2 * rateMlPerM2 * (1 + 1e-9));
        expect(dose).toBeGreaterThanOrEqual(areaM2 * rateMlPerM2 * 0.9989);
        // Fewer loads would not hold it all.
        const mixL = areaM2 * (waterLPerM2 + rateMlPerM2 / 1000);
        expect(loads.length).toBeGreaterThanOrEqual(Math.floor(mixL / tankL));
      }),
    );
  });

  it('puts into each load the product of its own ground, and its water', () => {
    fc.assert(
      fc.property(fc.record(any), (job) => {
        for (const { areaM2, waterL, productMl: product } of tankLoads(job).loads) {
          expect(Math.abs(areaM2 * job.waterLPerM2 - waterL)).toBeLessThanOrEqual(0.2 * job.waterLPerM2);
          const tolerance = 0.2 * job.rateMlPerM2 + 1 + 0.0011 * areaM2 * job.rateMlPerM2;
          expect(Math.abs(areaM2 * job.rateMlPerM2 - product)).toBeLessThanOrEqual(tolerance);
        }
      }),
    );
  });

  it('refuses what cannot be', () => {
    expectRefusals(
      tankLoads,
      { areaM2: 84, waterLPerM2: 0.1, tankL: 5, rateMlPerM2: 2 },
      { areaM2: [0], waterLPerM2: [0], tankL: [0, 1e-7] },
    );
    expectRefusals(productMl, { waterL: 5, waterLPerM2: 0.1, rateMlPerM2: 2 }, { waterLPerM2: [0] });
  });
});
