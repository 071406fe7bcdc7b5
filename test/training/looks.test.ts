import { describe, expect, it } from 'vitest';
import { judgeLook, praiseInFull } from '../../src/training/judge-look.js';
import { nameMeant, notMeant, whatIsSeen } from '../../src/training/looks.js';
import type { WorkedCase } from '../../src/training/worked-case.js';
import { byId, worked } from './book.js';

const green = byId('spongy-green');
const look = (each: WorkedCase, id: string) => {
  const question = each.looks.find((other) => other.id === id);
  if (question === undefined) throw new Error(`no look ${id}`);
  return question;
};

describe('a typed look', () => {
  it.each([
    ['screwdriver', 'screwdriver'],
    ['Screwdriver test', 'screwdriver'],
    ['moss cover', 'mossFraction'],
    ['thatch depth', 'thatchDepthMm'],
    ['buried', 'buriedServices'],
    ['dog on', 'dog'],
    ['childern on the lawn', 'children'],
    ['puddles', 'puddles'],
  ])('"%s" means %s', (typed, id) => {
    expect(nameMeant(typed, green.looks)?.id).toBe(id);
  });

  it.each(['label', 'the', '', '0', '999', 'xyzzy'])(
    '"%s" means nothing, or more than one thing',
    (typed) => {
      expect(nameMeant(typed, green.looks)).toBeUndefined();
    },
  );

  it.each([
    ['label', /^"label" can mean .*label rate of the liquid, label water or label wait\./],
    ['0', /from 1 to \d+/],
    ['999', /from 1 to \d+/],
    ['xyzzy', /fits none/],
  ])('"%s" is told what it fits', (typed, says) => {
    expect(notMeant(typed, green.looks)).toMatch(says);
  });

  it('is the number of a list, from 1', () => {
    expect(nameMeant('1', green.looks)).toBe(green.looks[0]);
    expect(nameMeant(String(green.looks.length), green.looks)).toBe(green.looks.at(-1));
  });

  it('can be named by its label in every case', () => {
    for (const each of worked)
      for (const question of each.looks) expect(nameMeant(question.label, each.looks)).toBe(question);
  });
});

describe('a look', () => {
  it('shows the words of the case, or else the bare answer', () => {
    expect(whatIsSeen(green, look(green, 'dog'))).toMatch(/spaniel/);
    expect(whatIsSeen(green, look(green, 'mowingHeightMm'))).toBe('35 mm.');
    expect(whatIsSeen(green, look(green, 'soilPh'))).toBe('pH 6.5.');
  });

  it('at what is not there says so and is pointless', () => {
    expect(whatIsSeen(green, look(green, 'grubsInSquare'))).toMatch(/nothing of the kind/);
    expect(judgeLook(green, look(green, 'grubsInSquare'), ['buriedServices']).kind).toBe('pointless');
  });

  it.each([
    ['a needed look is on track', 'mossFraction', [], 'on-track'],
    ['a danger is on track', 'dog', [], 'on-track'],
    ['any look for safety is sound', 'children', [], 'sound'],
    ['ruling out a look-alike is sound', 'puddles', [], 'sound'],
    ['digging before asking what lies below is early', 'thatchDepthMm', ['mossFraction'], 'early'],
    ['digging after it is on track', 'thatchDepthMm', ['buriedServices'], 'on-track'],
    ['the sprayer before the diagnosis is early', 'tankL', ['mossFraction'], 'early'],
    [
      'the sprayer after the diagnosis is on track',
      'tankL',
      ['buriedServices', 'areaM2', 'mossFraction', 'weedFraction', 'bareFraction', 'thatchDepthMm'],
      'on-track',
    ],
    ['what the plan may use is relevant and no more', 'grassType', [], 'relevant'],
  ] as const)('%s', (_, id, before, kind) => {
    expect(judgeLook(green, look(green, id), before).kind).toBe(kind);
  });

  it('is praised before the commit without a finding, and afterwards with each that it settled', () => {
    const judged = judgeLook(green, look(green, 'thatchDepthMm'), ['buriedServices']);
    expect(judged.says).toMatch(/It settled \d possible troubles/);
    expect(judged.says).not.toMatch(/felt of old stems/);
    expect(praiseInFull(green, judged)).toMatch(/It showed: A thick felt of old stems/);
    expect(praiseInFull(green, judged)).toMatch(/It ruled out: .*thatch/);
  });

  it('names what it settled, for later', () => {
    expect(judgeLook(green, look(green, 'mossFraction'), []).settled).toContain('mossy');
    expect(judgeLook(green, look(green, 'mossFraction'), ['mossFraction']).settled).toEqual([]);
  });
});
