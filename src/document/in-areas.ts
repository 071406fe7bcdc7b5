/** The names of areas and parts beside what is theirs. */
import { joinedWords } from '../base/joined-words.js';
import type { PlanStep } from '../planner/plan.js';
import type { PlanPart } from '../planner/plan-area.js';
import { oneLine } from './one-line.js';
import { counted } from './words.js';

/** `Grass seed, front`; the title alone where the lawn is planned as one. */
export const inArea = (title: string, area: string | undefined): string =>
  area === undefined ? title : `${title}, ${oneLine(area)}`;

/** What each part of a step is called: `part 2`, `front`, `back, part 1`. */
export function partNames(parts: readonly PlanPart[]): string[] {
  return parts.map(({ area }, index) => {
    if (area === undefined) return `part ${index + 1}`;
    const own = parts.filter((each) => each.area === area);
    const number = parts.slice(0, index + 1).filter((each) => each.area === area).length;
    return own.length === 1 ? oneLine(area) : `${oneLine(area)}, part ${number}`;
  });
}

/** Whether the days are those of the areas and not of the parts of one lawn. */
export const isByArea = (parts: readonly PlanPart[]): boolean => parts.some(({ area }) => area !== undefined);

/** What the days and litres after sowing mean where it goes part by part; nothing for one go. */
export function countedFromSowing(steps: readonly PlanStep[]): string {
  const parts = steps.find(({ id }) => id === 'sow')?.parts ?? [];
  if (!isByArea(parts)) {
    return parts.length < 2
      ? ''
      : `The days are those of part 1; count the weeks of each part from its own sowing. The water is for the whole lawn: each of the ${parts.length} parts gets its share.`;
  }
  const areas = [...new Set(parts.flatMap(({ area }) => area ?? []))];
  const parted = areas.filter((area) => parts.filter((part) => part.area === area).length > 1);
  if (parted.length === 0) return '';
  const where = joinedWords(parted.map(oneLine));
  return `For the ${where} the days are those of part 1, and the water is for ${counted(parted.length, 'the whole of it', 'the whole of each').replace(/^\d+ /, '')}: count the weeks of each part from its own sowing.`;
}
