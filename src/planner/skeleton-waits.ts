/** The order of the trade as waits of no days between the main steps of a plan, whatever steps are left out of it. */
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import { isMain, phaseRank } from '../rules/skeleton.js';
import type { ScheduleWait } from './schedule.js';
import { goesOnByItself } from './steps.js';

/**
 * From each main step to those of the next phase that has work in the plan, and so, one after the other, to all later
 * ones. A state that begins by itself holds up what follows, and is held up only by its own waits: seed is thirsty
 * whether or not it was covered.
 *
 * @param active the steps of the plan
 * @param written waits that are there already; no second one is laid between the same two steps
 */
export function skeletonWaits(
  pack: Pick<Pack, 'phases'>,
  active: readonly Step[],
  written: readonly Pick<ScheduleWait, 'from' | 'to'>[],
): ScheduleWait[] {
  const rank = phaseRank(pack);
  const main = active.filter(isMain);
  const ranks = [...new Set(main.map(rank))].sort((a, b) => a - b);
  const isWritten = new Set(written.map(({ from, to }) => `${from} ${to}`));
  const waits: ScheduleWait[] = [];
  let before: readonly Step[] = [];
  for (const each of ranks) {
    const inPhase = main.filter((step) => rank(step) === each);
    const work = inPhase.filter((step) => !goesOnByItself(step));
    for (const { id: to } of work)
      for (const { id: from } of before)
        if (!isWritten.has(`${from} ${to}`))
          waits.push({ from, to, minDays: 0, maxDays: undefined, binds: true });
    before = work.length > 0 ? inPhase : [...before, ...inPhase];
  }
  return waits;
}
