import { describe, expect, it } from 'vitest';
import { dayOfYear, parseIsoDate } from '../../src/base/dates.js';
import { climateAt, climateFor, isSouthernHere } from '../../src/planner/climate.js';
import { placeOf } from '../../src/planner/place.js';
import { fitDaysOf } from '../../src/planner/windows.js';
import { pack } from './any-lawn.js';

const reach = { reachKm: 60, year: 2027 };
const at = (place: string) => climateAt(placeOf(place, pack.climate), pack.climate, reach);
const step = (opensAtC: number, closes?: { belowC: number; daysLeft: number }) =>
  ({
    window: {
      between: [
        { from: '04-01', until: '05-31', opensAtC },
        { from: '08-15', until: '09-30', ...(closes && { closes }) },
      ],
      why: 'warm soil',
      sources: [],
    },
  }) as never;
const season = (place: string) => ({
  southern: false,
  warmSeasonGrass: false,
  weekendsOnly: false,
  climate: at(place),
});
const numberOf = (value: unknown) => (typeof value === 'number' ? value : undefined);

/**
 * The same question answered another way: straight lines between the middles of the months instead of a wave,
 * over the Met Office station means (test/data/climate.test.ts holds them against the printed table).
 */
function warmFromByStraightLines(place: string, thresholdC: number): number {
  const { tMinC, tMaxC } = pack.climate.stations.find(({ name }) => name === place) as {
    tMinC: number[];
    tMaxC: number[];
  };
  const mean = (month: number) => ((tMinC[month] as number) + (tMaxC[month] as number)) / 2;
  const middle = (month: number) => (365 / 12) * (month + 0.5);
  for (let month = 0; month < 11; month++) {
    const [low, high] = [mean(month), mean(month + 1)];
    if (low < thresholdC && high >= thresholdC)
      return middle(month) + ((thresholdC - low) / (high - low)) * (365 / 12);
  }
  return Number.NaN;
}

describe('the season at a place', () => {
  it.each(pack.climate.stations.map(({ name }) => name))(
    'opens at %s within nine days of what straight lines between the months say',
    (name) => {
      const byLines = warmFromByStraightLines(name, 10);
      const first = dayOfYear(parseIsoDate('2027-04-01'));
      const last = dayOfYear(parseIsoDate('2027-05-31'));
      const opened = fitDaysOf(step(10), season(name), numberOf).nextFitDay(parseIsoDate('2027-03-01'));
      const opens = dayOfYear(opened);
      if (byLines > last + 9) expect(opened).toBe('2027-08-15');
      else if (byLines < last - 9) expect(Math.abs(opens - Math.max(first, byLines))).toBeLessThanOrEqual(9);
    },
  );

  it('is later in the north than in the south, and never sooner than the published months', () => {
    const opens = (place: string) =>
      fitDaysOf(step(10), season(place), numberOf).nextFitDay(parseIsoDate('2027-01-01'));
    expect(opens('Braemar') > opens('Oxford')).toBe(true);
    expect(opens('Lerwick') > opens('Braemar')).toBe(true);
    for (const { name } of pack.climate.stations) expect(opens(name) >= '2027-04-01').toBe(true);
  });

  it('closes in autumn while six weeks of growth are left', () => {
    const closes = (place: string) =>
      fitDaysOf(step(10, { belowC: 6, daysLeft: 42 }), season(place), numberOf).lastFitDay(
        parseIsoDate('2027-08-20'),
      ) as string;
    // By the station table Braemar has 7.3 C in October and 4.2 C in November: a straight line passes 6 C about
    // 28 October, and six weeks before it is 16 September. By hand; the wave may differ by some days.
    expect(closes('Braemar') > '2027-09-08' && closes('Braemar') < '2027-09-25').toBe(true);
    expect(closes('Oxford')).toBe('2027-09-30');
  });

  it('is the published months where no station is near', () => {
    expect(at('40, -100')).toBeUndefined();
    expect(at('51.9, -1.3')?.station?.name).toBe('Oxford');
    expect(fitDaysOf(step(10), season('40, -100'), numberOf).nextFitDay(parseIsoDate('2027-03-01'))).toBe(
      '2027-04-01',
    );
  });
});

describe('an own climate of the south', () => {
  // Oxford's means moved by half a year: whatever the season does there, it must do half a year earlier here.
  const oxford = pack.climate.stations.find(
    ({ name }) => name === 'Oxford',
  ) as (typeof pack.climate.stations)[0];
  const halfYear = (values: readonly number[]) => [...values.slice(6), ...values.slice(0, 6)];
  const ownClimate = {
    from: 'ours.csv',
    hasRange: true,
    tMinC: halfYear(oxford.tMinC),
    tMaxC: halfYear(oxford.tMaxC),
  };
  const own = { ...pack, ownClimate };

  it('is known as southern by its months where no place is given', () => {
    expect(isSouthernHere(own, undefined)).toBe(true);
    expect(isSouthernHere(pack, undefined)).toBe(false);
    expect(isSouthernHere(own, placeOf('51.9, -1.3', pack.climate))).toBe(false);
  });

  it('narrows the windows as the mirrored climate does in the north, within two days', () => {
    const north = fitDaysOf(step(10, { belowC: 10, daysLeft: 45 }), season('Oxford'), numberOf);
    const south = fitDaysOf(
      step(10, { belowC: 10, daysLeft: 45 }),
      { ...season('Oxford'), southern: true, climate: climateFor(own, undefined, reach) },
      numberOf,
    );
    const opensNorth = dayOfYear(north.nextFitDay(parseIsoDate('2027-03-01')));
    const opensSouth = dayOfYear(south.nextFitDay(parseIsoDate('2027-09-01')));
    expect(Math.abs(opensSouth - opensNorth - 365 / 2)).toBeLessThanOrEqual(2);
    const closesNorth = dayOfYear(north.lastFitDay(parseIsoDate('2027-08-20')) as never);
    const closesSouth = dayOfYear(south.lastFitDay(parseIsoDate('2027-02-20')) as never);
    expect(Math.abs(closesNorth - closesSouth - 365 / 2)).toBeLessThanOrEqual(3);
  });

  it('without a latitude gives no water use, and without rain no rain', () => {
    const climate = climateFor(own, undefined, reach);
    expect(climate?.waterUseMmOn(parseIsoDate('2027-01-15'))).toBeUndefined();
    expect(climate?.rainMmOn(parseIsoDate('2027-01-15'))).toBeUndefined();
    const placed = climateFor(own, placeOf('-51.8, 1.3', pack.climate), reach);
    // FAO-56 equations 21 and 52: summer water use of such a place is of the order of 4 mm a day.
    expect(placed?.waterUseMmOn(parseIsoDate('2027-01-15'))).toBeGreaterThan(3);
  });
});
