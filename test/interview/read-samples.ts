/** Questions made up for the tests of the readers, so that they do not lean on the wording of a pack. */
import { parseIsoDate } from '../../src/base/dates.js';
import { readAnswer } from '../../src/interview/read-answer.js';
import type { Reading } from '../../src/interview/reading.js';
import type { Question } from '../../src/rules/schema.js';

/** A Wednesday, as any calendar of 2026 shows. */
export const TODAY = parseIsoDate('2026-11-25');

export function question(parts: Partial<Question> & Pick<Question, 'kind'>): Question {
  return {
    id: 'sample',
    section: 'look',
    label: 'sample',
    text: 'Which?',
    help: 'Go and look.',
    why: 'It decides.',
    dontKnow: { assume: null, effect: 'Nothing is assumed.' },
    cost: 'look',
    ...parts,
  };
}

export const SAMPLES = {
  sun: question({
    kind: 'number',
    unit: 'hours a day',
    bounds: { min: 0, max: 18, oddAbove: 14, says: 'The longest day has about 17.' },
  }),
  thatch: question({
    kind: 'number',
    unit: 'mm',
    bounds: { min: 0, max: 150, oddAbove: 60, says: 'A finger is 15 mm.' },
  }),
  share: question({ kind: 'fraction', bounds: { min: 0, max: 1, says: '100 % is all of it.' } }),
  area: question({
    kind: 'area',
    unit: 'm2',
    bounds: { min: 1, max: 20_000, oddBelow: 5, oddAbove: 2000, says: 'A car takes up 8 m2.' },
  }),
  parts: question({ kind: 'parts', unit: 'm' }),
  past: question({ kind: 'date' }),
  ahead: question({ kind: 'date', suggest: 'today' }),
  daysAgo: question({
    kind: 'days-ago',
    unit: 'days',
    bounds: { min: 0, max: 365, oddAbove: 60, says: 'Two months without rain is rare.' },
  }),
  yesNo: question({ kind: 'yes-no' }),
  feel: question({
    kind: 'choice',
    options: [
      { value: 'firm', label: 'firm' },
      { value: 'springy', label: 'springy', hint: 'like a thin mattress' },
      { value: 'very-springy', label: 'very springy', hint: 'the foot sinks' },
    ],
  }),
  soil: question({
    kind: 'choice',
    options: [
      { value: 'sand', label: 'sand' },
      { value: 'sandy-loam', label: 'sandy loam' },
      { value: 'loam', label: 'loam', hint: 'a short roll' },
      { value: 'clay', label: 'clay', hint: 'bends into a ring' },
    ],
  }),
  services: question({
    kind: 'choice',
    safety: true,
    options: [
      { value: 'none', label: 'nothing, and I have checked' },
      { value: 'marked', label: 'something, and I know where' },
    ],
  }),
  place: question({ kind: 'place' }),
  name: question({ kind: 'text' }),
} as const;

export function readingOf(sample: keyof typeof SAMPLES | Question, typed: string): Reading {
  return readAnswer(typeof sample === 'string' ? SAMPLES[sample] : sample, typed, TODAY);
}

/** The value, where one was read or would be after a confirmation. */
export function valueRead(sample: keyof typeof SAMPLES | Question, typed: string): unknown {
  const reading = readingOf(sample, typed);
  return reading.kind === 'value' || reading.kind === 'odd' ? reading.value : reading.kind;
}
