import { describe, expect, it } from 'vitest';
import { readingOf, valueRead } from './read-samples.js';

describe('a choice', () => {
  it.each([
    ['2', 'springy'],
    ['2.', 'springy'],
    ['#2', 'springy'],
    ['springy', 'springy'],
    ['  Very   SPRINGY ', 'very-springy'],
    ['very-springy', 'very-springy'],
    ['very', 'very-springy'],
    ['fi', 'firm'],
    ['the foot sinks', 'very-springy'],
    ['mattress', 'springy'],
    ['frim', 'firm'],
    ['springgy', 'springy'],
  ])('reads %j as %s', (typed, value) => {
    expect(valueRead('feel', typed)).toBe(value);
  });

  it('takes an exact name although others begin with it', () => {
    expect(valueRead('soil', 'sand')).toBe('sand');
    expect(valueRead('soil', 'sandy')).toBe('sandy-loam');
    expect(valueRead('soil', 'ring')).toBe('clay');
  });

  it('repeats the label that it read', () => {
    expect(readingOf('feel', 'springgy')).toEqual({ kind: 'value', value: 'springy', understood: 'springy' });
  });

  it('asks which, when a beginning fits more than one', () => {
    expect(readingOf('soil', 's')).toMatchObject({
      kind: 'which',
      choices: [
        { label: 'sand', value: 'sand' },
        { label: 'sandy loam', value: 'sandy-loam' },
      ],
    });
  });

  it.each(['0', '4', '99', 'x', 'not springy', 'don’t', '', '---', '2 3'])(
    'refuses %j and says what to type',
    (typed) => {
      expect(readingOf('feel', typed)).toMatchObject({
        kind: 'refused',
        says: expect.stringMatching(/from 1 to 3.*don't know/),
      });
    },
  );

  it('does not take a lazy "no" for "checked and clear" where someone could be hurt', () => {
    expect(readingOf('services', 'no')).toMatchObject({
      kind: 'odd',
      value: 'none',
      says: expect.stringContaining('checked'),
    });
    expect(readingOf('services', 'nothing, and I have checked')).toMatchObject({
      kind: 'value',
      value: 'none',
    });
    expect(readingOf('services', '1')).toMatchObject({ kind: 'value', value: 'none' });
    expect(readingOf('services', 'yes')).toMatchObject({ kind: 'refused' });
  });
});

describe('yes or no', () => {
  it.each(['y', 'YES', 'yes', 'yep', '1', 'true', 'yes, a small one', 'Yes.'])('reads %j as yes', (typed) => {
    expect(readingOf('yesNo', typed)).toEqual({ kind: 'value', value: true, understood: 'yes' });
  });

  it.each(['n', 'No', 'nope', '2', 'false', 'never', 'no, not now'])('reads %j as no', (typed) => {
    expect(readingOf('yesNo', typed)).toEqual({ kind: 'value', value: false, understood: 'no' });
  });

  it.each([
    ['no dog', false],
    ['yes a big one', true],
  ])('asks whether %j is meant so', (typed, value) => {
    expect(readingOf('yesNo', typed)).toMatchObject({ kind: 'odd', value });
  });

  it.each(['', 'maybe', 'yes and no', 'no idea', '3', 'not really sure'])('does not guess at %j', (typed) => {
    expect(readingOf('yesNo', typed).kind).toBe('refused');
  });
});
