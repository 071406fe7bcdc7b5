/** Nothing is revealed before the commit: no look, judgement, hint or what-if names a finding, a verdict or a step. */
import { describe, expect, it } from 'vitest';
import { freshAttempt } from '../../src/training/attempt.js';
import { nextHint } from '../../src/training/hints.js';
import { judgeLook } from '../../src/training/judge-look.js';
import { whatIsSeen } from '../../src/training/looks.js';
import { perfectLooks } from '../../src/training/perfect.js';
import { supposeBefore } from '../../src/training/suppose.js';
import type { WorkedCase } from '../../src/training/worked-case.js';
import { pack } from '../planner/any-lawn.js';
import { book, worked } from './book.js';

const cases = worked.map((each) => ({ id: each.lesson.id, each }));
const SECRET = [
  ...pack.findings.map(({ title }) => title),
  ...Object.values(book.marking.verdicts),
  ...book.cases.map(({ lesson }) => lesson),
].map((text) => text.toLowerCase());

function everythingSaid(each: WorkedCase): string[] {
  const said = [...each.lesson.story, each.lesson.topic, each.lesson.title];
  const seen: string[] = [];
  for (const question of each.looks) {
    said.push(whatIsSeen(each, question), judgeLook(each, question, seen).says);
    seen.push(question.id);
  }
  let attempt = freshAttempt('whole');
  for (;;) {
    const hint = nextHint(each, attempt);
    if (hint === undefined) break;
    said.push(hint.says);
    attempt = { ...attempt, hints: [...attempt.hints, hint] };
    if (hint.rung !== 'tell') continue;
    const look = perfectLooks(each).find(({ question }) => question.id === hint.id);
    if (look !== undefined) attempt = { ...attempt, looks: [...attempt.looks, look] };
  }
  for (const question of each.looks.filter(({ kind }) => kind === 'yes-no' || kind === 'choice')) {
    const values =
      question.kind === 'yes-no' ? [true, false] : (question.options ?? []).map(({ value }) => value);
    for (const value of values) said.push(...supposeBefore(each, each.lesson.needs, question, value));
  }
  return said;
}

describe('before the commit', () => {
  it.each(cases)('$id tells no finding, verdict or lesson', ({ each }) => {
    const said = everythingSaid(each);
    expect(said.length).toBeGreaterThan(90);
    for (const text of said)
      for (const secret of SECRET)
        expect(text.toLowerCase().includes(secret), `${text} (${secret})`).toBe(false);
  });

  it.each(cases)('$id is not given away by its name, title or topic', ({ each }) => {
    const { id, title, topic, expected } = each.lesson;
    const shown = `${id} ${title} ${topic}`.toLowerCase();
    for (const finding of expected.findings) expect(shown).not.toContain(finding);
    expect(shown).not.toContain(expected.verdict);
  });

  it.each(cases)('$id does not work out the area', ({ each }) => {
    const question = each.looks.find(({ id }) => id === 'areaM2');
    if (question === undefined || each.answers.lawnParts === undefined) return;
    expect(whatIsSeen(each, question)).not.toContain(String(Math.round(each.plan.lawn.areaM2)));
  });
});
