/** For a lawn worked part by part: the days of each part, from its first step to its last. */
import type { RootContent } from 'mdast';
import type { Plan, PlanStep } from '../planner/plan.js';
import { dayWords, spanWords } from './date-words.js';
import { heading, paragraph, table } from './nodes.js';
import type { References } from './references.js';
import { said } from './words.js';

export function partsSection({ steps }: Plan, { year }: References): RootContent[] {
  const parted = steps.filter(({ parts }) => parts.length > 1);
  const [one] = parted;
  if (one === undefined) return [];
  const sowing = parted.find(({ id }) => id === 'sow');
  const rows = one.parts.map((_, index) => {
    const sownOn = sowing?.parts[index]?.startOn;
    return [
      String(index + 1),
      spanWords(spanOf(parted, index), year),
      ...(sownOn === undefined ? [] : [dayWords(sownOn, year)]),
    ];
  });
  return [
    heading(3, 'Part by part'),
    paragraph(
      'Each of these is done in one part before the next part is begun:',
      `${parted.map(({ title }) => said(title).toLowerCase()).join('; ')}.`,
    ),
    table(['Part', 'Days of work', ...(sowing === undefined ? [] : ['Sown on'])], rows),
  ];
}

function spanOf(parted: readonly PlanStep[], index: number) {
  const days = parted.flatMap(({ parts }) => {
    const part = parts[index];
    return part === undefined ? [] : [part];
  });
  return {
    from: days.map(({ startOn }) => startOn).sort()[0] as PlanStep['startOn'],
    until: days
      .map(({ endOn }) => endOn)
      .sort()
      .at(-1) as PlanStep['startOn'],
  };
}
