/** What should be seen after sowing, week by week. */
import { addDays, type IsoDate } from '../base/dates.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Plan } from './plan.js';
import { holds } from './steps.js';
import type { Say } from './texts.js';

const DAYS_PER_WEEK = 7;

export function outlookOf(pack: Pack, scope: Scope, sowOn: IsoDate | undefined, say: Say): Plan['outlook'] {
  if (sowOn === undefined) return [];
  return pack.outlook
    .filter(({ when }) => holds(when, scope))
    .map(({ weeks, sees, ifNot }) => ({
      on: addDays(sowOn, weeks * DAYS_PER_WEEK),
      weeks,
      sees: say(sees),
      ifNot: say(ifNot),
    }));
}
