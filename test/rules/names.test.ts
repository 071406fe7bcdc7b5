/** What each readable name of a pack gives to a condition: kind, unit and the words it can be. */
import { describe, expect, it } from 'vitest';
import { answerOf, readableNames } from '../../src/rules/names.js';
import type { Question } from '../../src/rules/schema.js';
import { figure, finding, question, tinyPack } from './tiny-pack.js';

describe('an answer to a question of kind', () => {
  it.each<[Question['kind'], Partial<Question>, object]>([
    ['yes-no', {}, { kind: 'truth' }],
    ['number', { unit: 'mm' }, { kind: 'number', unit: 'mm' }],
    ['number', { unit: 'hours a day' }, { kind: 'number', unit: 'h/d' }],
    ['number', { unit: 'degrees' }, { kind: 'number', unit: 'deg' }],
    ['number', {}, { kind: 'number', unit: undefined }],
    ['fraction', {}, { kind: 'number', unit: 'fraction' }],
    ['days-ago', {}, { kind: 'number', unit: 'd' }],
    ['area', {}, { kind: 'number', unit: 'm2' }],
    ['date', {}, { kind: 'word' }],
    ['text', {}, { kind: 'word' }],
    ['place', {}, { kind: 'word' }],
    [
      'choice',
      {
        options: [
          { value: 'sand', label: 'Sand' },
          { value: 'clay', label: 'Clay' },
        ],
      },
      { kind: 'word', words: ['sand', 'clay'] },
    ],
  ])('%s %j gives %j', (kind, rest, wanted) => {
    expect(answerOf(question('x', { kind, ...rest }))).toEqual(wanted);
  });
});

describe('the readable names of a pack', () => {
  const pack = tinyPack({
    questions: [question('dog')],
    figures: [figure('limit', 13)],
    facts: [{ id: 'over', what: 'x', kind: 'number', unit: 'mm', value: 1 }],
    findings: [finding('mossy', true)],
  });

  it('stand under their kind, and nothing else can be read', () => {
    expect([...readableNames(pack)]).toEqual([
      ['dog', { kind: 'truth' }],
      ['facts.over', { kind: 'number', unit: 'mm' }],
      ['findings.mossy', { kind: 'truth' }],
      ['figures.limit', { kind: 'number', unit: 'mm' }],
    ]);
  });

  it.each(['constructor', '__proto__', 'hasOwnProperty', 'toString'])('have no "%s"', (name) => {
    expect(readableNames(pack).get(name)).toBeUndefined();
  });
});
