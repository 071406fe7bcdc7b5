/** One figure at a time, with its equation, the numbers in it, and its source. */
import { nearest } from '../base/nearest.js';
import { AREA_RECKONERS } from './area-reckoners.js';
import { readInputs } from './read-inputs.js';
import type { Answer, FigureValues, Given, Reckoner } from './reckoner.js';
import { SEED_AND_FEED_RECKONERS } from './seed-and-feed-reckoners.js';
import { WEATHER_RECKONERS } from './weather-reckoners.js';
import { WORK_RECKONERS } from './work-reckoners.js';

export const RECKONERS: readonly Reckoner[] = [
  ...AREA_RECKONERS,
  ...SEED_AND_FEED_RECKONERS,
  ...WORK_RECKONERS,
  ...WEATHER_RECKONERS,
];

export interface Reckoned extends Answer {
  readonly name: string;
  readonly equation: string;
  readonly inputs: readonly {
    readonly key: string;
    readonly typed: string;
    readonly value: Given[string];
    readonly unit: string;
  }[];
  readonly sources: Reckoner['sources'];
}

export type Reckoning =
  | { readonly ok: true; readonly result: Reckoned }
  /** `usage`: a name or key is wrong or missing; `values`: a value cannot be. */
  | { readonly ok: false; readonly kind: 'usage' | 'values'; readonly problems: readonly string[] };

export function reckon(
  name: string,
  typed: Readonly<Record<string, string>>,
  figures: FigureValues,
): Reckoning {
  const reckoner = RECKONERS.find((each) => each.name === name);
  if (reckoner === undefined) {
    const near = nearest(
      name,
      RECKONERS.map((each) => each.name),
    );
    const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
    return {
      ok: false,
      kind: 'usage',
      problems: [`There is nothing to reckon called "${name}".${hint} "seedbed reckon --list" shows all.`],
    };
  }
  const read = readInputs(reckoner.keys, typed);
  if (!read.ok) return read;
  try {
    const answer = reckoner.compute(read.given, figures);
    const inputs = reckoner.keys
      .filter((key) => Object.hasOwn(read.given, key.name))
      .map((key) => ({
        key: key.name,
        typed: typed[key.name] ?? '',
        value: read.given[key.name] as Given[string],
        unit: key.unit,
      }));
    return {
      ok: true,
      result: { name, ...answer, equation: reckoner.equation, inputs, sources: reckoner.sources },
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { ok: false, kind: 'values', problems: [`${error.message.replace(/\.$/, '')}.`] };
  }
}
