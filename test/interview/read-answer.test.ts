import { describe, expect, it } from 'vitest';
import { question, readingOf, valueRead } from './read-samples.js';

const bounds = { min: 0, max: 1e9, says: 'Look again.' };
const inUnit = (unit: string, id = 'sample') => question({ kind: 'number', id, unit, bounds });

describe('a number', () => {
  it.each([
    ['6', 6],
    ['6 hours', 6],
    ['6 hours a day', 6],
    ['6h', 6],
    ['six', 6],
    ['5,5', 5.5],
    ['about 5', 5],
    ['5 1/2', 5.5],
  ])('of hours a day: %j is %f', (typed, hours) => {
    expect(valueRead('sun', typed)).toBe(hours);
  });

  it('repeats the unit, and "about" when it was said', () => {
    expect(readingOf('sun', '6')).toMatchObject({ understood: '6 hours a day' });
    expect(readingOf('sun', 'about 1')).toMatchObject({ understood: 'about 1 hour a day' });
  });

  it('refuses the impossible in plain words', () => {
    expect(readingOf('sun', '40')).toEqual({
      kind: 'refused',
      says: "40 hours a day cannot be. Give a number from 0 to 18, or don't know. (The longest day has about 17.)",
    });
    expect(readingOf('sun', '-1').kind).toBe('refused');
  });

  it('asks again about the odd, and takes the bounds themselves', () => {
    expect(readingOf('sun', '15')).toEqual({
      kind: 'odd',
      value: 15,
      understood: '15 hours a day',
      says: '15 hours a day is possible, but rare. The longest day has about 17.',
    });
    expect(readingOf('sun', '14').kind).toBe('value');
    expect(readingOf('sun', '0').kind).toBe('value');
    expect(readingOf('sun', '18').kind).toBe('odd');
  });

  // Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 US gal = 231 in3 = 3.785411784 L,
  // 1 UK gal = 4.54609 L (NIST Handbook 44, appendix C; UK Units of Measurement Regulations 1995).
  it.each([
    ['mm', '14', 14],
    ['mm', '14mm', 14],
    ['mm', '1.5 cm', 15],
    ['mm', '1/2 in', 12.7],
    ['m', '10 ft', 3.048],
    ['kg', '40 lb', 40 * 0.45359237],
    ['L', '5000 ml', 5],
    ['L', '2 US gal', 2 * 3.785411784],
    ['L/min', '12 litres a minute', 12],
    ['L/min', '12 l/min', 12],
    ['L/min', '1 UK gal per minute', 4.54609],
    // The bucket test as it was made: 10 L in 40 s is a quarter of a litre each second.
    ['L/min', '10 L in 40 seconds', 15],
    ['L/min', '10 l in 40 s', 15],
    ['L/min', '10 litres in a minute', 10],
    ['L/min', '0.2 L/s', 12],
    // A rise of 1 in 10 is an angle of atan 0.1 = 5.71 degrees; the tangent of 45 degrees is 1.
    ['degrees', '1 in 10', 5.7],
    ['degrees', '10 %', 5.7],
    ['degrees', '100 %', 45],
    ['degrees', '5 degrees', 5],
    ['mm', 'an inch', 25.4],
    ['mL/m2', '10', 10],
    ['mL/m2', '10 ml', 10],
    ['mL/m2', '10 mL per m2', 10],
    ['mL/m2', '1 l per 100 m2', 10],
    ['g/m2', '35 g', 35],
    ['g/m2', '35 g/m2', 35],
    ['L/m2', '100 ml per square metre', 0.1],
    ['days', 'two weeks', 14],
    ['days', '1 month', 31],
    ['weeks', '3 months', 13],
    ['weeks', 'a fortnight', 2],
    ['years', '18 months', 1.5],
    ['years', 'a year and a half', 1.5],
    ['seconds', '2 minutes', 120],
    ['seconds', 'half a minute', 30],
    ['seconds', '10 s', 10],
    ['degrees', '5°', 5],
    ['%', '12 %', 12],
    ['%', '12-4-8', 12],
    ['pH', 'pH 6,5', 6.5],
    ['grubs', '3 grubs', 3],
    ['in your currency', '£200', 200],
    ['in your currency', '200 euros', 200],
  ])('in %s: %j is %f', (unit, typed, value) => {
    expect(valueRead(inUnit(unit), typed)).toBeCloseTo(value, 9);
  });

  it('shows what another unit was turned from', () => {
    expect(readingOf('thatch', '1/2 in')).toMatchObject({ understood: '12.7 mm (1/2 in)' });
  });

  it('takes "none" for what the rules say it stands for, asked again where safety rests on it', () => {
    const near = { ...inUnit('m'), noneIs: 200 };
    expect(readingOf(near, 'none')).toEqual({ kind: 'value', value: 200, understood: '200 m' });
    expect(readingOf({ ...near, safety: true }, 'no water')).toMatchObject({ kind: 'odd', value: 200 });
    expect(readingOf(inUnit('m'), 'none')).toMatchObject({
      kind: 'refused',
      says: expect.stringContaining('Go and look.'),
    });
  });

  it('asks which gallon', () => {
    expect(readingOf(inUnit('L'), '1 gallon')).toMatchObject({
      kind: 'which',
      choices: [{ value: 3.785411784 }, { value: 4.54609 }],
    });
  });

  it('takes a past day for "how many weeks ago", and its help for "never"', () => {
    const fed = inUnit('weeks', 'lastFedWeeksAgo');
    expect(valueRead(fed, '28 October')).toBe(4);
    expect(readingOf(fed, 'never')).toMatchObject({
      kind: 'refused',
      says: expect.stringContaining('Go and look.'),
    });
    expect(readingOf(fed, 'next week').kind).toBe('refused');
    expect(readingOf(inUnit('weeks'), '28 October').kind).toBe('refused');
  });

  it.each(['', 'a lot', '4-5', 'x', '12 bananas', '1.2.3', '∞', 'NaN', '1e400', '0x10'])(
    'refuses %j',
    (typed) => {
      expect(readingOf('thatch', typed)).toMatchObject({
        kind: 'refused',
        says: expect.stringMatching(/\bdon't know\b/),
      });
    },
  );
});

describe('a share', () => {
  it.each([
    ['40 %', 0.4],
    ['40', 0.4],
    ['0.4', 0.4],
    ['0,4', 0.4],
    ['two fifths', 0.4],
    ['four tenths', 0.4],
    ['half', 0.5],
    ['none', 0],
    ['all of it', 1],
    ['1 in 4', 0.25],
  ])('%j is %f', (typed, value) => {
    expect(valueRead('share', typed)).toBeCloseTo(value, 12);
  });

  it('repeats it as a percentage', () => {
    expect(readingOf('share', 'two fifths')).toMatchObject({ understood: '40 %' });
    expect(readingOf('share', 'about half')).toMatchObject({ understood: 'about 50 %' });
  });

  it('asks whether 1 is one per cent or all, and refuses more than all', () => {
    expect(readingOf('share', '1')).toMatchObject({
      kind: 'which',
      choices: [{ value: 0.01 }, { value: 1 }],
    });
    expect(readingOf('share', '150')).toMatchObject({
      kind: 'refused',
      says: expect.stringContaining("don't know"),
    });
  });
});

describe('a place', () => {
  it.each([
    ['52.1, -1.4', '52.1, -1.4', '52.1 degrees north, 1.4 west'],
    ['52.1 -1.4', '52.1, -1.4', '52.1 degrees north, 1.4 west'],
    ['52.1 N, 1.4 W', '52.1, -1.4', '52.1 degrees north, 1.4 west'],
    ['36.8 S 174.8 E', '-36.8, 174.8', '36.8 degrees south, 174.8 east'],
    ['Upper Thornby', 'Upper Thornby', 'Upper Thornby'],
  ])('%j', (typed, value, understood) => {
    expect(readingOf('place', typed)).toEqual({ kind: 'value', value, understood });
  });

  it.each(['100, 2', '52.1', '10, 200', '1 2 3', ''])('refuses %j', (typed) => {
    expect(readingOf('place', typed).kind).toBe('refused');
  });
});

describe('a text', () => {
  it('is kept on one line, without what a terminal would obey', () => {
    expect(valueRead('name', ' Mum’s \x1b[31mback\n lawn ')).toBe('Mum’s \uFFFDback lawn');
  });

  it('can be one of the words of the session, in quotation marks', () => {
    expect(valueRead('name', '"back"')).toBe('back');
  });

  it.each(['', '   ', '""', 'x'.repeat(81)])('refuses %j', (typed) => {
    expect(readingOf('name', typed).kind).toBe('refused');
  });
});
