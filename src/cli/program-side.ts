/** What the program itself offers to rules and reads from them, beside what the rules read from each other. */
import { nearest } from '../base/nearest.js';
import { ASKED_BY_PROGRAM, ASKED_WITH_PRICES } from '../planner/asked-by-program.js';
import { FORMULAS } from '../planner/formulas.js';
import { RECKONERS } from '../reckon/reckon.js';
import type { ProgramSide } from '../rules/check.js';
import { SURENESS_SOURCE } from '../training/sureness.js';

export const PROGRAM_SIDE: ProgramSide = {
  formulas: Object.fromEntries(Object.entries(FORMULAS).map(([name, { needs }]) => [name, needs])),
  questions: [...ASKED_BY_PROGRAM, ...ASKED_WITH_PRICES, 'lawnParts'],
  figures: [
    'water-can-l',
    'sprinkler-efficiency',
    'pack-spare-fraction',
    'car-load-kg',
    'most-people',
    'sign-look-again-days',
    'sure-sowing-days',
    'air-possible-c',
    'rain-possible-mm',
    'frost-days-possible',
    'climate-month-days',
    'frost-c',
    'forecast-days',
    'soil-drains-days',
    'rooting-depth-lawn-m',
    'vibration-action-points',
    'vibration-limit-points',
    'germination-field-stretch',
    'field-emergence-days-ryegrass',
  ],
  facts: [
    'areaM2',
    'keepsWet',
    'waterBy',
    'southern',
    'soilFieldCapacity',
    'soilWiltingPoint',
    'turfCoefficient',
    'depletionFraction',
  ],
  sources: [...RECKONERS.flatMap(({ sources }) => sources.map(({ id }) => id)), SURENESS_SOURCE],
  nearest,
};
