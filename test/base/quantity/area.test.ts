import { describe, expect, it } from 'vitest';
import { parseArea } from '../../../src/base/quantity/area.js';
import { notUnderstood, offered, understood } from './results.js';

// ft² 0.09290304 m², yd² 0.83612736 m², acre 4046.8564224 m², all exact by definition; values by hand.
describe('parseArea', () => {
  it.each([
    ['84', 84],
    ['84 m2', 84],
    ['84 m²', 84],
    ['84m^2', 84],
    ['84 sqm', 84],
    ['84 sq. m.', 84],
    ['84 square metres', 84],
    ['84 metres squared', 84],
    ['8000 sq ft', 743.22432],
    ['8000 ft2', 743.22432],
    ['8000 square feet', 743.22432],
    ['100 sq yd', 83.612736],
    ['1/4 acre', 1011.7141056],
    ['¼ acre', 1011.7141056],
    ['a quarter of an acre', 1011.7141056],
    ['half an acre', 2023.4282112],
    ['0.01 ha', 100],
    ['12 x 7', 84],
    ['12x7', 84],
    ['12×7', 84],
    ['12 * 7', 84],
    ['12 by 7', 84],
    ['12m x 7m', 84],
    ['12 m x 7', 84],
    ['12,5 x 2', 25],
    ['12 ft 6 in x 25 ft', 29.0322],
    ["12'6\" x 25'", 29.0322],
    ['40x25 ft', 92.90304],
    ['40 ft x 25', 92.90304],
    ['10 yd x 10 yd', 83.612736],
  ])('reads "%s" as %d m²', (typed, value) => {
    expect(understood(parseArea(typed)).value).toBeCloseTo(value, 8);
  });

  it('shows how it was read', () => {
    expect(understood(parseArea('12.5 ft x 25 ft')).understood).toBe('12.5 ft x 25 ft = 29.0 m2');
    expect(understood(parseArea('12 x 7')).understood).toBe('12 m x 7 m = 84 m2');
    expect(understood(parseArea('84')).understood).toBe('84 m2');
    expect(understood(parseArea('1/4 acre')).understood).toBe('1/4 acre = 1012 m2');
  });

  it('takes bare numbers in the units it is told', () => {
    const feet = { areaUnit: 'ft2', sideUnit: 'ft' } as const;
    expect(understood(parseArea('1000', feet)).value).toBeCloseTo(92.90304, 9);
    expect(understood(parseArea('40 x 25', feet)).value).toBeCloseTo(92.90304, 9);
  });

  it('keeps that the size is a guess', () =>
    expect(understood(parseArea('about 100 m2')).approximate).toBe(true));

  it('asks about a doubtful comma', () =>
    expect(offered(parseArea('8,000 sq ft'))).toEqual(['8 ft2', '8000 ft2']));

  it.each([
    ['12 m', 'That is a length'],
    ['12 x 7 x 3', 'two sides'],
    ['12 x 7 m2', 'Sides are lengths'],
    ['12 x', 'not a length'],
    ['84 kg', '"kg" is not an area'],
    ['-84', 'no such thing as an area below 0'],
    ['80-90', 'the middle is 85'],
    ['big', 'not an area'],
    ['1 acre 200 yd2', 'two figures'],
  ])('refuses "%s"', (typed, reason) => {
    expect(notUnderstood(parseArea(typed)).reason).toContain(reason);
  });
});
