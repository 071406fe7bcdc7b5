import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dailyVibrationMPerS2,
  hoursToDailyVibration,
  vibrationPoints,
} from '../../src/agronomy/vibration.js';
import { expectReal, expectRefusals } from './refusals.js';

const vibration = fc.double({ min: 0.1, max: 30, noNaN: true });
const hours = fc.double({ min: 0, max: 8, noNaN: true });

describe('vibration', () => {
  it('is its own daily value after eight hours', () => {
    fc.assert(
      fc.property(vibration, (vibrationMPerS2) => {
        expect(dailyVibrationMPerS2({ spells: [{ vibrationMPerS2, hours: 8 }] })).toBeCloseTo(
          vibrationMPerS2,
          9,
        );
      }),
    );
  });
  it('adds up the same whether a spell is worked in one go or two', () => {
    fc.assert(
      fc.property(vibration, hours, (vibrationMPerS2, time) => {
        const whole = dailyVibrationMPerS2({ spells: [{ vibrationMPerS2, hours: time }] });
        const half = { vibrationMPerS2, hours: time / 2 };
        expectReal(whole);
        expect(dailyVibrationMPerS2({ spells: [half, half] })).toBeCloseTo(whole, 9);
      }),
    );
  });
  it('reaches a daily value in just the hours it says', () => {
    fc.assert(
      fc.property(fc.double({ min: 2.5, max: 30, noNaN: true }), (vibrationMPerS2) => {
        const time = hoursToDailyVibration({ vibrationMPerS2, dailyMPerS2: 2.5 });
        expect(dailyVibrationMPerS2({ spells: [{ vibrationMPerS2, hours: time }] })).toBeCloseTo(2.5, 9);
      }),
    );
  });
  it('is nothing for a day without machines', () => expect(dailyVibrationMPerS2({ spells: [] })).toBe(0));
  it('can need more than a day to reach a value', () => {
    expect(hoursToDailyVibration({ vibrationMPerS2: 1, dailyMPerS2: 2.5 })).toBe(50);
  });
  it('is refused when it cannot be', () => {
    expectRefusals(vibrationPoints, { vibrationMPerS2: 5, hours: 2 }, { hours: [25] });
    const valid = { vibrationMPerS2: 5, dailyMPerS2: 2.5 };
    expectRefusals(hoursToDailyVibration, valid, { vibrationMPerS2: [0], dailyMPerS2: [0] });
  });
});
