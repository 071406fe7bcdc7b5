import { describe, expect, it } from 'vitest';
import { parseNumber } from '../../../src/base/quantity/number.js';
import { notUnderstood, offered, understood } from './results.js';

describe('parseNumber', () => {
  it.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    [' 12 ', 12],
    ['0,234', 0.234],
    ['12,3456', 12.3456],
    ['.5', 0.5],
    ['5.', 5],
    ['1 234', 1234],
    ['1\u00a0234', 1234],
    ['12 345 678', 12_345_678],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1.234', 1.234],
    ['1/2', 0.5],
    ['½', 0.5],
    ['2 1/2', 2.5],
    ['2½', 2.5],
    ['2-1/2', 2.5],
    ['¾', 0.75],
    ['-3', -3],
    ['−3', -3],
    ['+3', 3],
    ['12', 12],
  ])('reads "%s" as %d', (typed, value) => {
    expect(understood(parseNumber(typed))).toMatchObject({ value, unit: 'number', approximate: false });
  });

  it.each(['about 100', '~100', '~ 100', 'around 100', 'approx. 100', 'ca. 100', '≈100'])(
    'reads "%s" as 100, and says that it is about',
    (typed) => expect(understood(parseNumber(typed))).toMatchObject({ value: 100, approximate: true }),
  );

  it('asks whether 1,234 is one and a bit or more than a thousand', () => {
    const { reason, choices } = notUnderstood(parseNumber('1,234'));
    expect(reason).toContain('"1,234"');
    expect(choices?.map(({ value }) => value)).toEqual([1.234, 1234]);
    expect(offered(parseNumber('about 12,345'))).toEqual(['12.345', '12345']);
  });

  it('shows a fraction with what it comes to, and a decimal as it is', () => {
    expect(understood(parseNumber('2 1/2')).understood).toBe('2 1/2 = 2.5');
    expect(understood(parseNumber('1,2345')).understood).toBe('1.2345');
  });

  it('names the middle of a range', () => {
    expect(notUnderstood(parseNumber('10-12')).reason).toContain('the middle is 11');
    expect(notUnderstood(parseNumber('10 to 13')).reason).toContain('the middle is 11.5');
    expect(notUnderstood(parseNumber('10–12')).reason).toContain('the middle is 11');
  });

  it.each([
    '',
    '   ',
    'abc',
    '1/0',
    '1e5',
    '1.2.3',
    '1,2,3',
    '12 apples',
    '--3',
    '5 6',
    '1 23',
    'NaN',
    'Infinity',
    '0x10',
  ])('refuses "%s" with a reason and no choices', (typed) => {
    const { reason, choices } = notUnderstood(parseNumber(typed));
    expect(reason).toMatch(/\.$/);
    expect(choices).toBeUndefined();
  });

  it('refuses a figure no lawn needs and a text no figure needs', () => {
    expect(notUnderstood(parseNumber('9'.repeat(14))).reason).toContain('too large');
    expect(notUnderstood(parseNumber(`-${'9'.repeat(14)}`)).reason).toContain('too large');
    expect(notUnderstood(parseNumber('9'.repeat(400))).reason).toContain('too long');
  });
});
