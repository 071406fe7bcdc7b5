import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ratePerPassGPerM2, spreaderCorrection, spreadRateGPerM2 } from '../../src/agronomy/spreader.js';
import { amount, amountOrNone, expectReal, expectRefusals } from './refusals.js';

describe('a spreader test', () => {
  it('finds the rate from the weight that fell', () => {
    expect(spreadRateGPerM2({ massG: 350, areaM2: 10 })).toBe(35);
  });
  it('opens the gate when too little fell and closes it when too much did', () => {
    expect(spreaderCorrection({ wantedGPerM2: 30, measuredGPerM2: 20 })).toBe(1.5);
    expect(spreaderCorrection({ wantedGPerM2: 30, measuredGPerM2: 40 })).toBe(0.75);
  });
  it('hits the wanted rate once corrected', () => {
    fc.assert(
      fc.property(amount, amount, (wantedGPerM2, measuredGPerM2) => {
        const factor = spreaderCorrection({ wantedGPerM2, measuredGPerM2 });
        expectReal(factor);
        expect((factor * measuredGPerM2) / wantedGPerM2).toBeCloseTo(1, 9);
      }),
    );
  });
  it('lays the whole rate down over all passes', () => {
    fc.assert(
      fc.property(amountOrNone, fc.integer({ min: 1, max: 10 }), (rateGPerM2, passCount) => {
        const each = ratePerPassGPerM2({ rateGPerM2, passCount });
        expect(Math.abs(each * passCount - rateGPerM2)).toBeLessThanOrEqual(1e-9 * rateGPerM2);
      }),
    );
  });
  it('refuses what cannot be', () => {
    expectRefusals(spreadRateGPerM2, { massG: 350, areaM2: 10 }, { areaM2: [0] });
    expectRefusals(
      spreaderCorrection,
      { wantedGPerM2: 30, measuredGPerM2: 20 },
      { wantedGPerM2: [0], measuredGPerM2: [0] },
    );
    expectRefusals(ratePerPassGPerM2, { rateGPerM2: 30, passCount: 2 }, { passCount: [0, 1.5] });
  });
  it('says what to do when nothing fell', () => {
    expect(() => spreaderCorrection({ wantedGPerM2: 30, measuredGPerM2: 0 })).toThrow(
      'Nothing fell out: open the gate',
    );
  });
});
