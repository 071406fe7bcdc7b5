/** What should be seen after so many weeks, and what to do if it is not. */
import type { RootContent } from 'mdast';
import type { Plan } from '../planner/plan.js';
import { dayWords } from './date-words.js';
import { inArea, isByArea } from './in-areas.js';
import { bullets, heading, paragraph, strong } from './nodes.js';
import type { References } from './references.js';
import { clause, counted, inWords, said, sentence, stopped } from './words.js';

type Look = Plan['outlook'][number];

export function outlookSection({ outlook, steps }: Plan, references: References): RootContent[] {
  if (outlook.length === 0) return [];
  const dayOf = ({ on, area }: Look): string => inArea(dayWords(on, references), area);
  const items = byText(outlook).map(([first, ...rest]) => [
    strong(stopped(`After ${counted(first.weeks, 'week')}, ${inWords([first, ...rest].map(dayOf))}`)),
    sentence(first.sees),
    said(first.ifNot) === '' ? '' : `If not: ${clause(first.ifNot)}`,
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

/** What is seen in several areas on days of their own is told once. */
function byText(outlook: Plan['outlook']): [Look, ...Look[]][] {
  const groups = new Map<string, [Look, ...Look[]]>();
  for (const look of outlook) {
    const { weeks, sees, ifNot } = look;
    const key = JSON.stringify([weeks, sees, ifNot]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [look]);
    else group.push(look);
  }
  return [...groups.values()];
}
