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
  watchedEntry,
  withEntry,
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
    expect(nextCase(EMPTY_RECORD, book)?.level).toBe('easy');
    expect(nextCase(record(...passedAll('easy')), book)?.level).toBe('middling');
    const two = [...passedAll('easy'), ...passedAll('middling')];
    expect(nextCase(record(...two), book)?.level).toBe('hard');
    expect(nextCase(record(...two, ...passedAll('hard')), book)).toBeUndefined();
  });

  it('counts no case as passed whose looks were shown', () => {
    const finished = record(...passedAll('easy').map((each) => ({ ...each, mode: 'finish' as const })));
    expect(passedCases(finished, book.cases).size).toBe(0);
    expect(nextCase(finished, book)?.level).toBe('easy');
  });

  it('proposes what went wrong, in another case', () => {
    const kept = record(
      ...passedAll('easy'),
      entry({ caseId: 'dead-or-dozing', findings: { 'dead-turf': 'missed' } }),
      ...['winter-lake', 'tussocks', 'old-pound'].map((caseId) => entry({ caseId, passed: true })),
    );
    // It has rested for three others.
    expect(nextCase(kept, book)?.id).toBe('dead-or-dozing');
  });

  it('never proposes the same case at once, while another of its level is open', () => {
    for (const { lesson } of worked) {
      const failed = record(entry({ caseId: lesson.id, findings: { mossy: 'missed' } }));
      expect(nextCase(failed, book)?.id).not.toBe(lesson.id);
    }
  });

  it('never goes to and fro between two cases that are failed, while others are open', () => {
    let drills: DrillEntry[] = [];
    for (let round = 0; round < 14; round++) {
      const next = nextCase(record(...drills), book);
      const findings = Object.fromEntries(
        (next?.expected.findings ?? []).map((id) => [id, 'missed' as const]),
      );
      drills = [...drills, entry({ caseId: next?.id ?? '', findings })];
    }
    const ids = drills.map(({ caseId }) => caseId);
    ids.forEach((id, index) => {
      expect(ids.slice(Math.max(0, index - book.marking.moving.restFor), index)).not.toContain(id);
    });
    expect(new Set(ids).size).toBeGreaterThan(3);
  });

  it('leaves a level behind after three good passes of it, or of a harder one, and not after weak ones', () => {
    const three = (level: string, total: number) =>
      record(
        ...passedAll(level)
          .slice(0, 3)
          .map((each) => ({ ...each, total })),
      );
    expect(nextCase(three('easy', 90), book)?.level).toBe('middling');
    expect(nextCase(three('easy', 72), book)?.level).toBe('easy');
    expect(nextCase(three('hard', 95), book)?.level).not.toBe('easy');
    // What was left behind comes again when the rest is done.
    const rest = [...passedAll('middling'), ...passedAll('hard'), ...three('easy', 90).drills];
    expect(nextCase(record(...rest), book)?.level).toBe('easy');
  });

  it('counts no lawn of their own among the cases of the book', () => {
    const own = record(entry({ caseId: 'own-lawn', passed: true }));
    expect(passedCases(own, book.cases).size).toBe(0);
  });

  it('knows a case that was watched before', () => {
    const watched = withEntry(EMPTY_RECORD, watchedEntry('july-straw', '2027-07-17', 4));
    expect(watched.drills[0]).toMatchObject({ mode: 'watch', passed: false });
    expect(recordFault(JSON.parse(JSON.stringify(watched)))).toBeUndefined();
    const after = withEntry(watched, entry({ caseId: 'july-straw', passed: true }));
    expect(after.drills[1]).toMatchObject({ isAgain: true });
    expect(withEntry(watched, entry({ caseId: 'kiln-lane' })).drills[1]).not.toHaveProperty('isAgain');
  });

  it('keeps what went wrong as well: the verdict, how sure, hints, and how a danger was minded', () => {
    const each = byId('spongy-green');
    const { looks } = perfectAttempt(each);
    const attempt = {
      ...perfectAttempt(each),
      looks: looks.filter(({ question }) => question.id !== 'dog'),
      hints: [{ towards: 'look' as const, id: 'dog', rung: 'point' as const }],
      commitment: { verdict: 'care-only' as const, sure: 0.6, findings: [{ id: 'acid', sure: 0.4 }] },
    };
    expect(entryOf('spongy-green', '2027-03-13', attempt, markAttempt(each, attempt))).toMatchObject({
      passed: false,
      verdict: { said: 'care-only', isRight: false, sure: 0.6 },
      sure: { acid: 0.4 },
      findings: { acid: 'wrongly named', mossy: 'missed' },
      hints: attempt.hints,
      dangers: { dog: 'unseen', pavingBeside: 'seen' },
    });
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
      verdict: { said: 'renovate', isRight: true, sure: 1 },
      sure: { mossy: 1, 'thick-thatch': 1 },
      looks: perfectAttempt(each).looks.map(({ question }) => question.id),
      hints: [],
      dangers: { dog: 'seen', pavingBeside: 'seen' },
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
