/** Every example of every finding, run through the real scope: found, not found (at the boundary), cannot tell. */
import { describe, expect, it } from 'vitest';
import { parseIsoDate } from '../../src/base/dates.js';
import { judgeFinding } from '../../src/diagnosis/diagnose.js';
import type { Answers } from '../../src/interview/answers.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { pack } from '../planner/any-lawn.js';

// Before every first free day in the examples: a day that is past cannot be worked on.
const today = parseIsoDate('2026-01-01');

describe.each(pack.findings)('$id', (finding) => {
  const examples = Object.entries(finding.examples).flatMap(([verdict, list]) =>
    list.map((answers) => ({ verdict, answers })),
  );

  it.each(examples)('is $verdict for $answers', ({ verdict, answers }) => {
    const scope = scopeFor({ pack, answers: answers as Answers, today, assume: 'nothing' });
    expect(judgeFinding(finding, scope).verdict).toBe(verdict);
  });
});
