import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import {
  aboutHours,
  hours,
  outward,
  plainNumber,
  quantity,
  quantityRange,
} from '../../src/base/quantity-words.js';
import { dayWords, spanWords } from '../../src/document/date-words.js';
import {
  clause,
  counted,
  inWords,
  markedSentence,
  midSentence,
  said,
  sentence,
} from '../../src/document/words.js';

describe('sentences', () => {
  it.each([
    ['moss covers it', 'Moss covers it.'],
    ['Done.', 'Done.'],
    ['really?', 'Really?'],
    ['pH is low', 'pH is low.'],
    ['84 m2 each', '84 m² each.'],
    ['', ''],
    [' a  b\n', 'A b.'],
    ['He said "no."', 'He said "no."'],
  ])('%j becomes %j', (text, whole) => {
    expect(sentence(text)).toBe(whole);
  });

  it('take a mark before their stop', () => {
    expect(markedSentence('it grows', '(source 1)')).toBe('It grows (source 1).');
    expect(markedSentence('is it?', '(source 1)')).toBe('Is it? (source 1)');
    expect(markedSentence('it grows', '')).toBe('It grows.');
    expect(markedSentence('', '(source 1)')).toBe('');
  });

  it.each([
    ['The moss is black.', 'the moss is black'],
    ['A plug', 'a plug'],
    ['April to June', 'April to June'],
    ['Saturday', 'Saturday'],
    ['pH low', 'pH low'],
    ['NPK', 'NPK'],
    ['I see', 'I see'],
  ])('%j inside another is %j', (text, words) => {
    expect(midSentence(text)).toBe(words);
  });

  it('follow a colon with a small letter and a stop', () => {
    expect(clause('Wait')).toBe('wait.');
    expect(clause('Ready?')).toBe('ready?');
    expect(clause('')).toBe('');
  });

  it('count and list', () => {
    expect([counted(1, 'step'), counted(2, 'step'), counted(0, 'day')]).toEqual([
      '1 step',
      '2 steps',
      '0 days',
    ]);
    expect([inWords([]), inWords([1]), inWords([1, 2]), inWords(['a', 'b', 'c'])]).toEqual([
      '',
      '1',
      '1 and 2',
      'a, b and c',
    ]);
  });

  it('spell the square metre, but not inside another word', () => {
    expect(said('12 g/m2, item2 m25')).toBe('12 g/m², item2 m25');
  });
});

describe('quantities', () => {
  // The forms are the project's own choice; 1 kg is 1000 g and 1 L is 1000 mL by the SI.
  it.each([
    [840, 'mL', '840 mL'],
    [1785.714, 'g', '1.79 kg'],
    [12_345, 'mL', '12.3 L'],
    [12_345_678, 'g', '12\u00a0300 kg'],
    [84, 'm2', '84 m²'],
    [1234.4, 'm2', '1234 m²'],
    [3.4, 'L', '3.4 L'],
    [0.1 + 0.2, 'L', '0.3 L'],
    [0, 'g', '0 g'],
    [3, 'each', '3'],
    [1.5, 'h', '1.5 h'],
  ])('%s %s reads %j', (value, unit, words) => {
    expect(quantity(value, unit)).toBe(words);
  });

  it('give a range in the unit of its larger end, and one value where both read the same', () => {
    expect(quantityRange({ min: 780, max: 900 }, 'mL')).toBe('780 to 900 mL');
    expect(quantityRange({ min: 950, max: 1050 }, 'mL')).toBe('0.95 to 1.05 L');
    expect(quantityRange({ min: 84.0001, max: 84.0002 }, 'm2')).toBe('84 m²');
  });

  it('refuse what is no number', () => {
    expect(() => plainNumber(Number.NaN)).toThrow(RangeError);
    expect(() => hours(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });

  it.each([
    [0, 'no work'],
    [0.02, 'about 5 min'],
    [0.75, 'about 45 min'],
    [0.99, 'about 1 h'],
    [1.5, 'about 1 h 30 min'],
    [7.99, 'about 8 h'],
    [12.2, 'about 12 h'],
    [12.3, 'about 12 h 30 min'],
  ])('%s hours are %j', (value, words) => {
    expect(aboutHours(value)).toBe(words);
  });
});

describe('days', () => {
  // 13 March 2027 is a Saturday: ISO 8601 calendar, as test/base/dates.test.ts checks against Temporal.
  const [saturday, sunday] = [parseIsoDate('2027-03-13'), parseIsoDate('2027-03-14')];

  const inYear = (year: number) => ({ year, datesKnownTo: 'day' }) as const;

  it('are a month with a question mark where no more is known', () => {
    const style = { year: 2027, datesKnownTo: 'month' } as const;
    expect(dayWords(saturday, style)).toBe('March?');
    expect(dayWords(saturday, { ...style, year: 2026 })).toBe('March 2027?');
    expect(spanWords({ from: saturday, until: sunday }, style)).toBe('March?');
    expect(spanWords({ from: saturday, until: parseIsoDate('2027-05-02') }, style)).toBe('March? to May?');
  });

  it('leave out the year that the reader has in mind', () => {
    expect(dayWords(saturday, inYear(2027))).toBe('Saturday 13 March');
    expect(dayWords(saturday, inYear(2026))).toBe('Saturday 13 March 2027');
  });

  it('are a span or a single day', () => {
    expect(spanWords({ from: saturday, until: sunday }, inYear(2027))).toBe(
      'Saturday 13 March to Sunday 14 March',
    );
    expect(spanWords({ from: saturday, until: saturday }, inYear(2027))).toBe('Saturday 13 March');
  });
});

describe('a range with two figures', () => {
  it.each([
    [227, 554, 220, 560],
    [89.1, 182, 89, 190],
    [1130, 3050, 1100, 3100],
    [0.0456, 0.0999, 0.045, 0.1],
    [840, 840, 840, 840],
    [1.134, 1.146, 1.134, 1.146],
    [0, 7, 0, 7],
  ])('is from %d to %d: %d to %d', (min, max, low, high) => {
    expect(outward({ min, max })).toEqual({ min: low, max: high });
  });

  it('never leaves out what was in it', () => {
    const end = fc.double({ min: 1e-6, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(end, end, (a, b) => {
        const [least, most] = [Math.min(a, b), Math.max(a, b)];
        const { min, max } = outward({ min: least, max: most });
        // Ten digits are looked at; what lies beyond them is binary dust.
        expect(min).toBeLessThanOrEqual(least * (1 + 1e-9));
        expect(max).toBeGreaterThanOrEqual(most * (1 - 1e-9));
      }),
    );
  });
});
