/** Any lawn that was answered can be drilled: the draft made of it passes every check of a case. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answers } from '../../src/interview/answers.js';
import { ScheduleClash } from '../../src/planner/assemble-plan.js';
import { caseFrom } from '../../src/training/case-from.js';
import { checkCase } from '../../src/training/check-case.js';
import { markAttempt } from '../../src/training/marks.js';
import { perfectAttempt } from '../../src/training/perfect.js';
import { wordedCase } from '../../src/training/worded-case.js';
import { workOut } from '../../src/training/worked-case.js';
import { anyFullAnswers } from '../data/full-answers.js';
import { pack } from '../planner/any-lawn.js';
import { book } from './book.js';

const { marking } = book;
const TODAY = '2026-04-01';
const journeys = readdirSync('transcripts-examples').filter((name) => {
  try {
    return readFileSync(`transcripts-examples/${name}/answers.json`).length > 0;
  } catch {
    return false;
  }
});

function drafted(answers: Answers) {
  try {
    return caseFrom(answers, TODAY, pack, marking);
  } catch (error) {
    // A lawn that no dates fit makes no plan, and so no case.
    if (error instanceof ScheduleClash) return undefined;
    throw error;
  }
}

function holds(answers: Answers): void {
  const lesson = drafted(answers);
  fc.pre(lesson !== undefined);
  if (lesson === undefined) return;
  expect(checkCase(lesson, pack, marking)).toEqual([]);
  const worked = workOut(lesson, pack, marking);
  expect(markAttempt(worked, perfectAttempt(worked)).total).toBeCloseTo(100, 9);
}

describe('a case made of answers', () => {
  it.each(journeys)('of the journey %s is sound, and can be done perfectly', (name) => {
    const file = readFileSync(`transcripts-examples/${name}/answers.json`, 'utf8');
    const { answers } = JSON.parse(file) as { answers: Answers };
    expect(drafted(answers)).toBeDefined();
    holds(answers);
  });

  it('of any lawn whose owner answered everything is sound, and can be done perfectly', () => {
    fc.assert(fc.property(anyFullAnswers, holds), { numRuns: 25, seed: 6 });
  });

  it('says nothing that was not answered: the usual lawn of the bundled cases fills in nothing', () => {
    const { answers } = caseFrom({ mossFraction: 0.4 }, TODAY, pack, marking);
    expect(answers.mossFraction).toBe(0.4);
    expect(answers.dog).toBe('unknown');
    expect(answers.weedFraction).toBe('unknown');
  });

  it('asks for the area only where it has to be worked out, and for no amount where the size is not known', () => {
    const asks = (answers: Answers): string[] =>
      caseFrom(answers, TODAY, pack, marking).amounts.map(({ id }) => id);
    const lawnParts = [{ shape: 'rectangle', lengthM: 12, widthM: 7 }] as const;
    expect(asks({ mossFraction: 0.4 })).toEqual([]);
    expect(asks({ areaM2: 84, mossFraction: 0.4 })).toContain('seed-ryegrass-mix');
    expect(asks({ areaM2: 84, mossFraction: 0.4 })).not.toContain('area');
    expect(asks({ lawnParts, mossFraction: 0.4 })[0]).toBe('area');
  });

  it('has paving beside treated moss among its dangers', () => {
    const file = readFileSync('transcripts-examples/mossy-family-lawn/answers.json', 'utf8');
    const { answers } = JSON.parse(file) as { answers: Answers };
    const { dangers, amounts, needs } = caseFrom(answers, '2027-03-13', pack, marking);
    expect(dangers.map(({ look }) => look)).toContain('pavingBeside');
    expect(amounts.map(({ id }) => id)).toContain('moss-product');
    expect(needs).toEqual(expect.arrayContaining(['areaM2', 'labelRateMlPerM2']));
  });

  it('tells measured parts as measures, never as an area', () => {
    const lawnParts = [
      { shape: 'rectangle', lengthM: 12, widthM: 7 },
      { shape: 'circle', diameterM: 2, minus: true },
    ] as const;
    const lesson = caseFrom({ lawnParts }, TODAY, pack, marking);
    expect(wordedCase(lesson, 'metric').seen.areaM2).toBe(
      'rectangle: length 12 m, width 7 m; less circle: diameter 2 m.',
    );
    // 1 ft is 0.3048 m exactly.
    expect(wordedCase(lesson, 'us').seen.areaM2).toBe(
      'rectangle: length 39.4 ft, width 23 ft; less circle: diameter 6.56 ft.',
    );
  });
});
