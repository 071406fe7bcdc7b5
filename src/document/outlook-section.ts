/** What should be seen after so many weeks, and what to do if it is not. */
import type { RootContent } from 'mdast';
import type { Plan } from '../planner/plan.js';
import { dayWords } from './date-words.js';
import { bullets, heading, strong } from './nodes.js';
import type { References } from './references.js';
import { clause, counted, said, sentence } from './words.js';

export function outlookSection({ outlook }: Plan, references: References): RootContent[] {
  if (outlook.length === 0) return [];
  const items = outlook.map(({ on, weeks, sees, ifNot }) => [
    strong(`After ${counted(weeks, 'week')}, ${dayWords(on, references.year)}.`),
    sentence(sees),
    said(ifNot) === '' ? '' : `If not: ${clause(ifNot)}`,
  ]);
  return [heading(2, 'What you should see'), bullets(items)];
}
