/** A case as one would do it who sees only what matters: every look with its reason, then what it comes to. */

import type { DrillMode } from '../../training/attempt.js';
import { praiseInFull } from '../../training/judge-look.js';
import { capital, whatIsSeen } from '../../training/looks.js';
import { perfectLooks } from '../../training/perfect.js';
import { amountWords, rightAmount } from '../../training/right-amount.js';
import { verdictReason } from '../../training/verdict-words.js';
import type { DrillParts } from './parts.js';

/** Shows the looks and the diagnosis; watched to the end, also the amounts and the steps. */
export async function showWorked(parts: DrillParts, mode: Exclude<DrillMode, 'whole'>): Promise<void> {
  for (const [index, text] of pages(parts, mode).entries()) {
    if (index > 0) await turn(parts);
    parts.asker.say(text);
  }
}

/** Waits for Enter; who pipes nothing in reads on. */
async function turn({ asker }: DrillParts): Promise<void> {
  if (asker.left?.() === undefined) await asker.line('Enter goes on', '');
}

function pages({ worked }: DrillParts, mode: Exclude<DrillMode, 'whole'>): string[] {
  const { lesson, plan, pack, marking, units } = worked;
  const looks = perfectLooks(worked).map(
    (look) =>
      `${capital(look.question.label)}\n${whatIsSeen(worked, look.question)}\nWhy look there: ${praiseInFull(worked, look)}`,
  );
  const misleads = lesson.misleads.map(({ says }) => `Do not be misled: ${says}`);
  const findings = lesson.expected.findings.map((id) => {
    const because = plan.findings.find((finding) => finding.id === id)?.because ?? '';
    return `${pack.findingById.get(id)?.title ?? id}. ${because}`;
  });
  const verdict = `So: ${marking.verdicts[lesson.expected.verdict]}. ${verdictReason(worked, mode === 'watch')}`;
  const dangers = lesson.dangers.map(({ says }) => `Mind: ${says}`);
  const diagnosis = [...findings, verdict, ...misleads, ...dangers].join('\n');
  if (mode === 'finish') return [...looks, diagnosis];
  const amounts = lesson.amounts.map((asked) => {
    const right = rightAmount(worked, asked);
    return `${asked.ask}\n${asked.byHand.working} ${right === undefined ? '' : `That is ${amountWords(right.value, right, units)}.`}`;
  });
  const steps = lesson.expected.steps.map((id, index) => {
    const step = plan.steps.find((each) => each.id === id);
    return `${index + 1}. ${step?.title ?? id}. ${step?.purpose ?? ''}`;
  });
  return [...looks, diagnosis, ...amounts, steps.join('\n'), `To take home: ${lesson.lesson}`];
}
