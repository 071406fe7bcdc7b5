import { describe, expect, it } from 'vitest';
import { parseFraction } from '../../../src/base/quantity/fraction.js';
import { notUnderstood, understood } from './results.js';

describe('parseFraction', () => {
  it.each([
    ['40%', 0.4],
    ['40 %', 0.4],
    ['40 per cent', 0.4],
    ['40percent', 0.4],
    ['forty percent', 0.4],
    ['fifteen percent', 0.15],
    ['1/1', 1],
    ['twenty-five per cent', 0.25],
    ['0.4', 0.4],
    ['0,4', 0.4],
    ['.4', 0.4],
    ['2/5', 0.4],
    ['40/100', 0.4],
    ['½', 0.5],
    ['half', 0.5],
    ['about half', 0.5],
    ['a half', 0.5],
    ['half of it', 0.5],
    ['half the lawn', 0.5],
    ['a third', 1 / 3],
    ['one third', 1 / 3],
    ['two thirds', 2 / 3],
    ['a quarter of the lawn', 0.25],
    ['three quarters', 0.75],
    ['a tenth', 0.1],
    ['1 in 4', 0.25],
    ['one in four', 0.25],
    ['3 out of 10', 0.3],
    ['none', 0],
    ['nothing', 0],
    ['0', 0],
    ['all', 1],
    ['all of it', 1],
    ['100', 1],
    ['100%', 1],
    ['1%', 0.01],
    ['0.5%', 0.005],
  ])('reads "%s" as %d', (typed, value) => {
    expect(understood(parseFraction(typed)).value).toBeCloseTo(value, 10);
  });

  it('reads a bare 40 as 40 % and says so', () => {
    expect(understood(parseFraction('40'))).toMatchObject({ value: 0.4, understood: '40 read as 40 %' });
    expect(understood(parseFraction('1.5'))).toMatchObject({ value: 0.015, understood: '1.5 read as 1.5 %' });
  });

  it('shows every other share with its percentage', () => {
    expect(understood(parseFraction('2/5')).understood).toBe('2/5 = 40 %');
    expect(understood(parseFraction('0.4')).understood).toBe('0.4 = 40 %');
    expect(understood(parseFraction('1/1')).understood).toBe('1/1 = 100 %');
    expect(understood(parseFraction('40%')).understood).toBe('40 %');
    expect(understood(parseFraction('a third')).understood).toBe('a third = 33.3 %');
  });

  it('asks whether a bare 1 is one per cent or all of it', () => {
    for (const typed of ['1', '1.0', 'one']) {
      expect(notUnderstood(parseFraction(typed)).choices).toEqual([
        { typed: '1 %', value: 0.01, understood: '1 %' },
        { typed: '100 %', value: 1, understood: '100 %' },
      ]);
    }
  });

  it('keeps that it is a guess', () => {
    expect(understood(parseFraction('about a third')).approximate).toBe(true);
    expect(understood(parseFraction('a third')).approximate).toBe(false);
  });

  it.each([
    ['120', '120 % is over 100 %'],
    ['120 %', 'over 100 %'],
    ['5 in 4', 'more than all of it'],
    ['-3', 'below 0'],
    ['40-50 %', 'the middle is 45'],
    ['lots', 'not a share'],
    ['3 in 0', 'not a share'],
    ['%', 'not a share'],
    ['', 'Nothing was typed'],
  ])('refuses "%s"', (typed, reason) => {
    expect(notUnderstood(parseFraction(typed)).reason).toContain(reason);
  });
});
