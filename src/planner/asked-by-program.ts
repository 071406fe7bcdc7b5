/** Questions that no rule names and that are asked all the same: the program itself reads them. */
export const ASKED_BY_PROGRAM: readonly string[] = [
  'lawnName',
  'place',
  'startOn',
  'workDays',
  'hoursPerDay',
  'hoseLPerMin',
];
