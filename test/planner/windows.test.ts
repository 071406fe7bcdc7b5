import { describe, expect, it } from 'vitest';
import { addDays, isInWindow, parseIsoDate, weekdayOf } from '../../src/base/dates.js';
import type { LocalClimate } from '../../src/planner/climate.js';
import { fitDaysOf, halfYearOn } from '../../src/planner/windows.js';
import type { Step } from '../../src/rules/schema.js';

const step = {
  window: {
    between: [
      { from: '04-01', until: '05-31' },
      { from: '08-15', until: '09-30' },
    ],
    why: 'warm soil',
    sources: [],
  },
  labour: { formula: 'hand-hours', inputs: {} },
} as unknown as Step;
const numberOf = (expression: unknown) => (typeof expression === 'number' ? expression : undefined);
const north = { southern: false, warmSeasonGrass: false, weekendsOnly: false };

describe('the days that fit a step', () => {
  it('are those inside a window, or the day the next window opens', () => {
    const { nextFitDay } = fitDaysOf(step, north, numberOf);
    expect(nextFitDay(parseIsoDate('2027-04-20'))).toBe('2027-04-20');
    expect(nextFitDay(parseIsoDate('2027-06-01'))).toBe('2027-08-15');
    expect(nextFitDay(parseIsoDate('2027-10-01'))).toBe('2028-04-01');
  });

  // Published windows for the south: sow March to May or September to November (New Zealand Herald, general page);
  // the shift by six months is common practice.
  it('lie half a year on in the south', () => {
    const { nextFitDay } = fitDaysOf(step, { ...north, southern: true }, numberOf);
    expect(nextFitDay(parseIsoDate('2027-03-10'))).toBe('2027-03-10');
    expect(nextFitDay(parseIsoDate('2027-01-10'))).toBe('2027-02-15');
    expect(nextFitDay(parseIsoDate('2027-06-10'))).toBe('2027-10-01');
  });

  it('are Saturdays and Sundays inside the window when only weekends are free', () => {
    const { nextFitDay, lastFitDay } = fitDaysOf(step, { ...north, weekendsOnly: true }, numberOf);
    for (let day = parseIsoDate('2027-01-01'), left = 400; left > 0; day = addDays(day, 1), left--) {
      const fit = nextFitDay(day);
      expect(weekdayOf(fit)).toBeGreaterThanOrEqual(6);
      expect(step.window?.between.some((window) => isInWindow(fit, window))).toBe(true);
      expect((lastFitDay(fit) as string) >= fit).toBe(true);
    }
  });
});

describe('a window narrowed by the soil', () => {
  it('may open on 29 February, in years that have none too', () => {
    const early = {
      ...step,
      window: { ...step.window, between: [{ from: '02-29', until: '05-31', opensAtC: 8 }] },
    } as unknown as Step;
    // 8 degrees are reached on day 80, which is 21 March and in a leap year 20 March.
    const climate = (year: number) =>
      ({ year, period: '', soilCOn: (day: number) => day / 10 }) as unknown as LocalClimate;
    const opens = (year: number) =>
      fitDaysOf(early, { ...north, climate: climate(year) }, numberOf).nextFitDay(
        parseIsoDate(`${year}-01-01`),
      );
    expect(opens(2027)).toBe('2027-03-21');
    expect(opens(2028)).toBe('2028-03-20');
  });
});

describe('half a year on', () => {
  it.each([
    ['04-01', '10-01'],
    ['08-31', '02-28'],
    ['02-28', '08-31'],
    ['12-15', '06-15'],
    ['09-30', '03-31'],
  ])('%s becomes %s', (from, to) => {
    expect(halfYearOn(from)).toBe(to);
  });
});
