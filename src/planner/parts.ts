/**
 * A lawn too large to be opened, sown and covered in one go is worked part by part: one part is finished before the
 * next is begun. Here the steps of that work are parted before they are dated, and put together again after.
 */
import type { Placed, Schedule, ScheduleStep, ScheduleWait } from './schedule.js';

export interface Parted {
  readonly steps: readonly ScheduleStep[];
  readonly waits: readonly ScheduleWait[];
}

/** Which steps of a net go part by part. */
export interface ByPart {
  /** One part is finished before the next is begun. */
  readonly inParts: ReadonlySet<string>;
  /** Each part in its own time. */
  readonly eachPart: ReadonlySet<string>;
}

const partId = (id: string, part: number): string => `${id}#${part}`;

/** A point between two parts: everything of the one is done, nothing of the other is begun. */
const betweenId = (part: number): string => partId('between', part);

/**
 * The net with every step of `inParts` once for each part, its hours shared out evenly; and so those of `eachPart`,
 * which no other part waits for.
 *
 * @param count number of parts, 1 or more; 1 leaves the net as it is
 */
export function partNet(net: Parted, { inParts, eachPart }: ByPart, count: number): Parted {
  if (count === 1) return net;
  const isParted = (id: string): boolean => inParts.has(id) || eachPart.has(id);
  const first = net.steps.findIndex(({ id }) => inParts.has(id));
  const wholeOnes = (steps: readonly ScheduleStep[]) => steps.filter(({ id }) => !isParted(id));
  const parted = net.steps.filter(({ id }) => inParts.has(id));
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  const partOf = (step: ScheduleStep, part: number): ScheduleStep => ({
    ...step,
    id: partId(step.id, part),
    workHours: step.workHours / count,
  });
  const steps = numbers.flatMap((part) => [...parted.map((step) => partOf(step, part)), between(part)]);
  const inOwnTime = net.steps
    .filter(({ id }) => eachPart.has(id))
    .flatMap((step) => numbers.map((part) => partOf(step, part)));
  const waits = net.waits.flatMap((wait) =>
    numbers.flatMap((part) => waitOfPart(wait, part, { isParted, count })),
  );
  const order = numbers.flatMap((part) =>
    parted.flatMap(({ id }) => [
      inOrder(partId(id, part), betweenId(part)),
      ...(part < count ? [inOrder(betweenId(part), partId(id, part + 1))] : []),
    ]),
  );
  return {
    steps: [
      ...wholeOnes(net.steps.slice(0, first)),
      ...steps,
      ...inOwnTime,
      ...wholeOnes(net.steps.slice(first)),
    ],
    waits: [...waits, ...order],
  };
}

/** What follows the parts as a whole counts from the last of them; what comes before binds each. */
function waitOfPart(
  wait: ScheduleWait,
  part: number,
  { isParted, count }: { readonly isParted: (id: string) => boolean; readonly count: number },
): ScheduleWait[] {
  const [fromParted, toParted] = [isParted(wait.from), isParted(wait.to)];
  if (!fromParted && !toParted) return part === 1 ? [wait] : [];
  if (!toParted) return part === count ? [{ ...wait, from: partId(wait.from, part) }] : [];
  return [{ ...wait, from: fromParted ? partId(wait.from, part) : wait.from, to: partId(wait.to, part) }];
}

const between = (part: number): ScheduleStep => ({
  id: betweenId(part),
  nextFit: (day) => day,
  lastFit: () => undefined,
  notBefore: 0,
  joinsNext: false,
  workHours: 0,
});

const inOrder = (from: string, to: string): ScheduleWait => ({
  from,
  to,
  minDays: 0,
  maxDays: undefined,
  binds: true,
});

/** Every step with the days of each of its parts, one for a step that is done in one go. */
export function partsOf(
  placed: Schedule,
  ids: readonly string[],
  count: number,
): ReadonlyMap<string, Placed[]> {
  return new Map(
    ids.map((id) => {
      const one = placed.get(id);
      if (one !== undefined) return [id, [one]];
      return [id, Array.from({ length: count }, (_, index) => placed.get(partId(id, index + 1)) as Placed)];
    }),
  );
}
