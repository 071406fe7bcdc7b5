/** Dates a net of 200 steps with seasons, least and greatest waits and the hours of a day, in one warm process. */
import { schedule } from '../../dist/planner/schedule.js';

const [STEPS, RUNS] = [200, 200];
/** Spring and autumn of a year, by steps in turn; every third step is done at any time. */
const SEASONS = [
  [60, 150],
  [225, 285],
];
const YEAR = 365;

const nextFit = (season) => (day) => {
  if (season === undefined) return day;
  const [from, until] = season;
  const ofYear = day % YEAR;
  return ofYear < from ? day - ofYear + from : ofYear <= until ? day : day - ofYear + YEAR + from;
};
const lastFit = (season) => (day) => season && day - (day % YEAR) + season[1];

function net() {
  const seasonOf = (index) => (index % 3 === 0 ? SEASONS[Math.floor(index / 50) % 2] : undefined);
  const steps = Array.from({ length: STEPS }, (_, index) => ({
    id: `step-${index}`,
    nextFit: nextFit(seasonOf(index)),
    lastFit: lastFit(seasonOf(index)),
    notBefore: index % 40 === 0 ? index / 10 : 0,
    joinsNext: index % 4 === 1,
    workHours: (index % 5) / 2,
  }));
  const waits = steps.flatMap((_, index) =>
    [1, 3, 7].flatMap((back) => {
      if (index < back || index % 50 < back) return [];
      const isSoon = back === 1 && index % 10 === 5;
      const minDays = (index * back) % 3;
      return [
        {
          from: `step-${index - back}`,
          to: `step-${index}`,
          minDays,
          maxDays: isSoon ? minDays + 14 : undefined,
          binds: true,
        },
      ];
    }),
  );
  return { steps, waits, dayHours: 6 };
}

export function netTimes() {
  const times = [];
  let dated;
  for (let run = 0; run < RUNS; run++) {
    const input = net();
    const start = performance.now();
    dated = schedule(input);
    times.push(performance.now() - start);
  }
  const sorted = times.sort((a, b) => a - b);
  const at = (share) => sorted[Math.floor(share * (RUNS - 1))].toFixed(2);
  const waits = net().waits.length;
  if (dated === undefined) throw new Error('The net of the bench holds no dates.');
  return `a net of ${STEPS} steps and ${waits} waits dated: median ${at(0.5)} ms, p99 ${at(0.99)} ms`;
}
