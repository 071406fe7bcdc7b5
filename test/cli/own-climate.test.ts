/** The user's own climate: monthly means and daily weather in the units of their headings. */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readClimate } from '../../src/cli/read-climate.js';
import { readPlace } from '../../src/cli/read-place.js';
import { pack } from '../planner/any-lawn.js';
import { newFolder, run } from './run.js';

const read = (text: string) => readClimate(text, 'weather.csv', pack);
const faultOf = (text: string): string => {
  try {
    read(text);
  } catch (error) {
    return (error as Error).message;
  }
  return 'no fault';
};

/** NOAA, U.S. Climate Normals 1991-2020, station USW00094765 (Lebanon Municipal Airport), as printed: F and inches. */
const LEBANON = {
  tmin: [9.3, 11.0, 20.7, 31.9, 43.7, 52.4, 57.8, 56.2, 48.6, 37.4, 27.7, 18.1],
  tmax: [30.3, 33.9, 43.0, 56.6, 69.7, 77.9, 82.7, 81.1, 72.9, 59.8, 46.8, 35.5],
  rain: [2.29, 2.1, 2.7, 2.99, 3.32, 3.8, 3.99, 3.62, 3.44, 4.0, 2.98, 2.84],
};
const monthly = (head: string): string =>
  [head, ...LEBANON.tmin.map((least, i) => [i + 1, least, LEBANON.tmax[i], LEBANON.rain[i]].join(','))].join(
    '\n',
  );

/** Every day of two years; the figures repeat so that each mean is plain. */
const daily = (head: string, row: (month: number) => string): string => {
  const lines = [head];
  for (let day = Date.UTC(2025, 0, 1); day < Date.UTC(2027, 0, 1); day += 86_400_000) {
    const date = new Date(day);
    lines.push(`${date.toISOString().slice(0, 10)},${row(date.getUTCMonth() + 1)}`);
  }
  return lines.join('\n');
};

describe('twelve monthly means', () => {
  it('in Fahrenheit and inches become Celsius and millimetres (NOAA normals; NIST Handbook 44: 25.4 mm an inch)', () => {
    const own = read(monthly('month,tmin_f,tmax_f,rain_in'));
    const printed = (values: readonly number[]): number[] => values.map((value) => Number(value.toFixed(2)));
    expect(printed(own.tMinC.map((c) => c * 1.8 + 32))).toEqual(LEBANON.tmin);
    expect(printed(own.tMaxC.map((c) => c * 1.8 + 32))).toEqual(LEBANON.tmax);
    expect(printed((own.rainMm ?? []).map((mm) => mm / 25.4))).toEqual(LEBANON.rain);
  });

  it('of Richmond in January are -2.1 and 8.6 C and 77.2 mm, from the tenths and hundredths NOAA prints', () => {
    const rows = Array.from({ length: 12 }, (_, i) => `${i + 1},28.3,47.4,3.04`);
    const own = read(['month,Min temp (°F),Max temp (°F),Rainfall (in)', ...rows].join('\n'));
    expect(own.tMinC[0]).toBeCloseTo(-2.1, 1);
    expect(own.tMaxC[0]).toBeCloseTo(8.6, 1);
    expect(own.rainMm?.[0]).toBeCloseTo(77.2, 1);
  });

  it('read the same from JSON lists as from CSV', () => {
    const json = read(JSON.stringify({ tMinF: LEBANON.tmin, tMaxF: LEBANON.tmax, rainIn: LEBANON.rain }));
    expect(json).toEqual(read(monthly('month,tmin_f,tmax_f,rain_in')));
  });

  it('may be means alone, and then give no range to work water use out from', () => {
    const rows = Array.from({ length: 12 }, (_, i) => `${i + 1};${i},5`);
    const own = read(['month;mean_c', ...rows].join('\n'));
    expect(own.hasRange).toBe(false);
    expect(own.tMinC).toEqual(own.tMaxC);
    expect(own.tMinC[3]).toBe(3.5);
    expect(own.rainMm).toBeUndefined();
  });
});

describe('daily weather', () => {
  it('becomes the mean of each month, rain a month and days of frost', () => {
    const own = read(daily('date,tmin_c,tmax_c,rain_mm', (month) => (month === 1 ? '-2,4,2' : '5,15,1')));
    expect([own.tMinC[0], own.tMaxC[0], own.tMinC[6]]).toEqual([-2, 4, 5]);
    expect([own.rainMm?.[0], own.rainMm?.[3]]).toEqual([62, 30]);
    expect([own.airFrostDays?.[0], own.airFrostDays?.[3]]).toEqual([31, 0]);
    expect(own.from).toBe('weather.csv, 730 days from 2025-01-01 to 2026-12-31');
  });

  it('passes over gaps, and counts them as nothing measured, not as 0', () => {
    let row = 0;
    const own = read(daily('date,tmin_c,tmax_c,rain_mm', () => (row++ % 7 === 0 ? 'NA,,' : '5,15,1')));
    expect(own.tMinC.every((c) => c === 5)).toBe(true);
    expect(own.rainMm?.[0]).toBe(31);
  });

  it('with too few days in a month is refused with the month and the count', () => {
    expect(faultOf('date,tmin_c,tmax_c\n2026-01-01,1,2')).toMatch(/January 1, February 0.*20 or more/);
  });
});

