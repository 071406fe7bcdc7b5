/** Reads lengths and depths: `12`, `12 ft 6 in`, `5'6"`, `1/2 in`. */
import { convert, LENGTH_IN_M, type LengthUnit } from '../units.js';
import { parse } from './readings.js';
import { type NotUnderstood, type Parsed, type Reading, unclear } from './result.js';
import { failed, positiveTokens, readTerms, type Term, unitOf } from './terms.js';
import type { Token } from './tokens.js';
import { LENGTHS } from './words.js';

/**
 * A length in metres.
 *
 * @param typed as typed
 * @param defaultUnit unit of a number that has none
 */
export function parseLength(typed: string, defaultUnit: LengthUnit = 'm'): Parsed<'m'> {
  return parse(typed, 'm', (text) => lengthIn('m', text, defaultUnit));
}

/**
 * A depth in millimetres.
 *
 * @param typed as typed
 * @param defaultUnit unit of a number that has none
 */
export function parseDepth(typed: string, defaultUnit: LengthUnit = 'mm'): Parsed<'mm'> {
  return parse(typed, 'mm', (text) => lengthIn('mm', text, defaultUnit));
}

function lengthIn(to: LengthUnit, text: string, defaultUnit: LengthUnit): Reading {
  const list = positiveTokens(text, LENGTHS.what);
  const read = failed(list) ? list : readLength(list, defaultUnit);
  if (failed(read)) return read;
  return { ok: true, value: convert(LENGTH_IN_M, read.lengthM, { from: 'm', to }), echo: read.echo };
}

export interface LengthRead {
  readonly lengthM: number;
  readonly echo: string;
  /** First unit typed, or the default. */
  readonly unit: LengthUnit;
}

/** A length of one or more terms, each in a smaller unit than the one before. */
export function readLength(list: readonly Token[], defaultUnit: LengthUnit): LengthRead | NotUnderstood {
  const terms = readTerms(list, LENGTHS.what, LENGTHS.usual);
  if (failed(terms)) return terms;
  const units: LengthUnit[] = [];
  for (const term of terms) {
    const unit = unitOfTerm(term, units.at(-1), defaultUnit);
    if (failed(unit)) return unit;
    const before = units.at(-1);
    if (before !== undefined && !(LENGTH_IN_M[unit] < LENGTH_IN_M[before])) {
      return unclear('That reads as two lengths. Type one, such as 12 ft 6 in.');
    }
    units.push(unit);
  }
  const lengthM = terms.reduce(
    (sum, { number }, at) => sum + number.value * LENGTH_IN_M[units[at] as LengthUnit],
    0,
  );
  const echo = terms.map(({ number }, at) => `${number.text} ${units[at]}`).join(' ');
  return { lengthM, echo, unit: units[0] as LengthUnit };
}

function unitOfTerm(
  { word }: Term,
  before: LengthUnit | undefined,
  defaultUnit: LengthUnit,
): LengthUnit | NotUnderstood {
  if (word !== undefined) return unitOf(word, LENGTHS);
  if (before === undefined) return defaultUnit;
  // Everyone reads 5' 6 as five feet six inches; other pairs without a unit are left to be asked.
  return before === 'ft' ? 'in' : unclear('The second number needs a unit too, such as 3 m 20 cm.');
}
