/** What can hurt, once and in full, worst first; the steps repeat only the short line. */
import type { RootContent } from 'mdast';
import type { Plan, PlanCaution } from '../planner/plan.js';
import { bullets, heading, type Part, strong } from './nodes.js';
import { markOf, type References, stepsInWords } from './references.js';
import { markedSentence, sentence } from './words.js';

const SEVERITIES = [
  { severity: 'danger', title: 'Danger', word: 'Danger' },
  { severity: 'warning', title: 'Warnings', word: 'Warning' },
  { severity: 'note', title: 'Good to know', word: 'Note' },
] as const;

export function cautionsSection({ cautions }: Plan, references: References): RootContent[] {
  if (cautions.length === 0) return [];
  const groups = SEVERITIES.flatMap(({ severity, title }) => {
    const ofSeverity = cautions.filter((caution) => caution.severity === severity);
    if (ofSeverity.length === 0) return [];
    return [heading(3, title), bullets(ofSeverity.map((caution) => fullItem(caution, references)))];
  });
  return [heading(2, 'Before you start'), ...groups];
}

/** The cautions of one step as short lines, each with its severity in a word, worst first. */
export function cautionLines(ids: readonly string[], cautions: readonly PlanCaution[]): Part[][] {
  return SEVERITIES.flatMap(({ severity, word }) =>
    cautions
      .filter((caution) => caution.severity === severity && ids.includes(caution.id))
      .map((caution) => [strong(`${word}.`), sentence(caution.line)]),
  );
}

function fullItem(caution: PlanCaution, references: References): Part[] {
  const mark = markOf(caution.basis, caution.sources, references);
  return [
    strong(sentence(caution.line)),
    markedSentence(caution.detail, mark),
    sentence(stepsInWords(caution.forSteps, references)),
  ];
}
