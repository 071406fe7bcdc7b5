import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { readAnswer } from '../../src/interview/read-answer.js';
import type { Reading } from '../../src/interview/reading.js';
import { SAMPLES } from './read-samples.js';

const words = (
  '10 2 31 3/4 2027 2026-02-30 12/12 1,234 0 -1 1e9 half a an the last next this in on of ago from now days week weeks months years ' +
  'fortnight early mid late end March april may 29 February Tuesday sat sunday weekend yesterday tomorrow today before ' +
  'and - + x by circle triangle m ft % about never Easter spring or to th 10th couple few don’t know'
).split(' ');
const typed = fc.oneof(
  fc.array(fc.constantFrom(...words), { maxLength: 7 }).map((list) => list.join(' ')),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.string({ maxLength: 40 }),
);
const day = fc
  .integer({ min: 0, max: 80_000 })
  .map((days) => parseIsoDate(Temporal.PlainDate.from('1900-01-01').add({ days }).toString()));

function valuesOf(reading: Reading): unknown[] {
  if (reading.kind === 'refused') return [];
  return reading.kind === 'which' ? reading.choices.map(({ value }) => value) : [reading.value];
}

describe('whatever is typed', () => {
  it.each(Object.entries(SAMPLES))('gives a reading for %s, and never throws', (_, sample) => {
    fc.assert(
      fc.property(typed, day, (text, today) => {
        const reading = readAnswer(sample, text, today);
        const said = reading.kind === 'value' ? reading.understood : reading.says;
        expect(said.length).toBeGreaterThan(0);
        // Nothing that a terminal obeys comes back in what is said.
        expect(said).not.toMatch(/(?!\n)[\p{Cc}\p{Bidi_Control}]/u);
        expect(readAnswer(sample, text, today)).toEqual(reading);
      }),
      { numRuns: 1500 },
    );
  });

  it('is never a day to come where a past one was asked for', () => {
    fc.assert(
      fc.property(typed, day, (text, today) => {
        for (const value of valuesOf(readAnswer(SAMPLES.past, text, today))) {
          expect(
            Temporal.PlainDate.compare(
              Temporal.PlainDate.from(String(value)),
              Temporal.PlainDate.from(today),
            ),
          ).not.toBe(1);
        }
        for (const value of valuesOf(readAnswer(SAMPLES.daysAgo, text, today)))
          expect(value).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 5000 },
    );
  });

  it('is never a past day where one to come was asked for', () => {
    fc.assert(
      fc.property(typed, day, (text, today) => {
        for (const value of valuesOf(readAnswer(SAMPLES.ahead, text, today))) {
          expect(
            Temporal.PlainDate.compare(
              Temporal.PlainDate.from(String(value)),
              Temporal.PlainDate.from(today),
            ),
          ).not.toBe(-1);
        }
      }),
      { numRuns: 5000 },
    );
  });

  it.each(['sun', 'thatch', 'share', 'daysAgo'] as const)('stays inside the bounds of %s', (name) => {
    const { bounds } = SAMPLES[name];
    fc.assert(
      fc.property(typed, day, (text, today) => {
        for (const value of valuesOf(readAnswer(SAMPLES[name], text, today))) {
          expect(value).toBeGreaterThanOrEqual(bounds?.min ?? 0);
          expect(value).toBeLessThanOrEqual(bounds?.max ?? 0);
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('reads long rubbish fast', () => {
    const started = performance.now();
    for (const piece of ['1', '1,', 'a ', 'x1', '+ 1 ', '-', '\x1b[', 'early ', '(']) {
      const text = piece.repeat(20_000);
      for (const sample of Object.values(SAMPLES)) readAnswer(sample, text, parseIsoDate('2026-11-25'));
    }
    expect(performance.now() - started).toBeLessThan(2000);
  });
});