describe('a file that cannot be understood', () => {
  it.each([
    ['date,tmin,tmax_c\n2026-01-01,1,2', /line 1: the heading "tmin" gives no unit.*"tmin_c"/],
    [
      'date,tmin_c,tmax_c\n2026-01-01,1,2\n2026-01-02,183,250',
      /line 3: the minimum temperature is "183".*-90 to 57 C.*tenths/,
    ],
    ['date,tmin_c,tmax_c\n01/02/2026,1,2', /line 2: the date is "01\/02\/2026".*YYYY-MM-DD/],
    ['date,tmin_c,tmax_c\n2026-02-30,1,2', /line 2: the date is "2026-02-30"/],
    ['date,tmin_c,tmax_c\n2026-01-01,9,2', /line 2: the minimum 9 is above the maximum 2.*swapped/],
    ['date,tmin_c,tmax_c\n2026-01-01,cold,2', /line 2: the minimum temperature is "cold".*a number/],
    ['date,tmin_c,tmax_c\n2026-01-01,1,2\n2026-01-01,1,2', /line 3: 2026-01-01 stands on an earlier line/],
    [
      'date,tmin_c,min_c,tmax_c\n2026-01-01,1,1,2',
      /line 1: more than one column holds the minimum temperature/,
    ],
    [
      'when,tmin_c,tmax_c\n2026-01-01,1,2',
      /line 1: found "when", "tmin_c", "tmax_c": one column must be the date/,
    ],
    ['date,tmin_c\n2026-01-01,1', /line 1:.*minimum and the maximum temperature are needed/],
    ['month,tmin_c,tmax_c\n1,1,2\nFeb,1,2', /found 2 months, missing March/],
    ['date,tmin_c,tmax_c\n2026-01-01,1', /cannot be read as CSV: Invalid Record Length.*line 2/],
    ['', /no rows were found/],
    ['{"tMinC": [1, 2]}', /"tMinC" is a list of 2. Allowed: a list of 12 numbers/],
  ])('%j is answered with the line, what was found and what is allowed', (text, says) => {
    expect(faultOf(text)).toMatch(says);
  });
});

describe('a plan with an own climate', () => {
  const folder = newFolder();
  const lawn = join(folder, 'lawn.json');
  const file = join(folder, 'ours.csv');
  const plan = (answers: object) => {
    writeFileSync(
      lawn,
      JSON.stringify({ format: 1, answers: { mossFraction: 0.4, areaM2: 84, ...answers } }),
    );
    writeFileSync(file, monthly('month,tmin_f,tmax_f,rain_in'));
    return run(['plan', lawn, '--assume', '--today', '2027-07-01', '--climate', file, '--format', 'json']);
  };

  const southern = (words: readonly string[]) => {
    if (words[0] !== 'batch')
      writeFileSync(lawn, JSON.stringify({ format: 1, answers: { place: '-33.9, 151.2', areaM2: 84 } }));
    writeFileSync(file, monthly('month,tmin_f,tmax_f,rain_in'));
    return run([...words, '--climate', file]);
  };

  it('names the file in place of a station, and takes rain and water use from it', () => {
    const made = JSON.parse(plan({ place: '43.6, -72.3' }).out);
    expect(made.climate).toMatchObject({
      station: null,
      km: null,
      period: 'ours.csv, twelve monthly means',
      licenceLine: null,
    });
    expect(made.climate.own.tMinC).toHaveLength(12);
    expect(made.watering[0].rainMmPerDay).toBeGreaterThan(0);
  });

  it('without a place has no latitude, so that the water of the seedbed stays the published one', () => {
    const made = JSON.parse(plan({}).out);
    const without = JSON.parse(
      run(['plan', lawn, '--assume', '--today', '2027-07-01', '--format', 'json']).out,
    );
    expect(made.watering[0].mmPerDay).toBe(without.watering[0].mmPerDay);
  });

  it('of the other half of the earth is refused with exit code 3: what was found, and what to do', () => {
    const made = join(folder, 'plan.md');
    const { code, out, err } = southern(['plan', lawn, '--assume', '--out', made]);
    expect([code, out, existsSync(made)]).toEqual([3, '', false]);
    expect(err).toMatch(/"place" is "-33\.9, 151\.2".*south.*ours\.csv.*April to September.*--climate/s);
    for (const words of [
      ['compare', lawn, '--set', 'mossFraction=0.1'],
      ['ask', '--plain', '--answers', lawn],
    ])
      expect(southern(words).code, words.join(' ')).toBe(3);
    writeFileSync(lawn, JSON.stringify({ place: '-33.9, 151.2', areaM2: 84 }));
    expect(JSON.parse(southern(['batch', lawn, '--assume']).out).error).toMatchObject({ code: 3 });
  });

  it('of the other half is not taken with a place that is typed', () => {
    const there = readPlace('-33.9, 151.2', {
      ...pack,
      ownClimate: read(monthly('month,tmin_f,tmax_f,rain_in')),
    });
    expect(there).toMatchObject({ kind: 'refused' });
    expect(readPlace('-33.9, 151.2', pack)).toMatchObject({ kind: 'odd' });
  });

  it('stops with exit code 3 and writes nothing when the file is no climate', () => {
    writeFileSync(file, 'date,tmin\n2026-01-01,1');
    const { code, out, err } = run(['plan', lawn, '--assume', '--climate', file]);
    expect([code, out]).toEqual([3, '']);
    expect(err).toContain('ours.csv, line 1');
  });
});
