import { describe, expect, it } from 'vitest';
import { summaryOf } from '../../src/document/summary.js';
import { emptyPlan, samplePlan } from './sample-plan.js';

describe('the summary', () => {
  it('says verdict, first day, length, what to buy first and what was assumed', () => {
    expect(summaryOf(samplePlan)).toBe(
      [
        'Lawn plan for Mill End, back lawn: renovate the whole lawn.',
        'First: treat the moss, Saturday 13 March 2027.',
        '3 steps until Saturday 3 April, about 5 h 15 min of work in all.',
        'Buy first: liquid moss killer, 840 mL.',
        '2 things were assumed; the plan says what each would change.',
      ].join('\n'),
    );
  });

  it('is short when there is nothing to do', () => {
    expect(summaryOf(emptyPlan)).toBe('Lawn plan: too dark for grass.\nNothing had to be assumed.');
  });

  it('buys nothing first when nothing is bought', () => {
    const shopping = samplePlan.shopping.filter(({ kind }) => kind !== 'buy');
    expect(summaryOf({ ...samplePlan, shopping })).not.toContain('Buy first');
  });

  it('holds no control codes, whatever the name, and no line more for a name of two', () => {
    for (const name of ['\u001b[31mred\u001b[0m', 'two\nlines']) {
      const summary = summaryOf({ ...samplePlan, name });
      expect(summary).not.toContain('\u001b');
      expect(summary.split('\n')).toHaveLength(5);
    }
  });
});
