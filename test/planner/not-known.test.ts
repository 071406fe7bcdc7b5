/** "Don't know" is not "healthy": no verdict out of nothing, assumptions that heed what was seen, and both what and when. */
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { documentOf } from '../../src/document/from-plan.js';
import { markdownOf } from '../../src/document/markdown.js';
import { summaryOf } from '../../src/document/summary.js';
import type { Answers } from '../../src/interview/answers.js';
import { assemblePlan } from '../../src/planner/assemble-plan.js';
import type { Plan } from '../../src/planner/plan.js';
import { pack } from './any-lawn.js';

const APRIL = parseIsoDate('2027-04-10');
const planOf = (answers: Answers, today = APRIL): Plan =>
  assemblePlan({ pack, answers, today, assumeAll: true });
const markdownFor = (plan: Plan): string => markdownOf(documentOf(plan));
const unknown: Answers = Object.fromEntries(pack.questions.map(({ id }) => [id, 'unknown']));

describe('a lawn of which next to nothing is known', () => {
  it.each([
    ['nothing', unknown],
    ['dog and children only', { ...unknown, dog: true, children: true }],
    ['not even "don\'t know"', {}],
    ['a long drought, and the colour not seen', { ...unknown, lastRainDaysAgo: 40 }],
  ])('gets no judgement but the looks that decide: %s', (_, answers) => {
    const plan = planOf(answers as Answers);
    expect(plan.verdict.title).toMatch(/not known/i);
    expect(plan.verdict.sure).toBe(false);
    const markdown = markdownFor(plan);
    expect(markdown).not.toMatch(/\*\*good care is enough|dormant, not dead/i);
    expect(summaryOf(plan)).toMatch(/not known/i);
    const { looks } = plan.verdict.sureness;
    expect(looks.length).toBeGreaterThan(0);
    expect(looks.length).toBeLessThanOrEqual(3);
    for (const look of looks) {
      expect(look).toMatch(/minutes|chair/);
      expect(look).toMatch(/it would be|sow/);
      expect(markdown).toContain(look.slice(0, 30));
    }
  });

  it('is judged as soon as what was seen speaks for work', () => {
    const mossy = planOf({ ...unknown, mossFraction: 0.4 });
    expect(mossy.verdict.title).toMatch(/renovate/i);
    const dark = planOf({ ...unknown, sunHoursPerDay: 1 });
    expect(dark.verdict.title).toMatch(/dark/i);
    const sound = planOf({
      ...unknown,
      mossFraction: 0,
      bareFraction: 0,
      weedFraction: 0,
      gapsOverHand: false,
      lawnColour: 'green',
    });
    expect(sound.verdict.title).toMatch(/care/i);
  });
});

describe('an assumption', () => {
  const shady: Answers = {
    treesNear: true,
    lawnColour: 'pale',
    bareFraction: 0.25,
    mossFraction: 'unknown',
    sunHoursPerDay: 'unknown',
    areaM2: 22,
    children: false,
    dog: false,
    thatchDepthMm: 10,
    underfoot: 'springy',
    gapsOverHand: true,
    startOn: '2027-04-17',
    hardWear: false,
  };

  it('takes trees and pale grass for shade, and shade for a place with moss', () => {
    const plan = planOf(shady);
    const assumed = (id: string): string =>
      plan.assumptions.find(({ questionId }) => questionId === id)?.assumed ?? '';
    // Reeves and others: under four hours only shade mixes have a chance.
    expect(Number.parseFloat(assumed('sunHoursPerDay'))).toBeLessThan(4);
    expect(Number.parseFloat(assumed('mossFraction'))).toBeGreaterThan(0);
    const seed = plan.steps.flatMap(({ amounts }) => amounts).map(({ title }) => title);
    expect(seed.join(' ')).toMatch(/fescue|shade/i);
    expect(seed.join(' ')).not.toMatch(/ryegrass/i);
    expect(plan.steps.map(({ title }) => title).join(' ')).toMatch(/rake|scarif/i);
    expect(plan.verdict.sure).toBe(false);
    const named = plan.verdict.wouldChange.map(({ questionId }) => questionId);
    expect(named).toEqual(expect.arrayContaining(['mossFraction', 'sunHoursPerDay']));
  });

  it('takes a sunny lawn without moss for one where nothing points to shade or wet', () => {
    const plan = planOf({ ...shady, treesNear: false, lawnColour: 'green' });
    const assumed = (id: string): string =>
      plan.assumptions.find(({ questionId }) => questionId === id)?.assumed ?? '';
    expect(Number.parseFloat(assumed('sunHoursPerDay'))).toBeGreaterThanOrEqual(6);
    expect(Number.parseFloat(assumed('mossFraction'))).toBe(0);
    const wet = planOf({ ...shady, treesNear: false, lawnColour: 'green', puddles: 'day' });
    expect(
      Number.parseFloat(
        wet.assumptions.find(({ questionId }) => questionId === 'mossFraction')?.assumed ?? '0',
      ),
    ).toBeGreaterThan(0);
  });

  it('never speaks in the voice of the owner, above all of cables', () => {
    const plan = planOf({
      ...unknown,
      mossFraction: 0.4,
      screwdriver: 'stops',
      lastRainDaysAgo: 1,
      puddles: 'day',
    });
    const { assumptions } = plan;
    for (const { says, label, assumed, effect } of assumptions)
      expect(`${says ?? `${label}: ${assumed}`} ${effect}`).not.toMatch(/\b(I|my|mine)\b/);
    const markdown = markdownFor(plan);
    expect(markdown).toContain('We treat the ground as if something is buried: no corer, no deep fork.');
    expect(markdown).not.toMatch(/I know where it runs/);
  });
});

describe('work that has to wait for its season', () => {
  const levels: Answers = {
    ...unknown,
    place: 'Oxford',
    startOn: '2026-11-20',
    sunHoursPerDay: 7,
    levels: 'regrade',
  };

  it('says what is meant, and when', () => {
    const today = parseIsoDate('2026-11-20');
    const plan = planOf(levels, today);
    expect(plan.verdict.title).toMatch(/season/i);
    expect(plan.verdict.title).toMatch(/start again/i);
    const sown = plan.steps.find(({ id }) => id === 'sow')?.startOn ?? '';
    const markdown = markdownFor(plan);
    expect(markdown).toMatch(/too little wanted grass|levels have to change/i);
    expect(plan.verdict.says.join(' ')).toContain(String(Number(sown.slice(-2))));
    expect(plan.verdict.says.join(' ')).toMatch(/2027/);
    expect(markdown).not.toMatch(/the renovation is dated/i);
  });

  it('says that the standing water comes first', () => {
    const plan = planOf({ ...levels, puddles: 'day' }, parseIsoDate('2026-11-20'));
    expect(markdownFor(plan)).toMatch(/why water stands for a day/i);
  });
});

describe('a reason', () => {
  it('says in words from where something counts, and of the season when it opens', () => {
    const today = parseIsoDate('2026-11-20');
    const plan = planOf(
      { ...unknown, place: 'Oxford', startOn: today, sunHoursPerDay: 3, mossFraction: 0.4 },
      today,
    );
    const markdown = markdownFor(plan);
    expect(markdown).not.toMatch(/\(limit/);
    expect(markdown).not.toMatch(/wait until the season is fit/i);
    expect(markdown).toMatch(/the season opens in \d+ days/i);
    // One sign with two ends is told once.
    expect(markdown).not.toMatch(/hours of sun 3 hours a day[^.]*hours of sun 3 hours a day/i);
  });
});
