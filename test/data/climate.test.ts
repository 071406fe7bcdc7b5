import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

// The checks on the table of monthly means, 1991 to 2020, worked out from the station records of the
// Met Office (Open Government Licence). The totals and extremes were taken from those records before
// the table was typed in here, so they catch a slip of the pen or a lost station.
interface Station {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  readonly tMinC: readonly number[];
  readonly tMaxC: readonly number[];
  readonly rainMm: readonly number[];
  readonly airFrostDays: readonly number[];
  readonly minYears: number;
}

const read = (file: string) =>
  JSON.parse(readFileSync(new URL(`../../rules/climate/${file}`, import.meta.url), 'utf8'));
const table: { licenceLine: string; period: string; sourceId: string; stations: readonly Station[] } =
  read('uk-stations.json');
const { stations } = table;

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]) => sum(values) / values.length;
const at = (values: readonly number[], index: number) => values[index] ?? Number.NaN;
const station = (name: string) => {
  const found = stations.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no station ${name}`);
  return found;
};
const yearMeanC = (one: Station) => mean([...one.tMinC, ...one.tMaxC]);
const nameOfLeast = (value: (one: Station) => number) =>
  [...stations].sort((a, b) => value(a) - value(b))[0]?.name;

const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

describe('the table of stations', () => {
  it('names licence, source and period', () => {
    expect(table.licenceLine).toContain(
      'Contains public sector information licensed under the Open Government Licence v3.0',
    );
    expect(table.licenceLine).toContain('Met Office historic station data');
    expect(table.sourceId).toBe('met-office-station-data');
    expect(table.period).toBe('1991-2020');
  });

  it('has 31 stations, each once, in the order of their names', () => {
    const names = stations.map((one) => one.name);
    expect(names).toHaveLength(31);
    expect(new Set(names).size).toBe(31);
    expect(names).toEqual([...names].sort());
  });

  it.each(stations)('has possible values for $name', (one) => {
    for (const list of [one.tMinC, one.tMaxC, one.rainMm, one.airFrostDays]) expect(list).toHaveLength(12);
    for (let month = 0; month < 12; month++) {
      expect(at(one.tMaxC, month)).toBeGreaterThan(at(one.tMinC, month));
      expect(at(one.rainMm, month)).toBeGreaterThan(0);
      expect(at(one.airFrostDays, month)).toBeGreaterThanOrEqual(0);
      expect(at(one.airFrostDays, month)).toBeLessThanOrEqual(at(DAYS, month));
    }
    expect(one.latitudeDeg).toBeGreaterThan(49.8);
    expect(one.latitudeDeg).toBeLessThan(60.9);
    expect(one.longitudeDeg).toBeGreaterThan(-8.7);
    expect(one.longitudeDeg).toBeLessThan(1.8);
    expect(one.elevationM).toBeGreaterThanOrEqual(0);
    expect(one.elevationM).toBeLessThan(400);
    expect(one.minYears).toBeGreaterThanOrEqual(25);
    expect(one.minYears).toBeLessThanOrEqual(30);
  });

  it.each(stations)(
    'is warmest in July or August at $name, with no summer frost but on high ground',
    (one) => {
      expect([6, 7]).toContain(one.tMaxC.indexOf(Math.max(...one.tMaxC)));
      if (one.elevationM < 150) expect(sum(one.airFrostDays.slice(5, 8))).toBe(0);
    },
  );

  it('has Eskdalemuir as the wettest', () => {
    expect(nameOfLeast((one) => -sum(one.rainMm))).toBe('Eskdalemuir');
  });

  it('has Braemar as the coldest over the year, at 7.0 °C', () => {
    expect(nameOfLeast(yearMeanC)).toBe('Braemar');
    expect(yearMeanC(station('Braemar'))).toBeCloseTo(7.0, 1);
  });

  it('has the lowest July maximum at Lerwick, 14.4 °C', () => {
    expect(nameOfLeast((one) => at(one.tMaxC, 6))).toBe('Lerwick');
    expect(at(station('Lerwick').tMaxC, 6)).toBe(14.4);
  });

  it.each([
    ['Cambridge NIAB', 563],
    ['Oxford', 681],
    ['Eskdalemuir', 1829],
  ])('has a yearly rain at %s of %i mm', (name, expectedMm) => {
    expect(Math.round(sum(station(name).rainMm))).toBe(expectedMm);
  });
});
