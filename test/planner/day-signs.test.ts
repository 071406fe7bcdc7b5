/** What is said of soil, rain and frost on the day of a step. */
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import { drawnDown } from '../../src/planner/day-signs.js';
import { pack } from './any-lawn.js';

const sandyLoam = { fieldCapacityFraction: 0.23, wiltingPointFraction: 0.11, rootDepthMm: 150 };
const dried = (days: number) => drawnDown(sandyLoam, { days, fullUseMmOn: () => 3.5, tableFraction: 0.4 });

describe('the soil water since the last rain', () => {
  // FAO-56 by hand: TAW = 0.12 x 150 (equation 82, table 19); p = 0.40 + 0.04 (5 - 3.5) (table 22); RAW = p TAW.
  it('has the store and the easy part that the equations of FAO-56 give', () => {
    expect(dried(0)).toEqual({ usedMm: 0, storeMm: expect.closeTo(18, 9), easyMm: expect.closeTo(8.28, 9) });
  });

  it('falls by the full use while it is easy, then slower by equation 84', () => {
    expect(dried(3).usedMm).toBeCloseTo(10.5, 9);
    // Past RAW what is left shrinks each day by the same share, ETc / ((1 - p) TAW): equations 84 and 85.
    const share = 3.5 / ((1 - 0.46) * 18);
    for (const days of [4, 6, 10, 30])
      expect(dried(days).usedMm).toBeCloseTo(18 - 7.5 * (1 - share) ** (days - 3), 9);
  });
});

describe('a step', () => {
  const lawn = {
    place: 'Oxford',
    areaM2: 60,
    mossFraction: 0.4,
    soilTexture: 'sandy-loam',
    lastRainDaysAgo: 1,
    rainComing: 'dry',
    grassType: 'ryegrass-mix',
    mossTreatment: 'label',
    labelRateMlPerM2: 20,
    labelWaterLPerM2: 1,
    labelWaitDays: 14,
    startOn: '2027-08-20',
  };
  const expectations = (answers: object, today = '2027-08-20') => {
    const { steps } = assemblePlan({
      pack,
      answers: { ...lawn, ...answers },
      today: parseIsoDate(today),
      assumeAll: true,
    });
    const checks = steps.find(({ id }) => id === 'treat-moss')?.dayChecks ?? [];
    return checks.flatMap(({ expect: says }) => (says === null ? [] : [says])).join(' ');
  };

  it('near the day says whether the soil is wet, moist or too dry', () => {
    expect(expectations({ lastRainDaysAgo: 0 })).toMatch(/only shortly before/);
    // FAO, field capacity: soil is measured as drained after 48 hours.
    expect(expectations({ lastRainDaysAgo: 1 })).toMatch(/only shortly before/);
    // Two days of some 3 mm each, out of 0.15 m of soil that holds 0.23 less 0.11 (FAO-56, table 19): 18 mm.
    expect(expectations({ lastRainDaysAgo: 2 })).toMatch(/should be moist: about [67].mm of the 18.mm/);
    expect(expectations({ lastRainDaysAgo: 5 })).toMatch(/too dry/);
  });

  it('says sand is dry while clay is still moist', () => {
    expect(expectations({ lastRainDaysAgo: 2, soilTexture: 'sand' })).toMatch(/too dry/);
    expect(expectations({ lastRainDaysAgo: 2, soilTexture: 'clay' })).toMatch(/moist/);
  });

  it('says what forecast was given, and only for the days that it covers', () => {
    expect(expectations({ rainComing: 'showers' })).toMatch(/go only if it holds off/);
    expect(expectations({ rainComing: 'wet' }, '2027-08-10')).toBe('');
  });

  it('has every word of its sentences filled', () => {
    const said = [0, 1, 5].map((lastRainDaysAgo) =>
      expectations({ lastRainDaysAgo, startOn: '2028-03-01' }, '2028-03-01'),
    );
    expect(said.join(' ')).toMatch(/frost/);
    expect(said.join(' ')).not.toContain('$');
  });

  it('says nothing of the soil without place, soil or rain, rather than assume them', () => {
    for (const answers of [
      { place: 'unknown' },
      { soilTexture: 'unknown' },
      { lastRainDaysAgo: 'unknown' },
      { place: '40, -100' },
    ])
      expect(expectations(answers), JSON.stringify(answers)).not.toMatch(/used up/);
  });

  it('names the nights of frost of its month where they are usual, however far it is', () => {
    expect(expectations({ startOn: '2028-03-01' }, '2027-11-01')).toMatch(
      /A normal March has 4 nights of air frost/,
    );
  });
});
