/** What a person has answered: the values that questions take, and the three ways a question can stand. */
/** One piece of a lawn measured by itself; `minus` takes a bed away. Lengths in metres. */
export type LawnPart = { readonly minus?: boolean } & (
  | { readonly shape: 'rectangle'; readonly lengthM: number; readonly widthM: number }
  | { readonly shape: 'triangle'; readonly sidesM: readonly [number, number, number] }
  | { readonly shape: 'circle'; readonly diameterM: number }
  | { readonly shape: 'ellipse'; readonly lengthM: number; readonly widthM: number }
  | { readonly shape: 'offsets'; readonly spacingM: number; readonly offsetsM: readonly number[] }
  | { readonly shape: 'outline'; readonly pointsM: readonly (readonly [number, number])[] }
);

export type AnswerValue = number | boolean | string | readonly LawnPart[];

/** The word for "said that it is not known"; a question that is absent was not asked. */
export const UNKNOWN = 'unknown';

/** Question id to value, or to "unknown". */
export type Answers = Readonly<Record<string, AnswerValue>>;
