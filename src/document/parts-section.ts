/** For a lawn worked part by part or area by area: the days of each, from its first step to its last. */
import type { RootContent } from 'mdast';
import type { Plan, PlanStep } from '../planner/plan.js';
import type { PlanPart } from '../planner/plan-area.js';
import { dayWords, spanWords } from './date-words.js';
import { isByArea, partNames } from './in-areas.js';
import { heading, paragraph, table } from './nodes.js';
import type { References } from './references.js';
import { said } from './words.js';

export function partsSection({ steps }: Plan, references: References): RootContent[] {
  const parted = steps.filter(
    (step) => isByArea(step.parts) || (step.parts.length > 1 && isBeforeTheNext(step, steps)),
  );
  const names = [...new Set(parted.flatMap(({ parts }) => partNames(parts)))];
  if (names.length < 2) return [];
  const areByArea = parted.some(({ parts }) => isByArea(parts));
  const isSown = parted.some(({ id }) => id === 'sow');
  const rows = names.map((name) => {
    const sownOn = partOf(
      parted.find(({ id }) => id === 'sow'),
      name,
    )?.startOn;
    return [
      areByArea ? name : name.replace(/^part /, ''),
      spanWords(spanOf(parted, name), references),
      ...(isSown ? [sownOn === undefined ? '' : dayWords(sownOn, references)] : []),
    ];
  });
  const titles = parted.map(({ title }) => said(title).toLowerCase()).join('; ');
  return [
    heading(3, areByArea ? 'Area by area' : 'Part by part'),
    areByArea
      ? paragraph('These have days of their own in each area:', `${titles}.`)
      : paragraph('Each of these is done in one part before the next part is begun:', `${titles}.`),
    table([areByArea ? 'Area' : 'Part', 'Days of work', ...(isSown ? ['Sown on'] : [])], rows),
  ];
}

/** Whether each part has had it before the next part is sown; a first mowing comes in its own time. */
function isBeforeTheNext({ parts }: PlanStep, steps: readonly PlanStep[]): boolean {
  const sown = steps.find(({ id }) => id === 'sow')?.parts ?? [];
  return parts.every(({ startOn }, index) => startOn <= (sown[index + 1]?.startOn ?? startOn));
}

const partOf = (step: PlanStep | undefined, name: string): PlanPart | undefined =>
  step?.parts.find((_, index) => partNames(step.parts)[index] === name);

function spanOf(parted: readonly PlanStep[], name: string) {
  const days = parted.flatMap((step) => partOf(step, name) ?? []);
  return {
    from: days.map(({ startOn }) => startOn).sort()[0] as PlanPart['startOn'],
    until: days
      .map(({ endOn }) => endOn)
      .sort()
      .at(-1) as PlanPart['startOn'],
  };
}
