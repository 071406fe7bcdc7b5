/** An invented lawn with nothing wrong and every question answered, for tests that change one thing at a time. */
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { pack } from './any-lawn.js';

const PLAIN: Answers = {
  lawnName: 'An invented lawn',
  place: 'Oxford',
  areaM2: 100,
  measuredBy: 'tape',
  dog: false,
  children: false,
  pavingBeside: false,
  waterWithinM: 60,
  buriedServices: 'none',
  slopeDeg: 2,
  treesNear: false,
  sownOn: 'no',
  mossFraction: 0.02,
  weedFraction: 0.02,
  bareFraction: 0.02,
  weedKind: 'broad-leaved',
  gapsOverHand: false,
  lawnColour: 'green',
  footprints: 'spring-back',
  puddles: 'none',
  sunHoursPerDay: 7,
  levels: 'even',
  mowerCut: 'clean',
  grassType: 'ryegrass-mix',
  hardWear: false,
  underfoot: 'firm',
  thatchDepthMm: 8,
  rootsInThatch: false,
  screwdriver: 'easy',
  soilCrumbs: 'crumbly',
  soilTexture: 'loam',
  soilPh: 6.5,
  dropSeconds: 2,
  mowingHeightMm: 35,
  lastFedWeeksAgo: 20,
  lastScarifiedYearsAgo: 4,
  weedkiller: 'no',
  lastRainDaysAgo: 2,
  rainComing: 'dry',
  scarifier: 'electric',
  mossTreatment: 'rake-only',
  spreader: 'hand',
  feedFirstNumber: 12,
  watering: 'sprinkler',
  hoseLPerMin: 15,
  wateringBan: false,
};

/** The plan for the plain lawn with these answers in place of its own; undefined leaves one unanswered. */
export function planFor(
  changes: Readonly<Record<string, AnswerValue | undefined>>,
  startOn: string,
  units: 'metric' | 'us' = 'metric',
): Plan {
  const all = { ...PLAIN, startOn, ...changes };
  const answers = Object.fromEntries(
    Object.entries(all).filter(([, value]) => value !== undefined),
  ) as Answers;
  return assemblePlan({ pack, answers, today: parseIsoDate(startOn), assumeAll: true, units });
}

export const stepsOf = (plan: Plan): string[] => plan.steps.map(({ id }) => id);

export const step = (plan: Plan, id: string) => {
  const found = plan.steps.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no step ${id}; there is ${stepsOf(plan).join(', ')}`);
  return found;
};

export const foundIn = (plan: Plan): string[] =>
  plan.findings.filter(({ verdict }) => verdict === 'found').map(({ id }) => id);

/** Everything that a step tells its reader. */
export const wordsOf = (plan: Plan, id: string): string => {
  const { purpose, how, dayChecks, doneWhen, ifNot } = step(plan, id);
  return [
    purpose,
    ...how,
    ...dayChecks.flatMap(({ check, otherwise }) => [check, otherwise]),
    doneWhen,
    ifNot,
  ].join(' ');
};
