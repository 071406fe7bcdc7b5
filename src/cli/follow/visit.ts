/** One visit to a plan that is followed: what is told is kept line by line, and the rest is planned again. */
import type { IsoDate } from '../../base/dates.js';
import { assemblePlan, type PlanInput } from '../../planner/assemble-plan.js';
import type { Plan } from '../../planner/plan.js';
import type { Followed, FollowRecord } from '../../planner/progress.js';
import { type Reworked, reworked } from '../../planner/rework.js';
import type { Pack } from '../../rules/pack.js';
import type { Asker } from '../../terminal/asker.js';
import { reportOf } from './report.js';
import { standing, type Telling, tellDone } from './tell.js';
import { tellAfterSowing, tellSigns } from './tell-seen.js';

export interface VisitInput {
  readonly asker: Asker;
  readonly pack: Pack;
  readonly today: IsoDate;
  readonly input: PlanInput;
  readonly followed: Followed;
  readonly save: (followed: Followed) => Promise<void>;
}

export interface Visited extends Reworked {
  readonly followed: Followed;
}

/** @returns undefined when they left before the end; what they told is kept */
export async function visit(from: VisitInput): Promise<Visited | undefined> {
  const { asker, pack, today, input } = from;
  let { followed } = from;
  const before = planBefore(from);
  const telling: Telling = {
    asker,
    pack,
    today,
    input,
    before,
    records: () => followed.records,
    tell: async (record) => {
      const others = followed.records.filter((old) => !isReplaced(old, record));
      followed = { ...followed, records: [...others, record] };
      await from.save(followed);
    },
  };
  await tellDone(telling);
  await tellSigns(telling);
  await tellAfterSowing(telling);
  await from.save(followed);
  const left = asker.left?.();
  if (left !== undefined && left !== 'ended') return undefined;
  const after = standing(telling);
  asker.say(`\n${reportOf(before, after)}`);
  return { ...after, followed };
}

/** A later word about the same step replaces the earlier one. */
function isReplaced(old: FollowRecord, record: FollowRecord): boolean {
  switch (record.kind) {
    case 'done':
    case 'left-out':
      return (old.kind === 'done' || old.kind === 'left-out') && old.step === record.step;
    case 'trouble':
      return old.kind === 'trouble' && old.trouble === record.trouble && old.toldOn === record.toldOn;
    default:
      return false;
  }
}

/** The plan as it stood when it was last looked at. */
export function planBefore({ input, followed }: Pick<VisitInput, 'input' | 'followed'>): Plan {
  const last = followed.records
    .map(({ toldOn }) => toldOn)
    .sort()
    .at(-1);
  return last === undefined ? assemblePlan(input) : reworked(input, followed.records, last).plan;
}
