/** Reads weights and volumes: `25 kg`, `500 ml`, `2 US gal`. */
import type { MassUnit, VolumeUnit } from '../units.js';
import { parse } from './readings.js';
import { type NotUnderstood, type Parsed, type Reading, unclear } from './result.js';
import { failed, positiveTokens, readTerms, unitOf } from './terms.js';
import type { Token } from './tokens.js';
import { MASSES, VOLUMES, type Vocabulary } from './words.js';

/**
 * A weight in grams.
 *
 * @param typed as typed
 * @param defaultUnit unit of a number that has none
 */
export function parseMass(typed: string, defaultUnit: MassUnit = 'kg'): Parsed<'g'> {
  return parse(typed, 'g', (text) => oneAmount(text, MASSES, defaultUnit));
}

/**
 * A volume in litres. A gallon, a pint or a fluid ounce without a country is asked about.
 *
 * @param typed as typed
 * @param defaultUnit unit of a number that has none
 */
export function parseVolume(typed: string, defaultUnit: VolumeUnit = 'L'): Parsed<'L'> {
  return parse(typed, 'L', (text) => oneAmount(text, VOLUMES, defaultUnit));
}

function oneAmount<Unit extends string>(
  text: string,
  vocabulary: Vocabulary<Unit>,
  defaultUnit: Unit,
): Reading {
  const list = positiveTokens(text, vocabulary.what);
  const read = failed(list) ? list : readAmount(list, vocabulary, defaultUnit);
  return failed(read) ? read : { ok: true, ...read };
}

export interface AmountRead {
  /** In the base unit of the vocabulary's table. */
  readonly value: number;
  readonly echo: string;
}

/** One number with a unit of the vocabulary. */
export function readAmount<Unit extends string>(
  list: readonly Token[],
  vocabulary: Vocabulary<Unit>,
  defaultUnit: Unit | undefined,
): AmountRead | NotUnderstood {
  const terms = readTerms(list, vocabulary.what, vocabulary.usual);
  if (failed(terms)) return terms;
  const [term, ...rest] = terms as [(typeof terms)[0], ...typeof terms];
  const unit = term.word === undefined ? defaultUnit : unitOrTrap(term.word, vocabulary);
  if (unit === undefined) return unclear(`The number needs a unit: ${vocabulary.usual}.`);
  if (failed(unit)) return unit;
  if (rest.length > 0)
    return unclear(`That reads as two figures. Type one, with one unit: ${vocabulary.usual}.`);
  return { value: term.number.value * vocabulary.table[unit], echo: `${term.number.text} ${unit}` };
}

/** The unit, or a sentence on the one mistake that changes a dose: an ounce of weight for a fluid ounce. */
function unitOrTrap<Unit extends string>(word: string, vocabulary: Vocabulary<Unit>): Unit | NotUnderstood {
  const unit = unitOf(word, vocabulary);
  if (!failed(unit)) return unit;
  const isVolume = vocabulary.what === VOLUMES.what;
  if (isVolume && MASSES.words[word] === 'oz') {
    return unclear('An ounce alone is a weight. If the label says fluid ounces, type fl oz.');
  }
  if (isVolume && word in MASSES.words)
    return unclear(`"${word}" is a weight; this needs a volume: ${vocabulary.usual}.`);
  if (!isVolume && word in VOLUMES.words)
    return unclear(`That is a volume; this needs a weight: ${vocabulary.usual}.`);
  return unit;
}
