/** Questions that no rule names and that are asked all the same: the program itself reads them. */
export const ASKED_BY_PROGRAM: readonly string[] = [
  'lawnName',
  'place',
  'startOn',
  'workDays',
  'hoursPerDay',
  'hoseLPerMin',
];

/** Asked besides where there is a price list: what the job may cost, and which packs can be lifted. */
export const ASKED_WITH_PRICES: readonly string[] = ['maxLiftKg', 'budget'];
