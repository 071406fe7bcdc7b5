/** What asks about another answer comes after it, and not at all where that answer is not known. */
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import type { Answers, AnswerValue } from '../../src/interview/answers.js';
import { openSession } from '../../src/interview/session.js';
import { ASKED_BY_PROGRAM } from '../../src/planner/asked-by-program.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { pack } from '../planner/any-lawn.js';

const today = parseIsoDate('2027-03-13');

/** The questions put to somebody who knows these answers and no other. */
function asked(known: Answers): string[] {
  const session = openSession({
    pack,
    answers: {},
    scopeOf: (answers) => scopeFor({ pack, answers, today, assume: 'said', timing: 'open' }),
    alsoAsk: ASKED_BY_PROGRAM,
  });
  const ids: string[] = [];
  for (let next = session.next(); next !== undefined; next = session.next()) {
    ids.push(next.question.id);
    session.answer(next.question.id, (known[next.question.id] ?? 'unknown') as AnswerValue);
  }
  return ids;
}

describe('a question about another answer', () => {
  it('comes right after it: how big, and then how that was measured', () => {
    const ids = asked({ mossFraction: 0.4, areaM2: 84 });
    expect(ids).toContain('areaM2');
    expect(ids[ids.indexOf('areaM2') + 1]).toBe('measuredBy');
  });

  it('is not put where there is no such answer', () => {
    const ids = asked({ mossFraction: 0.4 });
    expect(ids).toContain('areaM2');
    expect(ids).not.toContain('measuredBy');
  });

  it('does not ask when it was done of someone who does not know whether it was', () => {
    const unknown = asked({ mossFraction: 0.4, bareFraction: 0.3 });
    expect(unknown).toContain('weedkiller');
    expect(unknown).not.toContain('weedkillerLastOn');
    expect(asked({ mossFraction: 0.4, bareFraction: 0.3, weedkiller: 'done' })).toContain('weedkillerLastOn');
  });
});
