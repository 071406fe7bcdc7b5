/**
 * Which changes, out of many, are enough to bring about each difference: the smallest sets of them, by trying.
 * Nothing is assumed about how the changes act together: each set is tried as it is.
 */

/** The state that a set of changes leads to, feature by feature; undefined when the set cannot stand by itself. */
export type Outcome = ReadonlyMap<string, string>;
export type Try<Change> = (changes: readonly Change[]) => Outcome | undefined;

export interface Causes<Change> {
  /** Each is enough by itself, and no part of it is. */
  readonly sets: readonly (readonly Change[])[];
  /** Whether every set of that size was tried; otherwise there may be others, and smaller ones. */
  readonly isComplete: boolean;
}

export interface Search<Change> {
  readonly changes: readonly Change[];
  readonly tryOut: Try<Change>;
  /** The features to explain. */
  readonly keys: readonly string[];
  /** Most sets to try before a set is cut down step by step instead. */
  readonly most: number;
}

/** For each feature the smallest sets of changes that give it the value that all changes together give it. */
export function smallestSets<Change>(search: Search<Change>): Map<string, Causes<Change>> {
  const { changes, tryOut, keys, most } = search;
  const wanted = tryOut(changes);
  const found = new Map<string, Change[][]>(keys.map((key) => [key, []]));
  let open = [...keys];
  let tried = 0;
  for (let size = 1; size <= changes.length && open.length > 0; size++) {
    if (tried + choices(changes.length, size) > most) break;
    for (const set of subsets(changes, size)) {
      tried++;
      const outcome = tryOut(set);
      for (const key of open)
        if (outcome !== undefined && outcome.get(key) === wanted?.get(key)) found.get(key)?.push(set);
    }
    open = open.filter((key) => found.get(key)?.length === 0);
  }
  const causes = new Map<string, Causes<Change>>();
  for (const [key, sets] of found) {
    if (sets.length > 0) causes.set(key, { sets, isComplete: true });
    else causes.set(key, { sets: [cutDown(key, search)], isComplete: false });
  }
  return causes;
}

/** All changes, less every one that can go; then the smallest set within what is left, if that is little enough. */
function cutDown<Change>(key: string, { changes, tryOut, most }: Search<Change>): readonly Change[] {
  const wanted = tryOut(changes)?.get(key);
  const isEnough = (set: readonly Change[]): boolean => {
    const outcome = tryOut(set);
    return outcome !== undefined && outcome.get(key) === wanted;
  };
  let left = [...changes];
  for (const change of changes) {
    const without = left.filter((each) => each !== change);
    if (without.length > 0 && isEnough(without)) left = without;
  }
  if (2 ** left.length > most) return left;
  for (let size = 1; size < left.length; size++) {
    for (const set of subsets(left, size)) if (isEnough(set)) return set;
  }
  return left;
}

/** Every choice of `size` items, in order. */
export function* subsets<Item>(items: readonly Item[], size: number): Generator<Item[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let first = 0; first + size <= items.length; first++) {
    for (const rest of subsets(items.slice(first + 1), size - 1)) yield [items[first] as Item, ...rest];
  }
}

/** How many ways there are to choose `size` out of `count`. */
function choices(count: number, size: number): number {
  let ways = 1;
  for (let step = 1; step <= size; step++) ways = (ways * (count - size + step)) / step;
  return ways;
}
