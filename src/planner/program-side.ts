/** What the program itself offers to rules and reads from them, beside what the rules read from each other. */
import { nearest } from '../base/nearest.js';
import type { ProgramSide } from '../rules/check.js';
import { FORMULAS } from './formulas.js';

/** Questions that no rule names and that are asked all the same. */
export const ASKED_BY_PROGRAM: readonly string[] = ['lawnName', 'place', 'startOn', 'workDays'];

export const PROGRAM_SIDE: ProgramSide = {
  formulas: Object.fromEntries(Object.entries(FORMULAS).map(([name, { needs }]) => [name, needs])),
  questions: [...ASKED_BY_PROGRAM, 'lawnParts', 'hoseLPerMin', 'maxLiftKg', 'budget'],
  nearest,
};
