import { describe, expect, it } from 'vitest';
import type { AnswerValue } from '../../src/interview/answers.js';
import { showAnswer } from '../../src/interview/show-answer.js';
import { question, SAMPLES } from './read-samples.js';

describe('an answer in words', () => {
  const unit = (name: string) => question({ kind: 'number', unit: name });
  it.each([
    [SAMPLES.share, 0.4, '40 %'],
    [SAMPLES.share, 1 / 3, '33.3 %'],
    [SAMPLES.thatch, 14, '14 mm'],
    [SAMPLES.sun, 1, '1 hour a day'],
    [SAMPLES.sun, 6.5, '6.5 hours a day'],
    [unit('degrees'), 1, '1 degree'],
    [unit('pH'), 6.5, 'pH 6.5'],
    [unit('in your currency'), 200, '200'],
    [SAMPLES.area, 84, '84 m2'],
    [SAMPLES.feel, 'springy', 'springy'],
    [SAMPLES.feel, 'very-springy', 'very springy'],
    [SAMPLES.yesNo, true, 'yes'],
    [SAMPLES.yesNo, false, 'no'],
    [SAMPLES.daysAgo, 0, 'today'],
    [SAMPLES.daysAgo, 1, 'yesterday'],
    [SAMPLES.daysAgo, 3, 'about 3 days ago'],
    [SAMPLES.past, '2027-03-13', 'Saturday 13 March 2027'],
    [SAMPLES.place, '52.1, -1.4', '52.1 degrees north, 1.4 west'],
    [SAMPLES.place, 'Upper Thornby', 'Upper Thornby'],
    [SAMPLES.name, 'a\x1b[31mb', 'a\uFFFDb'],
    [SAMPLES.feel, 'unknown', "don't know"],
    [SAMPLES.parts, [{ shape: 'rectangle', lengthM: 12, widthM: 7 }], '12 m by 7 m: 84 m2'],
  ] as [typeof SAMPLES.sun, AnswerValue, string][])('%#', (sample, value, words) => {
    expect(showAnswer(sample, value)).toBe(words);
  });

  it('shows parts that describe no lawn, as a file may hold them', () => {
    expect(showAnswer(SAMPLES.parts, [{ shape: 'circle', diameterM: -1 }])).toBe(
      'a circle -1 m across: no area',
    );
  });

  it('shows an option that the pack no longer has as it stands', () => {
    expect(showAnswer(SAMPLES.feel, 'spongy')).toBe('spongy');
  });
});
