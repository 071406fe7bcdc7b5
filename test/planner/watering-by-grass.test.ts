/**
 * Weeks 4 to 6 of a sowing are watered by the factor of the grass that is sown.
 * FAO Irrigation and Drainage Paper 56, table 12: turf uses 0.95 of the reference crop in cool climates, warm-season
 * turf 0.85.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, parseIsoDate } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import { climateFor } from '../../src/planner/climate.js';
import { placeOf } from '../../src/planner/place.js';
import type { PlanWatering } from '../../src/planner/plan.js';
import type { OwnClimate, Pack } from '../../src/rules/pack.js';
import { pack } from './any-lawn.js';

const { startOn: _, ...lawn } = (
  JSON.parse(readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8')) as {
    answers: Answers;
  }
).answers;

/** Made up: warm enough for either grass all year round. */
const WARM: OwnClimate = {
  from: 'made up',
  hasRange: true,
  tMinC: [10, 11, 13, 16, 19, 22, 23, 23, 22, 18, 14, 11],
  tMaxC: [20, 21, 24, 27, 30, 32, 33, 33, 31, 28, 24, 21],
};
const FLORIDA = '30.4, -84.3';

const later = (more: Answers, used: Pack): PlanWatering =>
  assemblePlan({
    pack: used,
    answers: { ...lawn, ...more },
    today: parseIsoDate('2027-04-01'),
    assumeAll: true,
  }).watering.at(-1) as PlanWatering;

describe.each([
  ['ryegrass-mix', 0.95],
  ['tall-fescue', 0.95],
  ['warm-season', 0.85],
] as const)('sown %s', (grassType, factor) => {
  const answers = { grassType, dog: false, children: false, hardWear: false };

  it(`gets ${factor} of the reference crop in weeks 4 to 6 where the climate is known`, () => {
    const own = { ...pack, ownClimate: WARM };
    const place = placeOf(FLORIDA, pack.climate);
    const { fromOn, untilOn, mmPerDay } = later({ ...answers, place: FLORIDA }, own);
    const middle = addDays(fromOn, Math.floor(daysBetween(fromOn, untilOn) / 2));
    const climate = climateFor(own, place, { reachKm: 60, year: 2027 });
    expect(mmPerDay / (climate?.waterUseMmOn(middle) ?? 0)).toBeCloseTo(factor, 2);
  });

  it('gets it of the flat rate where no climate is known', () => {
    // 4 mm on a seedbed are 125 % of the day's water use (Ohio State University), so 3.2 mm are the whole of it.
    const { mmPerDay } = later({ ...answers, place: 'unknown' }, pack);
    expect(mmPerDay).toBeCloseTo((4 / 1.25) * factor, 1);
  });

  it('says that the grass decides', () => {
    expect(later(answers, pack).from.answers).toContain('grassType');
  });
});
