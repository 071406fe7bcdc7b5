/**
 * The fewest of many demands that cannot be kept together.
 *
 * Whatever a set of demands that can be kept leaves broken, a clash must hold some of: so the fewest demands that meet
 * every such remainder are tried, and each try either cannot be kept, and then no smaller clash exists, or gives one
 * more remainder. Nothing is known of the demands but that fewer of them are never harder to keep.
 */

/** Of all demands those that are broken where the given ones are kept; undefined where these cannot be kept. */
export type BrokenBeside<Demand> = (kept: readonly Demand[]) => readonly Demand[] | undefined;

export interface SmallestClash<Demand> {
  /** They cannot be kept together, but can as soon as any one of them is gone; in the order they were given in. */
  readonly demands: readonly Demand[];
  /** Whether no other clash is made of fewer; false where looking for that took too long. */
  readonly isSmallest: boolean;
}

/**
 * @param most sets of demands to try, and as many thousand choices to weigh, before a clash that is merely without
 * anything needless is taken
 * @returns undefined when all demands can be kept
 */
export function smallestClash<Demand>(
  demands: readonly Demand[],
  brokenBeside: BrokenBeside<Demand>,
  most: number,
): SmallestClash<Demand> | undefined {
  if (brokenBeside(demands) !== undefined) return undefined;
  const remainders: (readonly Demand[])[] = [];
  let [tries, size] = [0, 0];
  while (tries < most) {
    const chosen = fewestMeeting(remainders, size, most * 1000);
    if (chosen === undefined) break;
    size = chosen.length;
    let broken = brokenBeside(chosen);
    tries++;
    if (broken === undefined)
      return { demands: demands.filter((each) => chosen.includes(each)), isSmallest: true };
    for (const demand of broken) {
      if (!broken.includes(demand)) continue;
      const left: readonly Demand[] = broken;
      const more = brokenBeside(demands.filter((each) => each === demand || !left.includes(each)));
      tries++;
      if (more !== undefined) broken = more;
    }
    remainders.push(broken);
  }
  return { demands: withoutNeedless(demands, brokenBeside), isSmallest: false };
}

/** Every demand is left out for good where the others still clash without it. */
function withoutNeedless<Demand>(
  demands: readonly Demand[],
  brokenBeside: BrokenBeside<Demand>,
): readonly Demand[] {
  let left = demands;
  for (const demand of demands) {
    const others = left.filter((each) => each !== demand);
    if (brokenBeside(others) === undefined) left = others;
  }
  return left;
}

/**
 * The fewest items of which every set holds one.
 *
 * @param least that many are needed at least
 * @param most choices to weigh
 * @returns undefined where weighing them took too long
 */
function fewestMeeting<Item>(
  sets: readonly (readonly Item[])[],
  least: number,
  most: number,
): readonly Item[] | undefined {
  let weighed = 0;
  const extended = (chosen: readonly Item[], room: number): readonly Item[] | undefined => {
    const missed = sets.filter((set) => !set.some((item) => chosen.includes(item)));
    const [first] = missed;
    if (first === undefined) return chosen;
    if (apart(missed) > room) return undefined;
    for (const item of first) {
      if (++weighed > most) return undefined;
      const found = extended([...chosen, item], room - 1);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  for (let size = least; weighed <= most; size++) {
    const found = extended([], size);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** How many of the sets share nothing with one another, by a quick look: each wants an item of its own. */
function apart<Item>(sets: readonly (readonly Item[])[]): number {
  const taken = new Set<Item>();
  let count = 0;
  for (const set of sets) {
    if (set.some((item) => taken.has(item))) continue;
    for (const item of set) taken.add(item);
    count++;
  }
  return count;
}
