/** One figure at a time, with its equation, the numbers in it, and its source. */
import { nearest } from '../base/nearest.js';
import type { Units } from '../base/us-units.js';
import { readInputs } from './read-inputs.js';
import type { FigureValues, Given, Quantity, Reckoner } from './reckoner.js';
import { RECKONERS } from './reckoners.js';
import { wordedForThePerson } from './refusal.js';

export { RECKONERS };

/** What was worked out. `value` is always one number; `more` and `notes` may be empty and are always there. */
export interface Reckoned extends Quantity {
  readonly name: string;
  readonly more: Readonly<Record<string, Quantity>>;
  readonly equation: string;
  readonly working: string;
  readonly inputs: readonly {
    readonly key: string;
    readonly typed: string;
    readonly value: Given[string];
    readonly unit: string;
  }[];
  readonly sources: Reckoner['sources'];
  readonly notes: readonly string[];
}

export type Reckoning =
  | { readonly ok: true; readonly result: Reckoned }
  /** `usage`: a name or key is wrong or missing; `values`: a value cannot be. */
  | { readonly ok: false; readonly kind: 'usage' | 'values'; readonly problems: readonly string[] };

/**
 * One figure, or every problem that stands in its way.
 *
 * @param name of a reckoner
 * @param typed text of each key, as typed
 * @param figures typical values of the figures of the rules, by id
 * @param units whose gallon, pint and fluid ounce is meant; in metric ones it is asked
 */
export function reckon(
  name: string,
  typed: Readonly<Record<string, string>>,
  figures: FigureValues,
  units: Units = 'metric',
): Reckoning {
  const reckoner = RECKONERS.find((each) => each.name === name);
  if (reckoner === undefined) return { ok: false, kind: 'usage', problems: [unknownName(name)] };
  const read = readInputs(reckoner, typed, units);
  if (!read.ok) return read;
  try {
    return { ok: true, result: resultOf(reckoner, typed, read.given, figures) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const problem = wordedForThePerson(error.message, { reckoner, typed, given: read.given });
    return { ok: false, kind: 'values', problems: [problem] };
  }
}

function resultOf(
  { name, keys, equation, sources, compute }: Reckoner,
  typed: Readonly<Record<string, string>>,
  given: Given,
  figures: FigureValues,
): Reckoned {
  const { value, unit, working, more = {}, notes = [] } = compute(given, figures);
  const inputs = keys
    .filter((key) => Object.hasOwn(given, key.name))
    .map((key) => ({
      key: key.name,
      typed: typed[key.name] as string,
      value: given[key.name] as Given[string],
      unit: key.unit,
    }));
  return { name, value, unit, more, equation, working, inputs, sources, notes };
}

function unknownName(name: string): string {
  const near = nearest(
    name,
    RECKONERS.map((each) => each.name),
  );
  const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
  return `There is nothing to reckon called "${name}".${hint} "reckon --list" shows all.`;
}
