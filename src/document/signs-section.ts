/** Symptoms that were told and that nothing found accounts for, and answers that do not go together. */
import type { RootContent } from 'mdast';
import type { Plan, PlanSign } from '../planner/plan.js';
import { bullets, heading, type Part, paragraph, strong } from './nodes.js';
import { markOf, type References } from './references.js';
import { clause, said, sentence, withoutStop } from './words.js';

export function signsSection({ signs }: Plan, references: References): RootContent[] {
  const open = signs.filter(({ account }) => account === 'unexplained');
  if (open.length === 0) return [];
  const unexplained = open.filter(({ isClash }) => !isClash);
  const clashes = open.filter(({ isClash }) => isClash);
  return [
    heading(2, 'I cannot explain this'),
    ...listUnder('You told me of this, and nothing that I found accounts for it:', unexplained, references),
    ...listUnder('These answers do not go together. Please look again:', clashes, references),
  ];
}

function listUnder(lead: string, signs: readonly PlanSign[], references: References): RootContent[] {
  return signs.length === 0
    ? []
    : [paragraph(lead), bullets(signs.map((sign) => signItem(sign, references)))];
}

function signItem({ says, answer, maybe, look, basis, sources }: PlanSign, references: References): Part[] {
  const mark = markOf(basis, sources, references);
  return [
    strong(withoutStop(sentence(says))),
    `(${said(answer)}).`,
    maybe.length === 0
      ? ''
      : `It may be ${maybe.map((each) => withoutStop(clause(each))).join('; or ')}${mark === '' ? '' : ` ${mark}`}.`,
    look === null ? '' : `Look next: ${clause(look)}`,
  ];
}
