import { plainNumber } from '../base/quantity-words.js';

const DIGITS = 6;

/** A number that goes into an equation, as given: six digits, which hides no more than binary dust. */
export const put = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** A number that comes out, rounded for the eye, with its unit: `2520 g`. */
export const out = (value: number, unit: string): string =>
  `${plainNumber(value, unit === 'm2' ? unit : '')}${unit === 'fraction' ? '' : ` ${unit}`}`;

const MOST_TERMS = 12;

/** A sum of the terms; the middle of a long one is left out. */
export function sum(terms: readonly string[]): string {
  if (terms.length <= MOST_TERMS) return terms.join(' + ');
  const ends = MOST_TERMS / 2;
  return [...terms.slice(0, ends), '…', ...terms.slice(-ends)].join(' + ');
}
