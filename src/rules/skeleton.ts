/**
 * The skeleton of the trade: a main step begins when every main step of an earlier phase has ended, whatever is left
 * out. A side step keeps only the waits that are written in it.
 */
import type { PackData } from './pack.js';
import type { Step } from './schema.js';

/** The place of a step's phase in the skeleton, 0 for the first. */
export const phaseRank = ({ phases }: Pick<PackData, 'phases'>): ((step: Step) => number) => {
  const rankOf = new Map(phases.map(({ id }, rank) => [id, rank]));
  return ({ phase }) => rankOf.get(phase) ?? phases.length;
};

export const isMain = ({ side }: Step): boolean => side !== true;

/** Whether the skeleton puts the one before the other by itself. */
export function precedes(pack: Pick<PackData, 'phases'>): (first: Step, later: Step) => boolean {
  const rank = phaseRank(pack);
  return (first, later) => isMain(first) && isMain(later) && rank(first) < rank(later);
}

export interface OrderFault {
  readonly first: string;
  readonly later: string;
  readonly why: string;
}

/** Steps whose `order` puts them before what they follow: by a wait, by their phase, or by what they serve. */
export function orderFaults(pack: Pick<PackData, 'phases' | 'steps'>): OrderFault[] {
  const comesFirst = precedes(pack);
  return pack.steps.flatMap((later) =>
    pack.steps
      .filter(({ order }) => order >= later.order)
      .flatMap((first): OrderFault[] => {
        const why = reasonOf(first, later, comesFirst);
        return why === undefined ? [] : [{ first: first.id, later: later.id, why }];
      }),
  );
}

function reasonOf(first: Step, later: Step, comesFirst: (a: Step, b: Step) => boolean): string | undefined {
  if (later.after.some(({ step }) => step === first.id)) return 'it waits for that one';
  if (first.serves?.includes(later.id) === true) return 'that one serves it';
  if (comesFirst(first, later)) return `its phase "${later.phase}" comes after "${first.phase}"`;
  return undefined;
}

/**
 * The steps with what they serve in their condition: where none of it is in the plan, neither are they. What a step
 * serves stands later in the list, so that it is settled first.
 */
export function withServed(inOrder: readonly Step[]): Step[] {
  const whenById = new Map<string, Step['when']>();
  return inOrder
    .toReversed()
    .map((step) => {
      const { serves } = step;
      const served = serves?.map((id) => whenById.get(id) ?? false);
      const when = served === undefined ? step.when : { and: [step.when, { or: served }] };
      whenById.set(step.id, when);
      return served === undefined ? step : { ...step, when };
    })
    .reverse();
}
