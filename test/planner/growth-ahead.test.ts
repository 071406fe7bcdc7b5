/** Days of growth and nights of frost ahead of a sowing, where the climate is known; nothing where it is not. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { daysBetween, parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { PlanStep } from '../../src/planner/plan.js';
import type { OwnClimate } from '../../src/rules/pack.js';
import { pack } from './any-lawn.js';

const lawn: Answers = JSON.parse(
  readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8'),
).answers;

function sowing(more: Answers, today: string, ownClimate?: OwnClimate): PlanStep {
  const { startOn: _, ...rest } = lawn;
  const { steps } = assemblePlan({
    pack: { ...pack, ownClimate },
    answers: { ...rest, ...more },
    today: parseIsoDate(today),
    assumeAll: true,
  });
  return steps.find(({ id }) => id === 'sow') as PlanStep;
}

/** Made up: means of a sine, coldest in the middle of the month given, 1 to 12. */
function sine(
  meanC: number,
  amplitudeC: number,
  coldest: number,
  airFrostDays?: readonly number[],
): OwnClimate {
  const means = Array.from(
    { length: 12 },
    (_, month) => meanC - amplitudeC * Math.cos(((month + 1 - coldest) / 6) * Math.PI),
  );
  const [tMinC, tMaxC] = [means.map((mean) => mean - 4), means.map((mean) => mean + 4)];
  return { from: 'made up', hasRange: true, tMinC, tMaxC, airFrostDays };
}

describe('a sowing in a known climate', () => {
  it('counts days until the soil is colder than grass grows in, as the sine says (Hillel 1982, yearly wave)', () => {
    // 10 - 8 cos(x) falls to 6 where cos(x) is 1/2: 60 degrees, 365 / 6 = 61 days, before the coldest day.
    // The coldest day is in the middle of January, so that is about 16 November.
    const { growth, startOn } = sowing({ place: 'unknown' }, '2027-08-20', sine(10, 8, 1));
    const wanted = daysBetween(startOn, parseIsoDate('2027-11-16'));
    expect(Math.abs((growth?.daysLeft ?? 0) - wanted)).toBeLessThanOrEqual(3);
    expect(growth?.aboveC).toBe(6);
    expect(growth?.says[0]).toMatch(/6 °C or warmer until about 1\d November: \d\d days of growth/);
  });

  it('of the south counts to the winter of the south', () => {
    const { growth, startOn } = sowing({ place: '-43.5, 172.6' }, '2027-02-20', sine(10, 8, 7));
    // Coldest in the middle of July: 61 days before it is about 16 May.
    const wanted = daysBetween(startOn, parseIsoDate('2027-05-16'));
    expect(Math.abs((growth?.daysLeft ?? 0) - wanted)).toBeLessThanOrEqual(3);
  });

  it('that is always warm says that growth goes on, and a cold one that there is none', () => {
    expect(sowing({ place: 'unknown' }, '2027-08-20', sine(15, 4, 1)).growth?.says[0]).toMatch(
      /6 °C or warmer all year/,
    );
    const cold = sowing({ place: 'unknown' }, '2027-08-20', sine(-5, 6, 1)).growth;
    expect(cold?.daysLeft).toBe(0);
    expect(cold?.says[0]).toMatch(/colder than 6 °C then, so that next to nothing grows/);
  });

  it('has the nights of air frost of its months, from the means of Braemar (Met Office station data, 1991-2020)', () => {
    const { growth } = sowing({ place: 'Braemar' }, '2027-08-20');
    const braemar = pack.climate.stations.find(({ name }) => name === 'Braemar');
    expect(growth?.frost.map(({ month }) => month)).toEqual([9, 10]);
    expect(growth?.frost.map(({ nights }) => nights)).toEqual(braemar?.airFrostDays.slice(8, 10));
    expect(growth?.says[1]).toMatch(
      /^Nights of air frost in a normal year here: September \d and October \d\.$/,
    );
  });

  it('says nothing of frost where the own climate has no frost days', () => {
    const { growth } = sowing({ place: 'unknown' }, '2027-08-20', sine(10, 8, 1));
    expect(growth?.frost).toEqual([]);
    expect(growth?.says).toHaveLength(1);
  });

  it('of warm-season grass counts from the warmth that such grass grows in', () => {
    const answers = { place: '33.5, -84.4', grassType: 'warm-season' };
    const { growth } = sowing(answers, '2027-04-01', sine(17, 10, 1));
    expect(growth?.aboveC).toBe(13);
  });
});

describe('a sowing where no climate is known', () => {
  it.each(['unknown', '-37.8, 144.9', '48.9, 2.3'])('has no numbers made up for it (%s)', (place) => {
    expect(sowing({ place }, '2027-02-20').growth).toBeNull();
  });
});
