import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  daysToThermalTime,
  fieldEmergenceDays,
  germinationDays,
  germinationPerDay,
  growingDaysLeft,
} from '../../src/agronomy/germination.js';

// An invented seed: base 3 °C, 60 °C day.
const seed = { baseC: 3, thermalTimeCDays: 60 };

describe('germination', () => {
  // 60 ÷ (15 − 3) = 5 days; at 9 °C half the warmth, twice the days.
  it('takes 5 days at 15 °C and 10 at 9 °C', () => {
    expect(germinationDays({ ...seed, soilC: 15 })).toBeCloseTo(5, 12);
    expect(germinationDays({ ...seed, soilC: 9 })).toBeCloseTo(10, 12);
  });

  it('does not come at or below the base, and is then no number at all', () => {
    expect(germinationDays({ ...seed, soilC: 3 })).toBeUndefined();
    expect(germinationDays({ ...seed, soilC: -5 })).toBeUndefined();
    expect(germinationPerDay({ ...seed, soilC: -5 })).toBe(0);
  });

  it('is never slower in warmer soil', () => {
    fc.assert(
      fc.property(fc.double({ min: 3.1, max: 25, noNaN: true }), (soilC) => {
        expect(germinationPerDay({ ...seed, soilC: soilC + 0.5 })).toBeGreaterThan(
          germinationPerDay({ ...seed, soilC }),
        );
      }),
    );
  });

  it('in the field is the dish stretched', () => {
    expect(fieldEmergenceDays({ dishDays: 8, stretch: 1.5 })).toBe(12);
    expect(() => fieldEmergenceDays({ dishDays: 8, stretch: 0.9 })).toThrow('stretch');
  });

  it('is refused for a thermal time of nothing', () => {
    expect(() => germinationDays({ baseC: 3, thermalTimeCDays: 0, soilC: 10 })).toThrow('thermalTimeCDays');
    expect(() => germinationPerDay({ ...seed, soilC: Number.NaN })).toThrow('soilC');
  });
});

describe('thermal time in soil that changes', () => {
  // Worked out by hand: 13 °C gives 10 a day; three days make 30, then 18 °C gives 15 a day, two days make 30: 5 days.
  it('adds up day by day', () => {
    const soil = [13, 13, 13, 18, 18, 18];
    expect(daysToThermalTime({ ...seed, soilCOn: (day) => soil[day] ?? 0, limitDays: 6 })).toBeCloseTo(5, 9);
  });

  it('counts the part of the last day that was needed', () => {
    expect(daysToThermalTime({ ...seed, soilCOn: () => 11, limitDays: 30 })).toBeCloseTo(7.5, 9);
  });

  it('does not wait a day longer because eight tenths added up are a hair short of 0.8 in binary', () => {
    const tenths = { baseC: 0, thermalTimeCDays: 0.8, soilCOn: () => 0.1, limitDays: 8 };
    expect(daysToThermalTime(tenths)).toBeCloseTo(8, 9);
  });

  it('stands still through a cold spell', () => {
    const soil = [13, 13, 13, 0, -4, 13, 13, 13];
    expect(daysToThermalTime({ ...seed, soilCOn: (day) => soil[day] ?? 0, limitDays: 8 })).toBeCloseTo(8, 9);
  });

  it('is not reached when the soil stays cold or the time is too short', () => {
    expect(daysToThermalTime({ ...seed, soilCOn: () => 2, limitDays: 200 })).toBeUndefined();
    expect(daysToThermalTime({ ...seed, soilCOn: () => 11, limitDays: 7 })).toBeUndefined();
  });

  it('at a steady temperature takes the days of the plain division', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 25, noNaN: true }), (soilC) => {
        const byDay = daysToThermalTime({ ...seed, soilCOn: () => soilC, limitDays: 60 });
        expect(byDay).toBeCloseTo(germinationDays({ ...seed, soilC }) ?? Number.NaN, 6);
      }),
    );
  });

  it('is refused for a limit of no days and for soil without a temperature', () => {
    expect(() => daysToThermalTime({ ...seed, soilCOn: () => 10, limitDays: 0 })).toThrow('limitDays');
    expect(() => daysToThermalTime({ ...seed, soilCOn: () => Number.NaN, limitDays: 5 })).toThrow('soilC');
  });
});

describe('growing days left', () => {
  const cooling = (day: number) => 15 - day / 4;

  // 15 − day ÷ 4 is 8 on day 28 and under 8 on day 29; days 0 to 28 are 29 days.
  it('are counted to the last day that is not under the threshold', () => {
    expect(growingDaysLeft({ soilCOn: cooling, thresholdC: 8, limitDays: 100 })).toBe(29);
  });

  it('are none when it is too cold already, and stop at the limit', () => {
    expect(growingDaysLeft({ soilCOn: cooling, thresholdC: 16, limitDays: 100 })).toBe(0);
    expect(growingDaysLeft({ soilCOn: cooling, thresholdC: 8, limitDays: 10 })).toBe(10);
  });

  it('are refused without a threshold', () => {
    expect(() => growingDaysLeft({ soilCOn: cooling, thresholdC: Number.NaN, limitDays: 10 })).toThrow(
      'thresholdC',
    );
  });
});
