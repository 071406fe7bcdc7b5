/** The form of a reckoner: one question with named keys, an equation, its source, and one number as the answer. */

export type KeyKind =
  | 'number'
  | 'fraction'
  | 'length'
  | 'depth'
  | 'area'
  | 'mass'
  | 'volume'
  | 'mass-rate'
  | 'water-rate'
  | 'product-rate'
  | 'temperature'
  | 'word'
  | 'date'
  | 'points';

export interface Key {
  readonly name: string;
  readonly kind: KeyKind;
  readonly unit: string;
  readonly says: string;
  /** Several values with commas between them. */
  readonly isList?: boolean;
  readonly isOptional?: boolean;
  readonly words?: readonly string[];
}

/** Values as read: a number, a list, a word, or points. */
export type Given = Readonly<
  Record<string, number | string | readonly number[] | readonly (readonly [number, number])[]>
>;

export interface Quantity {
  readonly value: number;
  readonly unit: string;
}

/** The headline is one number; whatever else comes out stands under its own name in `more`. */
export interface Answer extends Quantity {
  readonly working: string;
  readonly more?: Readonly<Record<string, Quantity>>;
  readonly notes?: readonly string[];
}

export interface Reckoner {
  readonly name: string;
  readonly says: string;
  readonly keys: readonly Key[];
  readonly equation: string;
  readonly sources: readonly { readonly id: string; readonly at: string }[];
  /** @throws {RangeError} when a value is outside its range */
  readonly compute: (given: Given, figures: FigureValues) => Answer;
}

/** Typical values of the figures that a reckoner may need, by id. */
export type FigureValues = (id: string) => number;

export const number = (given: Given, name: string): number => {
  const value = given[name];
  if (typeof value !== 'number') throw new RangeError(`${name} is missing`);
  return value;
};
export const maybe = (given: Given, name: string): number | undefined =>
  typeof given[name] === 'number' ? given[name] : undefined;
export const list = (given: Given, name: string): readonly number[] =>
  Array.isArray(given[name]) ? (given[name] as readonly number[]) : [];

/** Short keys for the tables below. */
export const key = (
  name: string,
  kind: KeyKind,
  unit: string,
  says: string,
  more: Partial<Key> = {},
): Key => ({
  name,
  kind,
  unit,
  says,
  ...more,
});
export const optional = { isOptional: true } as const;
