/**
 * What a person who reads US units types, and the metric value that it is kept as.
 * Factors: NIST Handbook 44 (2024), appendix C, exact: 25.4 mm, 0.3048 m, 0.092 903 04 m2, 453.592 37 g,
 * 3.785 411 784 L, 29.573 529 562 5 mL.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { UNITS, type Units } from '../../src/base/us-units.js';
import { readAnswer } from '../../src/interview/read-answer.js';
import { wordedFor } from '../../src/interview/worded.js';
import type { Question } from '../../src/rules/schema.js';
import { questionSchema } from '../../src/rules/schema-question.js';
import { howToAnswer } from '../../src/terminal/words.js';
import { promptFor } from '../terminal/samples.js';
import { TODAY } from './read-samples.js';

const folder = new URL('../../rules/questions/', import.meta.url);
const questions = readdirSync(folder).flatMap((name) =>
  z.array(questionSchema).parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))),
);
const question = (id: string): Question => questions.find((each) => each.id === id) as Question;
const read = (id: string, typed: string, units: Units = 'us') =>
  readAnswer(wordedFor(question(id), units), typed, TODAY, units);

describe('a bare number is meant in the units that the question names', () => {
  it.each([
    ['areaM2', '1000', 92.90304, '1000 ft²'],
    ['areaM2', '40 x 25', 92.90304, '40 ft by 25 ft: 1000 ft²'],
    ['areaM2', '84 m2', 84, '904 ft² (84 m2)'],
    ['thatchDepthMm', '1/2', 12.7, '1/2 in'],
    ['thatchDepthMm', '12.7 mm', 12.7, '1/2 in (12.7 mm)'],
    ['mowingHeightMm', '2', 50.8, '2 in'],
    ['waterWithinM', '30', 9.144, '30 ft'],
    ['labelRateMlPerM2', '3', (3 * 29.5735295625) / 92.90304, '3 fl oz/1000 ft² (0.955 mL/m2)'],
    ['labelRateMlPerM2', '10 mL/m2', 10, '31.4 fl oz/1000 ft² (10 mL/m2)'],
    ['labelRateMlPerM2', '3 fl oz', (3 * 29.5735295625) / 92.90304, '3 fl oz/1000 ft² (0.955 mL/m2)'],
    ['labelRateGPerM2', '4', (4 * 453.59237) / 92.90304, '4 lb/1000 ft² (19.5 g/m2)'],
    ['labelRateGPerM2', '20 lb/5000 sq ft', (4 * 453.59237) / 92.90304, '4 lb/1000 ft² (19.5 g/m2)'],
    ['labelWaterLPerM2', '2', (2 * 3.785411784) / 92.90304, '2 gal/1000 ft² (0.0815 L/m2)'],
    ['tankL', '2', 2 * 3.785411784, '2 gal'],
    ['tankL', '2 gal', 2 * 3.785411784, '2 gal'],
    ['hoseLPerMin', '4', 4 * 3.785411784, '4 gal/min'],
    ['hoseLPerMin', '2 gal in 30 seconds', 4 * 3.785411784, '4 gal/min'],
    ['maxLiftKg', '40', 40 * 0.45359237, '40 lb'],
  ])('%s, typed as %s', (id, typed, value, understood) => {
    const reading = read(id, typed);
    expect(reading).toMatchObject({ value: expect.closeTo(value, 6) });
    expect(
      'understood' in reading && reading.understood.startsWith(understood),
      JSON.stringify(reading),
    ).toBe(true);
  });

  it('and metric where nothing else is said', () => {
    expect(read('areaM2', '84', 'metric')).toMatchObject({ value: 84, understood: '84 m2' });
    expect(read('tankL', '2 gal', 'metric').kind).toBe('which');
  });

  it('and a pint or gallon of another country is read as typed', () => {
    expect(read('tankL', '2 UK gal')).toMatchObject({ value: expect.closeTo(2 * 4.54609, 9) });
  });
});

describe('the limits that are shown', () => {
  it('are no wider than those that hold', () => {
    for (const each of questions.filter(({ kind, unit }) => kind === 'number' && unit !== undefined)) {
      const shown = howToAnswer(promptFor(each, { units: 'us' }));
      const [, from, to] = / from ([\d.-]+) to ([\d.]+)/.exec(shown) as unknown as [string, string, string];
      for (const end of [from, to])
        expect(read(each.id, end).kind, `${each.id}: ${end} of "${shown}"`).not.toBe('refused');
    }
  });
});

describe('a question for whoever reads US units', () => {
  const METRIC =
    /\b(?:square metre|metre|litre|gram|kilogram|millimetre|centimetre|millilitre)s?\b|\d ?(?:mm|cm|m|m2|L|mL|kg|g)\b/;
  // What a label may say is still named as one way to type it; and a slot is filled later.
  const ALLOWED = /or \d+ (?:mL|g)\/m2|\{[^}]*\}/g;

  it.each(questions)('$id names no metric unit', (each) => {
    const { text, help, why, bounds, options, dontKnow } = wordedFor(each, 'us');
    const told = [text, help, why, bounds?.says, dontKnow.effect, dontKnow.handTest].concat(
      options?.flatMap(({ label, hint }) => [label, hint]),
    );
    expect(told.filter((words) => METRIC.test((words ?? '').replace(ALLOWED, '')))).toEqual([]);
    expect(howToAnswer(promptFor(each, { units: 'us' }))).not.toMatch(METRIC);
  });

  it('has the words of the metric one where it has none of its own', () => {
    for (const units of UNITS) expect(wordedFor(question('dog'), units)).toEqual(question('dog'));
    expect(wordedFor(question('areaM2'), 'metric')).toEqual(question('areaM2'));
  });
});
