import { describe, expect, it } from 'vitest';
import { markAttempt } from '../../src/training/marks.js';
import { perfectAttempt } from '../../src/training/perfect.js';
import {
  type DrillEntry,
  type DrillRecord,
  EMPTY_RECORD,
  entryOf,
  findingStandings,
  nextCase,
  passedCases,
  recordFault,
  skillStandings,
} from '../../src/training/record.js';
import { book, byId, worked } from './book.js';

const entry = (change: Partial<DrillEntry>): DrillEntry => ({
  caseId: 'hard-as-the-road',
  on: '2027-05-08',
  mode: 'whole',
  total: 50,
  passed: false,
  minutes: 9,
  findings: {},
  parts: {},
  ...change,
});
const record = (...drills: readonly DrillEntry[]): DrillRecord => ({ format: 1, drills });
const passedAll = (level: string): DrillEntry[] =>
  book.cases.filter((each) => each.level === level).map(({ id }) => entry({ caseId: id, passed: true }));

describe('the record of a trainee', () => {
  it('counts each finding by how it went, weakest first', () => {
    const kept = record(
      entry({ findings: { mossy: 'named', compacted: 'wrongly named' } }),
      entry({ findings: { mossy: 'missed' } }),
      entry({ findings: { mossy: 'named', acid: 'named' } }),
    );
    expect(findingStandings(kept)).toEqual([
      { id: 'compacted', tries: 1, right: 0 },
      { id: 'mossy', tries: 3, right: 2 / 3 },
      { id: 'acid', tries: 1, right: 1 },
    ]);
  });

  it('takes the mean of each skill', () => {
    const kept = record(entry({ parts: { looks: 1, steps: 0.5 } }), entry({ parts: { looks: 0.5 } }));
    expect(skillStandings(kept)).toEqual([
      { id: 'steps', tries: 1, right: 0.5 },
      { id: 'looks', tries: 2, right: 0.75 },
    ]);
  });

  it('proposes the first case to a beginner, and a harder level only when the easier is passed', () => {
    expect(nextCase(EMPTY_RECORD, book.cases)?.level).toBe('easy');
    expect(nextCase(record(...passedAll('easy')), book.cases)?.level).toBe('middling');
    const two = [...passedAll('easy'), ...passedAll('middling')];
    expect(nextCase(record(...two), book.cases)?.level).toBe('hard');
    expect(nextCase(record(...two, ...passedAll('hard')), book.cases)).toBeUndefined();
  });

  it('counts no case as passed whose looks were shown', () => {
    const finished = record(...passedAll('easy').map((each) => ({ ...each, mode: 'finish' as const })));
    expect(passedCases(finished).size).toBe(0);
    expect(nextCase(finished, book.cases)?.level).toBe('easy');
  });

  it('proposes what went wrong, in another case', () => {
    const kept = record(
      ...passedAll('easy'),
      entry({ caseId: 'dead-or-dozing', findings: { 'dead-turf': 'missed' } }),
      entry({ caseId: 'winter-lake', findings: { 'poor-drainage': 'missed' } }),
    );
    // winter-lake was the last; the other weakness comes first.
    expect(nextCase(kept, book.cases)?.id).toBe('dead-or-dozing');
  });

  it('never proposes the same case at once, while another of its level is open', () => {
    for (const { lesson } of worked) {
      const failed = record(entry({ caseId: lesson.id, findings: { mossy: 'missed' } }));
      expect(nextCase(failed, book.cases)?.id).not.toBe(lesson.id);
    }
  });

  it('keeps of an attempt what it needs, and nothing that was typed', () => {
    const each = byId('spongy-green');
    const attempt = { ...perfectAttempt(each), minutes: 12 };
    const kept = entryOf('spongy-green', '2027-03-13', attempt, markAttempt(each, attempt));
    expect(kept).toEqual({
      caseId: 'spongy-green',
      on: '2027-03-13',
      mode: 'whole',
      total: 100,
      passed: true,
      minutes: 12,
      findings: { mossy: 'named', 'thick-thatch': 'named' },
      parts: { looks: 1, economy: 1, diagnosis: 1, sureness: 1, amounts: 1, steps: 1 },
    });
    expect(recordFault(JSON.parse(JSON.stringify(record(kept))))).toBeUndefined();
  });

  it.each([
    [null],
    [[]],
    [{}],
    [{ format: 2, drills: [] }],
    [{ format: 1, drills: [null] }],
    [{ format: 1, drills: [{ ...entry({}), parts: { looks: 'all' } }] }],
    [{ format: 1, drills: [{ ...entry({}), findings: [] }] }],
  ])('is not %j', (value) => {
    expect(recordFault(value)).toMatch(/./);
  });
});
