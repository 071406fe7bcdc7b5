/** The seasons of the rules as they are at a place, worked out without the planner's own windows. */
import type { YearlyWindow } from '../../src/base/dates.js';
import type { Answers } from '../../src/interview/answers.js';
import { isSouthern, placeOf } from '../../src/planner/place.js';
import { halfYearOn } from '../../src/planner/windows.js';
import type { Step } from '../../src/rules/schema.js';
import { pack } from './any-lawn.js';

/** Met Office stations whose soil is colder than 10 C on 10 May by the table (test/data/climate.test.ts). */
export const LATE_SPRINGS = [
  'Lerwick',
  'Braemar',
  'Wick Airport',
  'Stornoway',
  'Eskdalemuir',
  'Ballypatrick Forest',
];

/** By the place, else by the half of the earth that was told; nothing told counts as north. */
export function isSouthHere({ place, plainClimate }: Answers): boolean {
  const at = typeof place === 'string' ? placeOf(place, pack.climate) : undefined;
  return at === undefined ? plainClimate === 'south' : isSouthern(at);
}

/** The published days of a step on this half; undefined where any day will do by the warmth of the soil. */
export function publishedHere(step: Step, answers: Answers): readonly YearlyWindow[] | undefined {
  const { window } = step;
  if (window === undefined) return undefined;
  const rules = answers.grassType === 'warm-season' && window.warmSeason ? window.warmSeason : window.between;
  const station =
    typeof answers.place === 'string' ? placeOf(answers.place, pack.climate)?.station : undefined;
  const isNear = station !== undefined && station.km < 60;
  if (isNear && rules.some(({ whileGrowing }) => whileGrowing !== undefined)) return undefined;
  const isLate = isNear && LATE_SPRINGS.includes(station.name);
  const windows = rules.map(({ from, until, lateUntil }) => ({
    from,
    until: isLate ? (lateUntil ?? until) : until,
  }));
  return isSouthHere(answers)
    ? windows.map(({ from, until }) => ({ from: halfYearOn(from), until: halfYearOn(until) }))
    : windows;
}
