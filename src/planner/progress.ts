/**
 * What has really happened since a plan was made, as records, and what follows from it for the rest of the net:
 * what is done stands where it was done, waits count from there, and nothing else begins in the past.
 */
import { addDays, daysBetween, type IsoDate } from '../base/dates.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import { precedes } from '../rules/skeleton.js';
import type { StepNet } from './step-net.js';
import { daysOf, goesOnByItself } from './steps.js';
import type { Say } from './texts.js';

export type FollowRecord =
  | {
      readonly kind: 'done';
      readonly step: string;
      readonly startOn: IsoDate;
      readonly endOn: IsoDate;
      /** Whether it came out as the step says it should; null: not told. */
      readonly asItShould: boolean | null;
      /** It did so in part; then it is not as it should be. */
      readonly partly?: true | undefined;
      /** What was used, what came out; empty for nothing. */
      readonly note: string;
      readonly toldOn: IsoDate;
    }
  | { readonly kind: 'left-out'; readonly step: string; readonly toldOn: IsoDate }
  /** The sign that what follows a step waits for. */
  | {
      readonly kind: 'sign';
      readonly step: string;
      readonly sign: string;
      readonly seen: boolean;
      /** Seen in part, which is not enough. */
      readonly partly?: true | undefined;
      readonly toldOn: IsoDate;
    }
  /** The first green; null: nothing yet. */
  | { readonly kind: 'seed-up'; readonly upOn: IsoDate | null; readonly toldOn: IsoDate }
  | { readonly kind: 'trouble'; readonly trouble: string; readonly note: string; readonly toldOn: IsoDate };

/** The plan as it was first made, and what has been told since. */
export interface Followed {
  readonly madeOn: IsoDate;
  /** Whether absent answers were assumed in it. */
  readonly assumeAll: boolean;
  /** What was first planned: the log compares with it, whatever the rules say later. */
  readonly planned: readonly {
    readonly step: string;
    readonly title: string;
    readonly startOn: IsoDate;
    readonly endOn: IsoDate;
  }[];
  /** In the order in which they were told. */
  readonly records: readonly FollowRecord[];
}

export interface Progress {
  readonly today: IsoDate;
  readonly done: ReadonlyMap<string, { readonly startOn: IsoDate; readonly endOn: IsoDate }>;
  /** Those of them that nobody told of, but that come before something done. */
  readonly supposed: ReadonlySet<string>;
  /** Not done and not to be done any more. */
  readonly leftOut: ReadonlySet<string>;
  /** Held back because a sign is not seen yet, or because of a trouble: the first day, and why. */
  readonly held: ReadonlyMap<string, { readonly until: IsoDate; readonly why: string }>;
}

/**
 * Every step that must come before one: by a wait, by its phase, and through others too. By its phase alone only work
 * that is asked after: what takes no working time, such as washing out salts, is not taken for done in silence.
 */
export function allBefore(pack: Pack, id: string): ReadonlySet<string> {
  const comesFirst = precedes(pack);
  const found = new Set<string>();
  const visit = (step: Step): void => {
    const isHeldByPhase = !goesOnByItself(step);
    for (const first of pack.steps) {
      const isBefore =
        step.after.some((wait) => wait.step === first.id) ||
        (isHeldByPhase && first.labour !== undefined && comesFirst(first, step));
      if (!isBefore || found.has(first.id)) continue;
      found.add(first.id);
      visit(first);
    }
  };
  const step = pack.stepById.get(id);
  if (step !== undefined) visit(step);
  return found;
}

/**
 * What the records come to on a day. Work that belongs before something done cannot be caught up: scarifying over fresh
 * seed would undo it. Until somebody says otherwise it counts as done by then, so that no wait after it is cut short.
 */
export function progressOf(
  pack: Pack,
  records: readonly FollowRecord[],
  { today, scope, say }: { readonly today: IsoDate; readonly scope: Scope; readonly say: Say },
): Progress {
  const told = new Map(
    records.flatMap((record) => (record.kind === 'done' ? [[record.step, record] as const] : [])),
  );
  const leftOut = new Set(records.flatMap((record) => (record.kind === 'left-out' ? [record.step] : [])));
  const supposed = new Map<string, { startOn: IsoDate; endOn: IsoDate }>();
  for (const [later, { startOn }] of told)
    for (const id of allBefore(pack, later)) {
      const rule = pack.stepById.get(id);
      const isWork = rule !== undefined && !goesOnByItself(rule);
      const isOpenWork = isWork && !told.has(id) && !leftOut.has(id);
      const known = supposed.get(id);
      if (isOpenWork && (known === undefined || startOn < known.endOn))
        supposed.set(id, { startOn, endOn: startOn });
    }
  return {
    today,
    done: new Map([...told, ...supposed]),
    supposed: new Set(supposed.keys()),
    leftOut,
    held: heldBy(pack, records, { scope, say }),
  };
}

