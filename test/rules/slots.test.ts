import { describe, expect, it } from 'vitest';
import { SLOT, sentencesOf, slotsIn } from '../../src/rules/slots.js';
import { finding, question, tinyPack } from './tiny-pack.js';

/** The name and the wish for a range of each slot that would be filled. */
const filledIn = (text: string) => [...text.matchAll(SLOT)].map(([, name, range]) => [name, range]);

describe('a slot', () => {
  it.each([
    ['Push it in {figures.fork-depth-mm}.', [['figures.fork-depth-mm', undefined]]],
    ['Wait {figures.wait-days range}.', [['figures.wait-days', ' range']]],
    [
      '{facts.germinationDays} or {figures.a1}',
      [
        ['facts.germinationDays', undefined],
        ['figures.a1', undefined],
      ],
    ],
  ])('in "%s" is filled', (text, wanted) => {
    expect(filledIn(text)).toEqual(wanted);
    expect(slotsIn(text)).toEqual(wanted.map(([name]) => name));
  });

  it.each([
    ['{thatchDepthMm}', 'thatchDepthMm'],
    ['{figure.x}', 'figure.x'],
    ['{figures.}', 'figures.'],
    ['{figures.x  range}', 'figures.x '],
    ['{figures.x range wide}', 'figures.x range wide'],
    ['{figures.x.constructor}', 'figures.x.constructor'],
    ['{__proto__}', '__proto__'],
    ['{}', ''],
  ])('"%s" is none, and is seen as what it is so that the check can tell it', (text, name) => {
    expect(filledIn(text)).toEqual([]);
    expect(slotsIn(text)).toEqual([name]);
  });

  it('is not looked for in words without braces', () => {
    expect(slotsIn('figures.x is not in braces')).toEqual([]);
  });
});

describe('the sentences of a pack', () => {
  it('are told with the record that they stand in, and those that are absent are left out', () => {
    const pack = tinyPack({
      questions: [question('dog', { dontKnow: { assume: null, effect: 'Left.', handTest: 'Whistle.' } })],
      findings: [finding('mossy', true)],
    });
    expect(sentencesOf(pack).map(({ kind, id, text }) => `${kind} ${id}: ${text}`)).toEqual([
      'finding mossy: Because.',
      'finding mossy: Look.',
      'question dog: dog?',
      'question dog: Look.',
      'question dog: It matters.',
      'question dog: Left.',
      'question dog: Whistle.',
    ]);
    expect(sentencesOf(tinyPack({ questions: [question('dog')] }))).toHaveLength(4);
  });
});
