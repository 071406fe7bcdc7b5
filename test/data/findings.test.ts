/** Every example of every finding, run through the real scope: found, not found (at the boundary), cannot tell. */
import { describe, expect, it } from 'vitest';
import { judgeFinding } from '../../src/diagnosis/diagnose.js';
import { examplesOf } from '../../src/planner/check-examples.js';
import { scopeFor } from '../../src/planner/working-scope.js';
import { pack } from '../planner/any-lawn.js';

const examples = examplesOf(pack);

describe.each(pack.findings)('$id', (finding) => {
  it.each(examples.filter((example) => example.finding === finding))(
    'is $wanted for $answers',
    ({ wanted, answers, today }) => {
      const scope = scopeFor({ pack, answers, today, assume: 'nothing' });
      expect(judgeFinding(finding, scope).verdict).toBe(wanted);
    },
  );
});
