/** Reads areas: `84`, `8000 sq ft`, `12 x 7`, `12 ft 6 in x 25 ft`, `1/4 acre`. */
import { AREA_IN_M2, type AreaUnit, type LengthUnit } from '../units.js';
import { readLength } from './length.js';
import { parse } from './readings.js';
import { type NotUnderstood, type Parsed, type Reading, unclear } from './result.js';
import { failed, positiveTokens, readTerms, unitOf } from './terms.js';
import type { Token } from './tokens.js';
import { AREAS, LENGTHS } from './words.js';

export interface AreaDefaults {
  /** Unit of an area typed as a bare number. */
  readonly areaUnit: AreaUnit;
  /** Unit of two sides typed as bare numbers. */
  readonly sideUnit: LengthUnit;
}

/**
 * An area in square metres, typed as one figure or as two sides.
 *
 * @param typed as typed
 * @param defaults units of numbers that have none
 */
export function parseArea(
  typed: string,
  defaults: AreaDefaults = { areaUnit: 'm2', sideUnit: 'm' },
): Parsed<'m2'> {
  return parse(typed, 'm2', (text) => {
    const list = positiveTokens(text, AREAS.what);
    if (failed(list)) return list;
    const sides = splitAt(list, 'x');
    return sides.length === 1 ? oneFigure(list, defaults.areaUnit) : twoSides(sides, defaults.sideUnit);
  });
}

function oneFigure(list: readonly Token[], defaultUnit: AreaUnit): Reading {
  const read = readArea(list, defaultUnit);
  return failed(read) ? read : { ok: true, value: read.areaM2, echo: read.echo };
}

export interface AreaRead {
  readonly areaM2: number;
  readonly echo: string;
}

/** One number with an area unit. */
export function readArea(list: readonly Token[], defaultUnit: AreaUnit): AreaRead | NotUnderstood {
  const terms = readTerms(list, AREAS.what, AREAS.usual);
  if (failed(terms)) return terms;
  const [term, ...rest] = terms as [(typeof terms)[0], ...typeof terms];
  if (term.word !== undefined && term.word in LENGTHS.words) {
    return unclear(
      'That is a length. An area needs two sides, such as 12 x 7, or square metres, such as 84 m2.',
    );
  }
  const unit = term.word === undefined ? defaultUnit : unitOf(term.word, AREAS);
  if (failed(unit)) return unit;
  if (rest.length > 0)
    return unclear('That reads as two figures. Type one area, or two sides such as 12 x 7.');
  return { areaM2: term.number.value * AREA_IN_M2[unit], echo: `${term.number.text} ${unit}` };
}

function twoSides(sides: readonly (readonly Token[])[], defaultUnit: LengthUnit): Reading {
  const [one, two, ...more] = sides as [readonly Token[], readonly Token[], ...(readonly Token[])[]];
  if (more.length > 0)
    return unclear('An area has two sides, such as 12 x 7. Give other shapes as lawn parts.');
  if (sides.flat().some((token) => token.kind === 'word' && token.text in AREAS.words)) {
    return unclear('Sides are lengths: type 12 m x 7 m, or the area alone, such as 84 m2.');
  }
  // In `40x25 ft` the one unit is meant for both sides.
  const second = readLength(two, unitOfSide(one) ?? defaultUnit);
  const first = readLength(one, unitOfSide(two) ?? defaultUnit);
  if (failed(first)) return first;
  if (failed(second)) return second;
  return { ok: true, value: first.lengthM * second.lengthM, echo: `${first.echo} x ${second.echo}` };
}

function unitOfSide(side: readonly Token[]): LengthUnit | undefined {
  const word = side.find((token) => token.kind === 'word');
  return word === undefined ? undefined : LENGTHS.words[word.text];
}

/** The tokens before, between and after a sign. */
export function splitAt(list: readonly Token[], sign: string): Token[][] {
  const parts: Token[][] = [[]];
  for (const token of list) {
    if (token.kind === 'sign' && token.text === sign) parts.push([]);
    else parts.at(-1)?.push(token);
  }
  return parts;
}
