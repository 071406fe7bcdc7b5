/**
 * Finds what somebody means by a few words among records that are described in words: each word counts by how rare it
 * is among them and by where it stands, in a name more than in an explanation. Where it is not clear which is meant,
 * it says so: to be asked back is better than to be misunderstood.
 */
import { nearest } from '../base/nearest.js';
import { stemsOf } from './stems.js';

/** A text about a record, and how much a word in it counts, up to 1. */
export interface About {
  readonly text: string;
  readonly counts: number;
}

export interface Ranked<Item> {
  readonly item: Item;
  /** The share of what was typed that is found in its words, 0 to 1. */
  readonly share: number;
}

export interface Ranker<Item> {
  /** Best first; only those that have any of the words. */
  rank(typed: string): Ranked<Item>[];
}

/** Letters from which a mistyped word is known by its nearest, and what it counts then. */
const TYPO = { fromLetters: 5, counts: 0.8 } as const;

export function rankerOf<Item>(
  items: readonly Item[],
  aboutOf: (item: Item) => readonly About[],
): Ranker<Item> {
  const weights = items.map((item) => weightsOf(aboutOf(item)));
  const spread = new Map<string, number>();
  for (const each of weights)
    for (const [stem, weight] of each) spread.set(stem, (spread.get(stem) ?? 0) + weight);
  const vocabulary = [...spread.keys()];
  // A stem in every name says nothing; one in a single name says all.
  const rarity = (stem: string): number => Math.log(1 + items.length / Math.max(1, spread.get(stem) ?? 0));
  const typos = new Map<string, string | undefined>();
  const known = (stem: string): { readonly stem: string; readonly trust: number } => {
    if (spread.has(stem) || stem.length < TYPO.fromLetters) return { stem, trust: 1 };
    if (!typos.has(stem)) typos.set(stem, nearest(stem, vocabulary));
    const near = typos.get(stem);
    return near === undefined ? { stem, trust: 1 } : { stem: near, trust: TYPO.counts };
  };
  return {
    rank(typed) {
      const words = stemsOf(typed).map(known);
      // A word that nobody knows counts like a rare one, so that it leaves doubt.
      const whole = words.reduce((sum, { stem }) => sum + rarity(stem), 0);
      if (whole === 0) return [];
      return items
        .map((item, index) => {
          const mine = weights[index] as ReadonlyMap<string, number>;
          const got = words.reduce(
            (sum, { stem, trust }) => sum + trust * rarity(stem) * (mine.get(stem) ?? 0),
            0,
          );
          return { item, share: got / whole };
        })
        .filter(({ share }) => share > 0)
        .sort((a, b) => b.share - a.share);
    },
  };
}

/** By stem, what it counts at the best place where it stands. */
function weightsOf(about: readonly About[]): ReadonlyMap<string, number> {
  const weights = new Map<string, number>();
  for (const { text, counts } of about)
    for (const stem of stemsOf(text)) weights.set(stem, Math.max(counts, weights.get(stem) ?? 0));
  return weights;
}
