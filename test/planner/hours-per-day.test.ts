/** The hours of a day: more days for less time, and never seed that lies uncovered overnight. */
import { describe, expect, it } from 'vitest';
import { daysBetween, parseIsoDate } from '../../src/base/dates.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import { pack } from './any-lawn.js';

const stepsWith = (answers: object) =>
  assemblePlan({
    pack,
    answers: { place: 'Oxford', areaM2: 84, mossFraction: 0.4, thatchDepthMm: 18, ...answers },
    today: parseIsoDate('2027-08-01'),
    assumeAll: true,
  }).steps;

describe('hours a day', () => {
  it.each([1, 2, 3, 4, 6, 9, 12])(
    'of %d hold the work of each day, and seed is covered on the day it is sown',
    (hoursPerDay) => {
      const steps = stepsWith({ hoursPerDay });
      const partsOf = (id: string) => steps.find((step) => step.id === id)?.parts ?? [];
      expect(partsOf('sow').length).toBeGreaterThan(0);
      expect(partsOf('cover-seed')).toEqual(partsOf('sow'));
      const hours = new Map<string, number>();
      for (const { workHours, parts } of steps)
        for (const { startOn, endOn } of parts) {
          const days = daysBetween(startOn, endOn) + 1;
          if (days === 1) hours.set(startOn, (hours.get(startOn) ?? 0) + workHours / parts.length);
          else expect(workHours / parts.length).toBeLessThanOrEqual(days * hoursPerDay);
        }
      for (const [day, sum] of hours) expect(sum, day).toBeLessThanOrEqual(hoursPerDay + 1e-6);
    },
  );

  it('that are fewer never end the sowing sooner', () => {
    const lastSown = [1, 2, 3, 4, 6, 9].map(
      (hoursPerDay) =>
        stepsWith({ hoursPerDay })
          .find(({ id }) => id === 'sow')
          ?.parts.at(-1)?.endOn ?? '',
    );
    expect(lastSown).toEqual([...lastSown].sort().reverse());
  });

  it('not answered are the figure of the rules', () => {
    const figure = pack.figureById.get('work-day-h')?.typical;
    expect(stepsWith({}).map(({ parts }) => parts)).toEqual(
      stepsWith({ hoursPerDay: figure }).map(({ parts }) => parts),
    );
  });
});
