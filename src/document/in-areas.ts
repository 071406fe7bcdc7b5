/** The names of areas and parts beside what is theirs. */
import type { PlanPart } from '../planner/plan-area.js';
import { oneLine } from './one-line.js';

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
