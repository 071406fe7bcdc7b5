import { describe, expect, it } from 'vitest';
import type { Pack } from '../../src/rules/pack.js';
import type { Question } from '../../src/rules/schema.js';
import { moveOver } from '../../src/session/move-over.js';
import { question } from '../interview/read-samples.js';
import { tinyPack } from '../rules/tiny-pack.js';

const packOf = (...questions: readonly Question[]) => tinyPack({ questions });
const feel = question({
  id: 'feel',
  kind: 'choice',
  options: [
    { value: 'firm', label: 'firm' },
    { value: 'soft', label: 'soft' },
  ],
});
const dog = question({ id: 'dog', kind: 'yes-no' });
const sun = question({ id: 'sun', kind: 'number', unit: 'hours a day' });
const before = packOf(feel, dog, sun);
const answers = [
  { questionId: 'feel', value: 'firm', typed: '1' },
  { questionId: 'dog', value: true, typed: 'yes' },
  { questionId: 'sun', value: 6, typed: '6' },
];
const ids = (to: Pack, from: Pack | 'not at hand' = before, fits = () => true) =>
  Object.fromEntries(
    Object.entries(moveOver({ answers, from: from === 'not at hand' ? undefined : from, to, fits })).map(
      ([list, moved]) => [list, moved.map((answer: { readonly questionId: string }) => answer.questionId)],
    ),
  );

describe('answers to other rules', () => {
  it('are all kept where nothing has changed that they answer', () => {
    const reworded = { ...sun, why: 'Another reason.', help: 'Another way to find out.' };
    expect(ids(packOf(dog, reworded, feel))).toEqual({
      kept: ['feel', 'dog', 'sun'],
      askedAgain: [],
      dropped: [],
    });
  });

  it.each([
    ['words', { ...sun, text: 'How many hours of shade?' }],
    ['unit', { ...sun, unit: 'minutes a day' }],
    ['kind', { ...sun, kind: 'days-ago' as const }],
  ])('are asked again where the %s of the question changed', (_what, changed) => {
    expect(ids(packOf(feel, dog, changed))).toEqual({
      kept: ['feel', 'dog'],
      askedAgain: ['sun'],
      dropped: [],
    });
  });

  it('are asked again where the choices changed', () => {
    const options = [...(feel.options ?? []), { value: 'wet', label: 'wet' }];
    expect(ids(packOf({ ...feel, options }, dog, sun)).askedAgain).toEqual(['feel']);
  });

  it('are dropped where the question is gone', () => {
    expect(ids(packOf(dog, sun))).toEqual({ kept: ['dog', 'sun'], askedAgain: [], dropped: ['feel'] });
  });

  it('are judged by the answer alone where the old rules are not at hand', () => {
    const to = packOf(feel, dog, { ...sun, text: 'How many hours of shade?' });
    expect(ids(to, 'not at hand').kept).toEqual(['feel', 'dog', 'sun']);
    expect(ids(to, 'not at hand', () => false).askedAgain).toEqual(['feel', 'dog', 'sun']);
  });
});