/** After how many days one looks again for a sign that has not come, or not wholly. */
export const lookAgainDays = (pack: Pack): number =>
  pack.figureById.get('sign-look-again-days')?.typical ?? 1;

function heldBy(
  pack: Pack,
  records: readonly FollowRecord[],
  { scope, say }: { readonly scope: Scope; readonly say: Say },
): Progress['held'] {
  const held = new Map<string, { until: IsoDate; why: string }>();
  const hold = (id: string, until: IsoDate, why: string): void => {
    if (until > (held.get(id)?.until ?? '')) held.set(id, { until, why });
  };
  const lookAgain = lookAgainDays(pack);
  const lastSign = new Map(
    records.flatMap((record) => (record.kind === 'sign' ? [[`${record.step} ${record.sign}`, record]] : [])),
  );
  for (const { step, sign, seen, partly, toldOn } of lastSign.values())
    if (!seen)
      for (const { id, after } of pack.steps)
        if (after.some((wait) => wait.step === step && wait.sign === sign))
          hold(
            id,
            addDays(toldOn, lookAgain),
            `${partly === true ? 'seen only in part' : 'not seen yet'}: "${say(sign).replace(/\.$/, '')}"`,
          );
  for (const record of records)
    if (record.kind === 'trouble')
      for (const { step, days, why } of pack.troubles.find(({ id }) => id === record.trouble)?.holds ?? [])
        hold(step, addDays(record.toldOn, daysOf(days, scope) ?? 0), say(why));
  return held;
}

/** The net with what is done out of it, and the rest waiting for what really happened. */
export function netFrom(net: StepNet, pack: Pack, progress: Progress): StepNet {
  const dayOf = (date: IsoDate): number => daysBetween(net.startOn, date);
  const { done, held, today } = progress;
  const endOfDone = (id: string): number => dayOf((done.get(id) as { endOn: IsoDate }).endOn);
  const overtaken = net.waits.filter((wait) => isOvertaken(wait, net, pack, progress));
  const waits = net.waits.filter(
    (wait) => !done.has(wait.from) && !done.has(wait.to) && !overtaken.includes(wait),
  );
  const steps = net.steps.map((step) => {
    const past = done.get(step.id);
    if (past !== undefined)
      return {
        ...step,
        nextFit: (day: number) => day,
        lastFit: () => undefined,
        joinsNext: false,
        workHours: 0,
        notBefore: Math.max(0, dayOf(past.startOn)),
      };
    const afterDone = net.waits.filter(({ from, to }) => to === step.id && done.has(from));
    const ends = [
      ...afterDone.map(({ from, minDays }) => endOfDone(from) + minDays),
      ...overtaken
        .filter(({ to }) => to === step.id)
        .flatMap(({ from }) => sameDayAfter(from, net, progress).map((id) => endOfDone(id))),
    ];
    const rule = pack.stepById.get(step.id) as Step;
    const isInPlan = net.inPlan.has(step.id);
    return {
      ...step,
      // What must follow soon after something done is not put off to join what comes later.
      joinBy: Math.min(
        ...afterDone.map(({ from, maxDays = Number.POSITIVE_INFINITY }) => endOfDone(from) + maxDays),
      ),
      notBefore: Math.max(
        step.notBefore,
        ...ends,
        ...(isInPlan && !goesOnByItself(rule) ? [dayOf(today)] : []),
        dayOf(held.get(step.id)?.until ?? net.startOn),
      ),
    };
  });
  return { ...net, steps, waits };
}

/** Done steps that the step should have followed on the same day. */
const sameDayAfter = (id: string, { waits }: StepNet, { done }: Progress): string[] =>
  waits
    .filter(({ from, to, maxDays }) => to === id && maxDays === 0 && done.has(from))
    .map(({ from }) => from);

/**
 * What begins by itself, such as the watering of seed that lies in the ground, does not wait for work that should have
 * been done on the day of something done, such as covering it: that is late, and the seed is thirsty all the same.
 */
function isOvertaken(
  { from, to, maxDays }: StepNet['waits'][number],
  net: StepNet,
  pack: Pack,
  progress: Progress,
): boolean {
  const rule = pack.stepById.get(to);
  if (rule === undefined || !goesOnByItself(rule) || maxDays !== 0) return false;
  return !progress.done.has(from) && net.inPlan.has(from) && sameDayAfter(from, net, progress).length > 0;
}

/** The last day on which a step keeps its greatest waits after what is done; undefined where there are none. */
export function lastAfterDone(net: StepNet, id: string, { done }: Progress): IsoDate | undefined {
  return net.waits
    .filter(({ from, to, maxDays }) => to === id && maxDays !== undefined && done.has(from))
    .map(({ from, maxDays }) => addDays((done.get(from) as { endOn: IsoDate }).endOn, maxDays as number))
    .sort()[0];
}
