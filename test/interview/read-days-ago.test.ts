import { describe, expect, it } from 'vitest';
import { readingOf, valueRead } from './read-samples.js';

describe('days ago', () => {
  // Counted on a calendar of November 2026, where the 25th is a Wednesday.
  it.each([
    ['0', 0],
    ['10', 10],
    ['two', 2],
    ['10 days', 10],
    ['about 10 days ago', 10],
    ['today', 0],
    ['this morning', 0],
    ['yesterday', 1],
    ['last Tuesday', 1],
    ['Sunday', 3],
    ['a fortnight', 14],
    ['a couple of days ago', 2],
    ['not for 3 weeks', 21],
    ['early November', 20],
    ['15 November', 10],
  ])('reads %j as %i', (typed, days) => {
    expect(valueRead('daysAgo', typed)).toBe(days);
  });

  it('repeats the day it means', () => {
    expect(readingOf('daysAgo', 'about 10 days ago')).toMatchObject({
      understood: 'about 10 days ago, Sunday 15 November 2026',
    });
  });

  it('asks again about a long time and refuses an impossible one', () => {
    expect(readingOf('daysAgo', '61')).toMatchObject({ kind: 'odd', value: 61 });
    expect(readingOf('daysAgo', '366')).toMatchObject({
      kind: 'refused',
      says: expect.stringContaining('from 0 to 365'),
    });
  });

  it('offers both ends of a range, but none that is out of bounds', () => {
    expect(readingOf('daysAgo', '2-3 days')).toMatchObject({
      kind: 'which',
      choices: [{ value: 2 }, { value: 3 }],
    });
    expect(readingOf('daysAgo', '300 to 400 days')).toMatchObject({ kind: 'odd', value: 300 });
  });

  it.each(['never', 'not for months', 'ages ago', '-3', '1.5', 'tomorrow', 'Easter', ''])(
    'refuses %j with a hint',
    (typed) => {
      expect(readingOf('daysAgo', typed).kind).toBe('refused');
    },
  );
});
