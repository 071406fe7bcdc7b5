/** A large lawn that waits for the next season only for want of hands says so, and what one more would change. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { pack } from './any-lawn.js';

const {
  startOn: _,
  lawnParts: __,
  ...lawn
}: Answers = JSON.parse(readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8')).answers;

const planOf = (areaM2: number, hoursPerDay: number, today = '2027-09-08'): Plan =>
  assemblePlan({
    pack,
    answers: { ...lawn, areaM2, hoursPerDay, scarifier: 'rake' },
    today: parseIsoDate(today),
    assumeAll: true,
  });
const sowOn = (plan: Plan) => plan.steps.find(({ id }) => id === 'sow')?.startOn;

describe('a lawn too large for the days that are left', () => {
  it.each([
    [200, 3, '2027-09-08'],
    [400, 3, '2027-09-08'],
    [200, 3, '2027-05-10'],
  ])(
    'of %d m2 at %d h a day on %s has the plan it promises once the hours are there',
    (area, hours, today) => {
      const alone = planOf(area, hours, today);
      const { people, sowOn: sooner } = alone.sooner as NonNullable<Plan['sooner']>;
      expect(people).toBeGreaterThan(1);
      expect(sooner < (sowOn(alone) as string)).toBe(true);
      const together = planOf(area, hours * people, today);
      expect(sowOn(together)).toBe(sooner);
      expect(together.sooner).toBeNull();
    },
  );

  it('is told so with the verdict and at the wait', () => {
    const markdown = markdownOf(documentOf(planOf(200, 3)));
    expect(markdown).toContain(
      '**Sooner with help.** Too few days are left of this season for so much work by one person',
    );
    expect(markdown.split('With 2 people at work it could be sown from 24 September 2027')).toHaveLength(3);
    expect(markdown).toContain("To see that plan, give 6 as hours a day: everybody's hours together.");
  });

  it('names no hours that nobody could work', () => {
    expect(planOf(300, 6).sooner?.says).not.toContain('To see that plan');
  });

  it('is not the case where the waits, and not the hours, are too long for the season', () => {
    expect(planOf(84, 6, '2027-09-25').sooner).toBeNull();
  });

  it('is rather divided into more parts, which need nobody', () => {
    const plan = planOf(200, 6);
    expect(plan.sooner).toBeNull();
    expect(sowOn(plan)?.slice(0, 4)).toBe('2027');
    expect(plan.steps.find(({ id }) => id === 'sow')?.parts.length).toBeGreaterThan(2);
  });

  it('is not the case where it fits', () => {
    expect(planOf(84, 6).sooner).toBeNull();
  });
});
