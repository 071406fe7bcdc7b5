/** The form of a reckoner: one question with named keys, an equation, its source, and one number as the answer. */

export type KeyKind =
  | 'number'
  | 'percent'
  | 'speed'
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
  /** What is allowed, in words. */
  readonly range: string;
  /** Several values with commas between them. */
  readonly isList?: boolean;
  readonly isOptional?: boolean;
  readonly words?: readonly string[];
  /** A key without which this one means nothing. */
  readonly needs?: string;
}

/** Values as read: a number, a list, a word, or points. */
export type Given = Readonly<
  Record<string, number | string | readonly number[] | readonly (readonly [number, number])[]>
>;

export interface Quantity {
  readonly value: number;
  readonly unit: string;
}

/**
 * What comes out. One rule for all: `value` is one number, the headline of the contract's answer column, and
 * `unit` is its unit; whatever else comes out stands under its own name in `more`. So a reader of `.value`
 * always finds a number.
 */
export interface Answer extends Quantity {
  /** The equation with the numbers put in. */
  readonly working: string;
  readonly more?: Readonly<Record<string, Quantity>>;
  readonly notes?: readonly string[];
}

export interface Reckoner {
  readonly name: string;
  readonly says: string;
  readonly keys: readonly Key[];
  /** Optional keys of which exactly one is given. */
  readonly exactlyOneOf?: readonly string[];
  readonly equation: string;
  /** Its litres are of soil, which the US sells by the cubic foot. */
  readonly loose?: boolean;
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

/** The named numbers as one object, ready for an equation. */
export const numbers = <Name extends string>(given: Given, ...names: Name[]): Record<Name, number> =>
  Object.fromEntries(names.map((name) => [name, number(given, name)])) as Record<Name, number>;

/** Short keys for the tables. */
export const key = (
  name: string,
  [kind, unit]: readonly [KeyKind, string],
  says: string,
  range: string,
  more: Partial<Key> = {},
): Key => ({ name, kind, unit, says, range, ...more });
export const optional = { isOptional: true } as const;
export const several = { isList: true } as const;

export const AREA = ['area', 'm2'] as const;
export const LENGTH = ['length', 'm'] as const;
export const SHARE = ['fraction', 'fraction'] as const;
export const RATE = ['mass-rate', 'g/m2'] as const;
export const SPEED = ['speed', 'km/h'] as const;
export const TEMPERATURE = ['temperature', 'C'] as const;
export const WORD = ['word', ''] as const;
export const DATE = ['date', ''] as const;
export const plain = (unit: string): readonly [KeyKind, string] => ['number', unit];

/** Ranges that many keys share. */
export const ABOVE_0 = 'above 0';
export const FROM_0 = '0 or more';
export const A_SHARE = 'a share from 0 to 1, or with %';
export const A_SHARE_ABOVE_0 = 'a share above 0 and at most 1, or with %';
export const A_LATITUDE = '-90 to 90, south negative';
export const A_DATE = 'a day of the calendar, such as 2027-03-13';
