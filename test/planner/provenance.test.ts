/** Every number of a plan says what it was worked out from: formula, figures, answers; and the weak ones are marked. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import { pack } from './any-lawn.js';

const plans = readdirSync('transcripts-examples')
  .filter((folder) => existsSync(`transcripts-examples/${folder}/answers.json`))
  .map((folder) => {
    const read = (name: string) => JSON.parse(readFileSync(`transcripts-examples/${folder}/${name}`, 'utf8'));
    const today = parseIsoDate(read('journey.json').today);
    return {
      folder,
      plan: assemblePlan({ pack, answers: read('answers.json').answers, today, assumeAll: true }),
    };
  });

describe('in the plan of', () => {
  it.each(plans)(
    '$folder every amount, hour of work and litre of water names what is behind it',
    ({ plan }) => {
      const figures = new Set(plan.figures.map(({ id }) => id));
      const behind = [
        ...plan.steps.flatMap(({ amounts }) => amounts),
        ...plan.steps.flatMap(({ workHours, workHoursFrom }) => {
          expect(workHoursFrom === null).toBe(workHours === 0);
          return workHoursFrom === null ? [] : [workHoursFrom];
        }),
        ...plan.watering.map(({ from }) => from),
      ];
      for (const { formula, figures: used, answers, basis } of behind) {
        expect(formula).toMatch(/^[a-z-]+$/);
        expect(used.length + answers.length).toBeGreaterThan(0);
        for (const id of used) expect(figures, id).toContain(id);
        for (const id of answers) expect(pack.questionById.has(id), id).toBe(true);
        const weakest = ['assumption', 'common-practice'].find((each) =>
          used.some((id) => pack.figureById.get(id)?.basis === each),
        );
        if (basis !== 'label') expect(basis).toBe(weakest ?? 'published');
      }
    },
  );

  it.each(plans)(
    '$folder hours and water are marked where a figure behind them is not published',
    ({ plan }) => {
      const text = markdownOf(documentOf(plan));
      const times = text.split('\n').filter((line) => /^\*\*Time\.\*\* About \d/.test(line));
      const weak = plan.steps.filter(({ workHoursFrom }) => workHoursFrom?.basis === 'assumption');
      expect(times.filter((line) => line.includes('(assumption')).length).toBe(weak.length);
      if (plan.watering.some(({ from }) => from.basis === 'common-practice'))
        expect(text).toMatch(/In all that is [^\n]*Common practice, source/);
    },
  );
});
