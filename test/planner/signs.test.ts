/**
 * Every symptom that can be answered is accounted for: by a finding, by a harmless reason, or told as unexplained.
 * Which answers are symptoms is the test's own list, common practice and no source: anything an owner would point at.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { documentOf } from '../../src/document/from-plan.js';
import { htmlOf } from '../../src/document/html.js';
import { markdownOf } from '../../src/document/markdown.js';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { pack } from './any-lawn.js';

const { usual } = JSON.parse(readFileSync('rules/cases/marking.json', 'utf8')) as { usual: Answers };
const JULY = parseIsoDate('2027-07-10');
const sound: Answers = { ...usual, startOn: JULY };

const planOf = (answers: Answers, today = JULY): Plan =>
  assemblePlan({ pack, answers: { ...sound, startOn: today, ...answers }, today, assumeAll: true });

/** Symptoms by question; a number stands for a clearly bad value. */
const SYMPTOMS: Readonly<Record<string, readonly AnswerValue[]>> = {
  lawnColour: ['pale', 'brown-patches', 'brown-all'],
  tugTest: ['lifts', 'carpet'],
  underfoot: ['springy', 'very-springy'],
  footprints: ['stay'],
  puddles: ['hours', 'day'],
  mossFraction: [0.1, 0.4],
  weedFraction: [0.05, 0.4],
  bareFraction: [0.05, 0.4],
  gapsOverHand: [true],
  hardWear: [true],
  thatchDepthMm: [14, 30],
  rootsInThatch: [true],
  screwdriver: ['effort', 'stops'],
  soilCrumbs: ['solid'],
  soilPh: [5.2, 8],
  dropSeconds: [60],
  sunHoursPerDay: [1, 3, 5],
  levels: ['bumpy', 'regrade'],
  mowerCut: ['frayed'],
  dogPatches: [true],
  grubsInSquare: [1, 9],
};
/** What has to be answered for the question to arise at all. */
const ARISES: Readonly<Record<string, Answers>> = {
  tugTest: { lawnColour: 'brown-patches' },
  grubsInSquare: { lawnColour: 'brown-patches', tugTest: 'lifts' },
  rootsInThatch: { thatchDepthMm: 30 },
  dogPatches: { dog: true },
};
/** Questions of the lawn whose other answers are no symptom: what it is, how it is kept, or what stands near. */
const NO_SYMPTOM = ['sownOn', 'sownAs', 'weedKind', 'grassType', 'soilTexture'];

const walked = Object.entries(SYMPTOMS).flatMap(([id, values]) => values.map((value) => ({ id, value })));

describe('a symptom that was told', () => {
  it.each(walked)('$id=$value is accounted for', ({ id, value }) => {
    const { signs } = planOf({ ...ARISES[id], [id]: value });
    const own = signs.filter(({ questionIds }) => questionIds.includes(id));
    expect(own.length).toBeGreaterThan(0);
    for (const { account, by, maybe, look, answer } of own) {
      expect(answer).not.toBe('');
      if (account === 'unexplained') {
        expect(maybe.length).toBeGreaterThan(0);
        expect(maybe.length).toBeLessThanOrEqual(3);
        expect(look).toMatch(/\.$/);
      } else expect(by.length).toBeGreaterThan(0);
    }
  });

  it('has a record wherever the owner of a lawn looks or digs; a new question needs one in rules/signs.json', () => {
    const looked = pack.questions.filter(({ section }) => section === 'look' || section === 'dig');
    const told = new Set(pack.signs.flatMap(({ questions }) => questions));
    expect(looked.map(({ id }) => id).filter((id) => !told.has(id) && !NO_SYMPTOM.includes(id))).toEqual([]);
  });

  it('is told of no sound lawn', () => {
    expect(planOf({}).signs).toEqual([]);
    expect(markdownOf(documentOf(planOf({})))).not.toContain('I cannot explain this');
  });

  it('is told of nothing that nobody answered', () => {
    const nothing = Object.fromEntries(pack.questions.map(({ id }) => [id, 'unknown']));
    expect(assemblePlan({ pack, answers: nothing, today: JULY, assumeAll: true }).signs).toEqual([]);
  });
});

