import { lawnPartsArea } from '../agronomy/area-parts.js';
import type { IsoDate } from '../base/dates.js';
import type { AnswersContext } from '../interview/check-answers.js';
import { placeFault } from '../planner/place.js';
import type { Pack } from '../rules/pack.js';

/** What the reader of answers needs to know of the world. */
export function answersContext(pack: Pack, today: IsoDate): AnswersContext {
  return {
    pack,
    today,
    areaOfParts: (lawnParts) => lawnPartsArea({ lawnParts }).areaM2,
    placeFault: (typed) => placeFault(typed, pack.climate),
  };
}
