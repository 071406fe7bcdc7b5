import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Question } from '../../src/rules/schema.js';
import { questionSchema } from '../../src/rules/schema-question.js';

const folder = new URL('../../rules/questions/', import.meta.url);
const questions = readdirSync(folder).flatMap((name) =>
  z.array(questionSchema).parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))),
);
const question = (id: string): Question => {
  const found = questions.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no question ${id}`);
  return found;
};
const boundsOf = (id: string): NonNullable<Question['bounds']> => {
  const { bounds } = question(id);
  if (bounds === undefined) throw new Error(`${id} has no bounds`);
  return bounds;
};

const sentences = ({ text, help, why, bounds, dontKnow }: Question): string[] =>
  [text, help, why, bounds?.says, dontKnow.effect, dontKnow.handTest].filter((each) => each !== undefined);
const phrases = ({ label, options }: Question): string[] => [
  label,
  ...(options ?? []).flatMap((option) => [option.label, option.hint ?? 'none']),
];

describe.each(questions)('the words of $id', (each) => {
  it('ask one thing, with a question mark at the end and nowhere else', () => {
    expect(each.text).toMatch(/^[^?]+\?$/);
  });

  it('are whole sentences of at most 400 characters, said calmly', () => {
    for (const sentence of sentences(each)) {
      expect(sentence.length).toBeLessThanOrEqual(400);
      expect(sentence).toMatch(/^[A-Z0-9].*[.?]$/);
      expect(sentence).not.toMatch(/!| {2}|\n/);
    }
  });

  it('label the question and its options with short phrases', () => {
    for (const phrase of phrases(each)) {
      expect(phrase.length).toBeLessThanOrEqual(80);
      expect(phrase).toMatch(/^[^.!?]+$/);
    }
    expect(each.label.length).toBeLessThanOrEqual(32);
  });

  it('say in one sentence what the plan does if nobody knows', () => {
    expect(each.dontKnow.effect.match(/[.?]/g)).toHaveLength(1);
  });
});

describe('numbers', () => {
  const numbers = questions.filter(({ kind }) => ['number', 'days-ago', 'area', 'parts'].includes(kind));
  // Whole words by which a question may name its unit.
  const spoken: Readonly<Record<string, RegExp>> = {
    m: /metres/,
    mm: /millimetres/,
    m2: /square metres/,
    degrees: /degrees/,
    hours: /hours/,
    'hours a day': /hours/,
    pH: /pH/,
    seconds: /seconds/,
    grubs: /grubs/,
    weeks: /weeks/,
    years: /years/,
    days: /days/,
    'mL/m2': /millilitres .*one square metre/,
    'g/m2': /grams .*one square metre/,
    'L/m2': /litres .*one square metre/,
    L: /litres/,
    '%': /per cent/,
    'L/min': /litres a minute/,
    kg: /kilograms/,
    'in your currency': /currency/,
  };

  it.each(numbers)('$id names its unit in the question', ({ unit, text }) => {
    expect(text).toMatch(spoken[unit ?? ''] ?? /no such unit/);
  });

  it.each(questions.filter(({ bounds }) => bounds !== undefined))('$id has bounds in order', ({ bounds }) => {
    const { min, max, oddBelow = min, oddAbove = max } = bounds ?? { min: 0, max: 0 };
    expect(min).toBeLessThanOrEqual(oddBelow);
    expect(oddBelow).toBeLessThan(oddAbove);
    expect(oddAbove).toBeLessThanOrEqual(max);
  });
});

describe('bounds let through what is in print', () => {
  const ordinary = (id: string, value: number): void => {
    const { min, max, oddBelow = min, oddAbove = max } = boundsOf(id);
    expect(value).toBeGreaterThanOrEqual(oddBelow);
    expect(value).toBeLessThanOrEqual(oddAbove);
  };
  it.each([
    // Utah State University Extension, FAQ 1971 (Kopp, 2007): power rake only at 2 in of thatch.
    ['thatchDepthMm', 2 * 25.4],
    // Purdue University AY-8 (Reicher and Throssell, 1998): zoysia at 1 in, tall fescue up to 4 in, which is 101.6.
    ['mowingHeightMm', 25.4],
    ['mowingHeightMm', 76.2],
    // BS 3882:1994, general purpose grade of topsoil: pH 5.0 to 8.2.
    ['soilPh', 5],
    ['soilPh', 8.2],
    // Oregon State University (Kowalewski): trouble at 25 to 50 crane fly larvae a square foot; 15 cm is half a foot.
    ['grubsInSquare', 50 / 4],
    // Lawn sand at 150 g/m2, in a British recipe credited to Dawson.
    ['labelRateGPerM2', 150],
    // The scale of water drop times ends at 3600 s (Dekker and others, 2009): from memory.
    ['dropSeconds', 3600],
  ])('%s: %d', ordinary);

  it('accepts urea, 46 % nitrogen by Purdue University AY-22, as the strongest feed', () => {
    expect(boundsOf('feedFirstNumber').max).toBe(46);
  });

  // FAO Irrigation and Drainage Paper 56, equation 34, at 58 degrees north on 15 June: 17.8 h of daylight.
  it('refuses more hours of sun than there is day in Scotland in June', () => {
    expect(boundsOf('sunHoursPerDay').max).toBeGreaterThanOrEqual(17.8);
    expect(boundsOf('sunHoursPerDay').max).toBeLessThan(24);
  });

  it('tells the slope from the share of a board as the tangent does', () => {
    for (const degrees of [5, 10, 15]) {
      const gapPercent = Math.round(100 * Math.tan((degrees * Math.PI) / 180));
      expect(question('slopeDeg').help).toMatch(new RegExp(`${gapPercent} % is ${degrees}\\b`));
    }
  });
});