describe('brown patches that hold, with rain the day before', () => {
  const brown: Answers = { lawnColour: 'brown-patches', tugTest: 'holds', lastRainDaysAgo: 1 };

  it('are printed as unexplained, with the answer, what they may be and the next look', () => {
    const plan = planOf(brown);
    for (const text of [markdownOf(documentOf(plan)), htmlOf(plan)]) {
      expect(text).toContain('I cannot explain this');
      expect(text).toContain('brown in patches');
      // NC State turf pathology: the needles prove it, and crowns and roots stay sound.
      expect(text).toMatch(/red thread/);
      expect(text).toMatch(/rubble|drought/);
      expect(text).toMatch(/Look next/);
    }
    const sign = plan.signs.find(({ questionId }) => questionId === 'lawnColour');
    expect(sign).toMatchObject({ account: 'unexplained', by: [] });
    expect(plan.sources.map(({ id }) => id)).toEqual(
      expect.arrayContaining(sign?.sources.map(({ id }) => id) ?? ['']),
    );
  });

  it('may be snow mould in winter and not in July, and half a year on in the south', () => {
    // Michigan State: every month but July and August is possible, cold and wet ones likely.
    const maybeOn = (day: string, place: string): string =>
      planOf({ ...brown, place }, parseIsoDate(day))
        .signs.flatMap(({ maybe }) => maybe)
        .join(' ');
    expect(maybeOn('2027-01-15', 'Oxford')).toMatch(/snow mould/);
    expect(maybeOn('2027-07-10', 'Oxford')).not.toMatch(/snow mould/);
    expect(maybeOn('2027-07-10', '-37.8, 144.9')).toMatch(/snow mould/);
    expect(maybeOn('2027-01-15', '-37.8, 144.9')).not.toMatch(/snow mould/);
  });
});

describe('answers that do not go together', () => {
  const CLASHES: readonly Answers[] = [
    { underfoot: 'very-springy', thatchDepthMm: 3 },
    { puddles: 'day', soilTexture: 'sand' },
    { dropSeconds: 60, puddles: 'day' },
    { lawnColour: 'brown-all', tugTest: 'lifts', bareFraction: 0.02 },
    { lawnColour: 'brown-all', tugTest: 'lifts', bareFraction: 0.02, puddles: 'none', underfoot: 'firm' },
    { lawnColour: 'brown-patches', tugTest: 'carpet', grubsInSquare: 0 },
  ];

  it.each(CLASHES)('are printed as such and leave nothing sure: %j', (answers) => {
    const plan = planOf(answers);
    const clashes = plan.signs.filter(({ isClash }) => isClash);
    expect(clashes.length).toBeGreaterThan(0);
    const [clash] = clashes as [Plan['signs'][number]];
    const told = Object.keys(answers).filter((id) => clash.questionIds.includes(id));
    expect(told.length).toBeGreaterThan(1);
    expect(plan.verdict.sure).toBe(false);
    const markdown = markdownOf(documentOf(plan));
    expect(markdown).toContain('I cannot explain this');
    expect(markdown).toContain('do not go together');
    expect(markdown).not.toMatch(/\bSure:/);
  });

  it('clash no more when one of them is not so', () => {
    for (const answers of [
      { underfoot: 'very-springy', thatchDepthMm: 30 },
      { puddles: 'day', soilTexture: 'clay' },
      { lawnColour: 'brown-all', tugTest: 'lifts', bareFraction: 0.8 },
    ] as Answers[])
      expect(planOf(answers).signs.filter(({ isClash }) => isClash)).toEqual([]);
  });
});
