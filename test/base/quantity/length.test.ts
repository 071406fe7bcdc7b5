import { describe, expect, it } from 'vitest';
import { parseDepth, parseLength } from '../../../src/base/quantity/length.js';
import { notUnderstood, offered, understood } from './results.js';

// The foot is 0.3048 m and the inch 25.4 mm by definition; values by hand.
describe('parseLength', () => {
  it.each([
    ['12', 12],
    ['12 m', 12],
    ['12.5m', 12.5],
    ['12,5 metres', 12.5],
    ['350 cm', 3.5],
    ['3 m 20 cm', 3.2],
    ['10 ft', 3.048],
    ["10'", 3.048],
    ['12 ft 6 in', 3.81],
    ['12ft6in', 3.81],
    [`12'6"`, 3.81],
    [`12'-6"`, 3.81],
    ['12′6″', 3.81],
    ['12 ft 6', 3.81],
    ['2 yards', 1.8288],
    ['1 yd 1 ft', 1.2192],
    ['1/2 in', 0.0127],
  ])('reads "%s" as %d m', (typed, value) => {
    expect(understood(parseLength(typed)).value).toBeCloseTo(value, 10);
  });

  it('shows how it was read', () => {
    expect(understood(parseLength('12 ft 6')).understood).toBe('12 ft 6 in = 3.81 m');
    expect(understood(parseLength('12')).understood).toBe('12 m');
  });

  it('takes a bare number in the unit it is told', () => {
    expect(understood(parseLength('10', 'ft')).value).toBeCloseTo(3.048, 10);
    expect(understood(parseLength('10', 'ft')).understood).toBe('10 ft = 3.048 m');
  });

  it('asks about a doubtful comma', () =>
    expect(offered(parseLength('1,234 m'))).toEqual(['1.234 m', '1234 m']));

  it.each([
    ['1 furlong', '"furlong" is not a length'],
    ['3 m 20', 'needs a unit too'],
    ['3 m 4 m', 'two lengths'],
    ['6 in 12 ft', 'two lengths'],
    ['-2 m', 'no such thing as a length below 0'],
    ['m', 'not a length'],
    ['+ 5 m', 'not a length'],
    ['12 m2', 'not a length'],
    ['12 kg', 'not a length'],
  ])('refuses "%s"', (typed, reason) => {
    expect(notUnderstood(parseLength(typed)).reason).toContain(reason);
  });
});

describe('parseDepth', () => {
  it.each([
    ['12', 12],
    ['12 mm', 12],
    ['2 cm', 20],
    ['1/2 in', 12.7],
    ['½"', 12.7],
    ['0.5 inches', 12.7],
    ['about 3/4 in', 19.05],
  ])('reads "%s" as %d mm', (typed, value) => {
    expect(understood(parseDepth(typed))).toMatchObject({ value, unit: 'mm' });
  });
});
