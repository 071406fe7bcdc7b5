/** How long to wait after a step, for which later step, and the sign that the wait is over. */
import type { RootContent } from 'mdast';
import type { PlanStep, PlanWait } from '../planner/plan.js';
import { bullets, type Part, paragraph, strong } from './nodes.js';
import { type References, stepsInWords } from './references.js';
import { clause, counted, midSentence, said, sentence } from './words.js';

interface WaitGroup {
  readonly wait: PlanWait;
  readonly before: PlanStep[];
}

/**
 * The waits of later steps that count from this one. A plain "not before" without days or a sign says
 * nothing that the order of the steps does not, so it is left out.
 */
export function waitNodes(step: PlanStep, steps: readonly PlanStep[], references: References): RootContent[] {
  const groups = groupsAfter(step, steps);
  const [first] = groups;
  if (first === undefined) return [];
  const lead = strong('Then wait.');
  if (groups.length === 1) return [paragraph(lead, ...waitParts(first, references))];
  return [paragraph(lead), bullets(groups.map((group) => waitParts(group, references)))];
}

function groupsAfter(step: PlanStep, steps: readonly PlanStep[]): WaitGroup[] {
  const groups = new Map<string, WaitGroup>();
  for (const later of steps) {
    for (const wait of later.after) {
      if (wait.step !== step.id || (wait.minDays <= 0 && wait.sign === null)) continue;
      const key = JSON.stringify([wait.minDays, wait.maxDays, wait.sign, wait.why]);
      const group = groups.get(key) ?? { wait, before: [] };
      group.before.push(later);
      groups.set(key, group);
    }
  }
  return withoutRepeats([...groups.values()]);
}

/** A later step that waits no longer than an earlier one already did adds nothing, unless it names a sign of its own. */
function withoutRepeats(groups: readonly WaitGroup[]): WaitGroup[] {
  return groups.filter(
    ({ wait }, index) =>
      !groups
        .slice(0, index)
        .some(
          (earlier) =>
            earlier.wait.minDays >= wait.minDays && (wait.sign === null || wait.sign === earlier.wait.sign),
        ),
  );
}

function waitParts({ wait, before }: WaitGroup, references: References): Part[] {
  const target = targetWords(before, references);
  const days = daysWords(wait);
  return [
    days === '' ? `No set number of days before ${target}.` : `${days} before ${target}.`,
    wait.sign === null || said(wait.sign) === '' ? '' : `It is ready when: ${clause(wait.sign)}`,
    sentence(wait.why),
  ];
}

/** `step 2, scarify`; several steps by number alone. */
function targetWords(before: readonly PlanStep[], references: References): string {
  const numbers = stepsInWords(
    before.map(({ id }) => id),
    references,
  );
  const [only] = before;
  return before.length === 1 && only !== undefined ? `${numbers}, ${midSentence(only.title)}` : numbers;
}

function daysWords({ minDays, maxDays }: PlanWait): string {
  if (minDays <= 0) return '';
  if (maxDays === null) return `At least ${counted(minDays, 'day')}`;
  return minDays === maxDays ? counted(minDays, 'day') : `${minDays} to ${maxDays} days`;
}
