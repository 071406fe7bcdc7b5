/** The attempt of one who sees only what matters and is right: the worked example, and the measure of the marks. */

import { type Attempt, freshAttempt } from './attempt.js';
import { type JudgedLook, judgeLook } from './judge-look.js';
import { rightAmount } from './right-amount.js';
import type { WorkedCase } from './worked-case.js';

export function perfectAttempt(worked: WorkedCase): Attempt {
  const { lesson } = worked;
  return {
    ...freshAttempt('whole'),
    looks: perfectLooks(worked),
    commitment: {
      verdict: lesson.expected.verdict,
      sure: 1,
      findings: lesson.expected.findings.map((id) => ({ id, sure: 1 })),
    },
    amounts: Object.fromEntries(
      lesson.amounts.map((asked) => [asked.id, rightAmount(worked, asked)?.value ?? null]),
    ),
    order: lesson.expected.steps,
  };
}

/** The good looks in the pack's order: safety first, what opens the ground later, what the plan needs last. */
export function perfectLooks(worked: WorkedCase): JudgedLook[] {
  const order = worked.looks.filter(({ id }) => worked.good.has(id));
  const ids = order.map(({ id }) => id);
  return order.map((question, index) => judgeLook(worked, question, ids.slice(0, index)));
}
