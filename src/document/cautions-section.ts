/** What can hurt, worst first; what can kill, and what concerns children and pets, in full. The steps repeat only lines. */
import type { RootContent } from 'mdast';
import type { Plan, PlanCaution } from '../planner/plan.js';
import { bullets, heading, type Part, strong } from './nodes.js';
import { markOf, type References, stepsInWords } from './references.js';
import { markedSentence, sentence } from './words.js';

const SEVERITIES = [
  { severity: 'danger', title: 'Danger', word: 'Danger' },
  { severity: 'warning', title: 'Warnings', word: 'Warning' },
  { severity: 'caution', title: 'Cautions', word: 'Caution' },
  { severity: 'notice', title: 'Notices', word: 'Notice' },
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

/** The word before the line of a caution. */
export const severityWord = (severity: PlanCaution['severity']): string =>
  SEVERITIES.find((each) => each.severity === severity)?.word ?? '';

/** The cautions of one step as short lines, worst first; what is only good to know stands once, before. */
export function cautionLines(ids: readonly string[], cautions: readonly PlanCaution[]): Part[][] {
  return SEVERITIES.filter(({ severity }) => severity !== 'note').flatMap(({ severity, word }) =>
    cautions
      .filter((caution) => caution.severity === severity && ids.includes(caution.id))
      .map((caution) => [strong(`${word}.`), sentence(caution.line)]),
  );
}

function fullItem(caution: PlanCaution, references: References): Part[] {
  const mark = markOf(caution.basis, caution.sources, references);
  const canKill = caution.severity === 'danger' || caution.severity === 'warning';
  const isTold = canKill || caution.who === 'children' || caution.who === 'pets';
  return [
    strong(sentence(caution.line)),
    isTold ? markedSentence(caution.detail, mark) : sentence(mark.replace(/^\(|\)$/g, '')),
    sentence(stepsInWords(caution.forSteps, references)),
  ];
}
