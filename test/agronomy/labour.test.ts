import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handHoursRange, machineHours, workRateHaPerH } from '../../src/agronomy/labour.js';
import { amount, expectReal, expectRefusals, fractionAboveZero } from './refusals.js';

describe('machine work', () => {
  // By hand: 3 km/h × 0.35 m × 0.6 is 630 m²/h; 300 m² twice over are 57 minutes.
  it('takes 57 minutes for two passes over 300 m² with a machine 35 cm wide', () => {
    const capacityHaPerH = workRateHaPerH({ speedKmPerH: 3, widthM: 0.35, efficiencyFraction: 0.6 });
    expect(capacityHaPerH).toBeCloseTo(0.063, 12);
    expect(60 * machineHours({ areaM2: 300, capacityHaPerH, passCount: 2 })).toBeCloseTo(57.1, 1);
  });
  it('never takes longer with a faster, wider or better used machine', () => {
    fc.assert(
      fc.property(amount, amount, fractionAboveZero, (speedKmPerH, widthM, efficiencyFraction) => {
        const rate = workRateHaPerH({ speedKmPerH, widthM, efficiencyFraction });
        expectReal(rate);
        expect(
          workRateHaPerH({ speedKmPerH: 2 * speedKmPerH, widthM, efficiencyFraction }) / rate,
        ).toBeCloseTo(2, 9);
        expect(workRateHaPerH({ speedKmPerH, widthM: 2 * widthM, efficiencyFraction }) / rate).toBeCloseTo(
          2,
          9,
        );
        expect(workRateHaPerH({ speedKmPerH, widthM, efficiencyFraction: 1 })).toBeGreaterThanOrEqual(rate);
      }),
    );
  });
  it('takes as many times longer as there are passes', () => {
    fc.assert(
      fc.property(amount, amount, fc.integer({ min: 1, max: 9 }), (areaM2, capacityHaPerH, passCount) => {
        const once = machineHours({ areaM2, capacityHaPerH, passCount: 1 });
        expect(machineHours({ areaM2, capacityHaPerH, passCount }) / once).toBeCloseTo(passCount, 9);
      }),
    );
  });
});

describe('hand work', () => {
  it('is quickest at the highest rate', () => {
    expect(handHoursRange({ areaM2: 80, rateM2PerH: { min: 20, max: 40 } })).toEqual({ min: 2, max: 4 });
    expect(handHoursRange({ areaM2: 80, rateM2PerH: { min: 20, max: 20 } })).toEqual({ min: 4, max: 4 });
  });
});

describe('refusals', () => {
  it('come for work that cannot be', () => {
    expectRefusals(
      workRateHaPerH,
      { speedKmPerH: 3, widthM: 0.35, efficiencyFraction: 0.6 },
      { speedKmPerH: [0], widthM: [0], efficiencyFraction: [0, 60] },
    );
    const job = { areaM2: 84, capacityHaPerH: 0.06, passCount: 2 };
    expectRefusals(machineHours, job, { areaM2: [0], capacityHaPerH: [0], passCount: [0, 1.5] });
    expect(() => handHoursRange({ areaM2: 0, rateM2PerH: { min: 20, max: 40 } })).toThrow('areaM2');
    expect(() => handHoursRange({ areaM2: 80, rateM2PerH: { min: 0, max: 40 } })).toThrow('rateM2PerH.min');
    expect(() => handHoursRange({ areaM2: 80, rateM2PerH: { min: 40, max: 20 } })).toThrow('rateM2PerH.max');
  });
});
