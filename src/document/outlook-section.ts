/** What should be seen after so many weeks, and what to do if it is not. */
import type { RootContent } from 'mdast';
import type { Plan } from '../planner/plan.js';
import { dayWords } from './date-words.js';
import { inArea, isByArea } from './in-areas.js';
import { bullets, heading, paragraph, strong } from './nodes.js';
import type { References } from './references.js';
import { clause, counted, said, sentence } from './words.js';

export function outlookSection({ outlook, steps }: Plan, references: References): RootContent[] {
  if (outlook.length === 0) return [];
  const items = outlook.map(({ area, on, weeks, sees, ifNot }) => [
    strong(`${inArea(`After ${counted(weeks, 'week')}, ${dayWords(on, references.year)}`, area)}.`),
    sentence(sees),
    said(ifNot) === '' ? '' : `If not: ${clause(ifNot)}`,
  ]);
  const sown = steps.find(({ id }) => id === 'sow')?.parts ?? [];
  const isParted = sown.length > 1 && !isByArea(sown);
  return [
    heading(2, 'What you should see'),
    ...(isParted
      ? [
          paragraph(
            'The days are those of part 1; later parts come after it by as many days as they were sown later.',
          ),
        ]
      : []),
    bullets(items),
  ];
}
