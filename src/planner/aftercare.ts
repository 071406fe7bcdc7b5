/** The watering table of a new seedbed, and what should be seen week by week. */
import { addDays, type IsoDate } from '../base/dates.js';
import { aboutHours, plainNumber } from '../base/quantity-words.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression } from '../rules/schema.js';
import { rounded } from './amounts.js';
import type { Plan, PlanWatering } from './plan.js';
import { answered, holds } from './steps.js';
import type { Say } from './texts.js';

const DAYS_PER_WEEK = 7;
const MINUTES_PER_HOUR = 60;

export function wateringOf(
  pack: Pack,
  scope: Scope,
  sowOn: IsoDate | undefined,
  note: (figureId: string) => void,
): PlanWatering[] {
  const area = scope('facts.areaM2');
  // Without any water at hand there is nothing to tabulate; the plan says so among what it leaves out.
  if (sowOn === undefined || !area.known || answered(scope, 'watering') === 'none') return [];
  const number = (expression: Expression): number => {
    const outcome = evaluate(expression, scope);
    if (!outcome.known) return 0;
    for (const name of outcome.from) if (name.startsWith('figures.')) note(name.slice('figures.'.length));
    return outcome.value as number;
  };
  return pack.watering.map((rule) => {
    const mmPerDay = number(rule.mmPerDay);
    const turnsPerDay = number(rule.turnsPerDay);
    const litresPerDay = (area.value as number) * mmPerDay;
    return {
      fromOn: addDays(sowOn, (rule.fromWeek - 1) * DAYS_PER_WEEK),
      untilOn: addDays(sowOn, rule.toWeek * DAYS_PER_WEEK - 1),
      weeks:
        rule.fromWeek === rule.toWeek ? `week ${rule.fromWeek}` : `weeks ${rule.fromWeek} to ${rule.toWeek}`,
      turnsPerDay,
      mmPerDay,
      litresPerDay: rounded(litresPerDay),
      means: meansOf(scope, litresPerDay, turnsPerDay, note),
      aim: rule.aim,
    };
  });
}

/** How long or how many cans that is, by the means at hand. */
function meansOf(
  scope: Scope,
  litresPerDay: number,
  turns: number,
  note: (figureId: string) => void,
): string | null {
  const watering = answered(scope, 'watering');
  const each = turns > 1 ? `, in ${plainNumber(turns)} turns` : '';
  // Under a ban a hose is no means; cans by hand are counted instead.
  if (watering === 'can' || answered(scope, 'wateringBan') === true) {
    const can = scope('figures.water-can-l');
    if (!can.known) return null;
    note('water-can-l');
    return `${plainNumber(Math.ceil(litresPerDay / (can.value as number)))} cans of ${plainNumber(can.value as number)} L a day${each}`;
  }
  const flow = scope('hoseLPerMin');
  if ((watering !== 'hose' && watering !== 'sprinkler') || !flow.known) return null;
  const efficiency = watering === 'sprinkler' ? scope('figures.sprinkler-efficiency') : undefined;
  if (efficiency !== undefined) note('sprinkler-efficiency');
  const share = efficiency?.known === true ? (efficiency.value as number) : 1;
  const hours = litresPerDay / share / (flow.value as number) / MINUTES_PER_HOUR;
  return `${aboutHours(hours)} of ${watering} a day${each}`;
}

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
