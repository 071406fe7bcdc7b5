/** Reads the size of a lawn: one area, two sides, or shapes joined with + and taken away with -. */
import { lawnPartsArea } from '../agronomy/area-parts.js';
import { cleanLine } from '../base/clean-text.js';
import { parseArea } from '../base/quantity/area.js';
import { numberWords } from '../base/quantity/number-words.js';
import { clean, shown } from '../base/quantity/show.js';
import { quantity } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import type { LawnPart } from './answers.js';
import { whichWithin, withinBounds } from './read-answer-bounds.js';
import { AREA_DEFAULTS, type PartReading, readPart } from './read-parts-shape.js';
import type { Reading } from './reading.js';
import { showParts } from './show-answer.js';

/** More parts than anyone measures. */
const MOST_PARTS = 40;
const TIGHT_MINUS = /[\d"'a-z]-(?=\d)|\d-(?=[a-z])/;
const JOINTS = /\s*(?:\+|\b(?:and|plus)\b)\s*|\s*(?:\s-\s*|\b(?:minus|less|without|take away)\b)\s*/;
/** `half an acre`, `a quarter of a hectare`. */
const PART_OF_ACRE = /\b(?:an? )?(half|quarter)(?: of)?(?: an?)? (?=acre|hectare)/g;
const MINUS = /-|minus|less|without|take away/;

const EXAMPLE: Readonly<Record<Units, string>> = {
  metric: '12 x 7 + circle 3 - 2 x 1',
  us: '40 x 25 + circle 10 - 6 x 3',
};
const AN_AREA: Readonly<Record<Units, string>> = { metric: '84 m2', us: '900 sq ft' };

interface Piece {
  readonly minus: boolean;
  readonly reading: Exclude<PartReading, { kind: 'wrong' }>;
}

/** The answer to a question for an area: m2 for one figure or one rectangle, a list of parts for more. */
export function readArea(question: Question, typed: string, units: Units): Reading {
  const text = tidyParts(typed);
  if (isSingle(text)) {
    const parsed = parseArea(text, AREA_DEFAULTS[units]);
    if (!parsed.ok && parsed.choices !== undefined) {
      const choices = parsed.choices.map(({ understood, value }) => ({ label: understood, value }));
      return whichWithin(question, parsed.reason, choices, units);
    }
  }
  const pieces = readPieces(text, units);
  if (!Array.isArray(pieces)) return pieces;
  const parts = shapesOf(pieces);
  if (parts === undefined) return bareSum(question, pieces, units);
  const [only] = parts;
  const areaM2 = areaOf(parts);
  if (typeof areaM2 !== 'number') return areaM2;
  const isPlain = parts.length === 1 && only?.shape === 'rectangle';
  return withinBounds(question, areaM2, about(pieces, showParts(parts, units)), {
    answer: isPlain ? areaM2 : parts,
    units,
  });
}

/** The answer to a question for the shapes themselves: always a list. */
export function readParts(question: Question, typed: string, units: Units): Reading {
  const pieces = readPieces(tidyParts(typed), units);
  if (!Array.isArray(pieces)) return pieces;
  const parts = shapesOf(pieces);
  if (parts === undefined) return refused(`Give shapes with their lengths, such as ${EXAMPLE[units]}.`);
  const areaM2 = areaOf(parts);
  if (typeof areaM2 !== 'number') return areaM2;
  return withinBounds(question, areaM2, about(pieces, showParts(parts, units)), { answer: parts, units });
}

function readPieces(text: string, units: Units): Piece[] | Reading {
  if (text === '')
    return refused(`Nothing was typed. Type ${EXAMPLE[units]}, or an area such as ${AN_AREA[units]}.`);
  if (TIGHT_MINUS.test(text.replace(/\b[l]-shape/g, '')))
    return refused(
      'Put a space on each side of a minus, such as 12 x 7 - 2 x 1. A range cannot be used: give one figure.',
    );
  const texts = text.split(JOINTS);
  const signs = [...text.matchAll(new RegExp(JOINTS, 'g'))].map(([joint]) => MINUS.test(joint));
  if (texts.length > MOST_PARTS)
    return refused(
      `That is more than ${MOST_PARTS} parts. Give the area alone instead, such as ${AN_AREA[units]}.`,
    );
  const pieces: Piece[] = [];
  for (const [index, each] of texts.entries()) {
    if (each === '')
      return refused(`A part is missing before or after a sign. Type it like ${EXAMPLE[units]}.`);
    const reading = readPart(each, units);
    if (reading.kind === 'wrong') return refused(reading.says);
    pieces.push({ minus: index > 0 && signs[index - 1] === true, reading });
  }
  return pieces;
}

/** The shapes, or undefined when some piece is an area without a shape. */
function shapesOf(pieces: readonly Piece[]): LawnPart[] | undefined {
  const parts: LawnPart[] = [];
  for (const { minus, reading } of pieces) {
    if (reading.kind !== 'shape') return undefined;
    parts.push(minus ? { ...reading.part, minus } : reading.part);
  }
  return parts;
}

function areaOf(parts: readonly LawnPart[]): number | Reading {
  try {
    return clean(lawnPartsArea({ lawnParts: parts }).areaM2);
  } catch {
    if (parts.some((part) => part.shape === 'outline'))
      return refused(
        'That outline repeats a corner, crosses itself or holds no ground. Check the order of the corners.',
      );
    if (parts.some((part) => part.minus === true))
      return refused('The beds taken away are as large as the lawn, or larger. Check the figures.');
    return refused('A length must be above 0. Check the figures.');
  }
}

/** Areas without shapes can only be added up. */
function bareSum(question: Question, pieces: readonly Piece[], units: Units): Reading {
  let sumM2 = 0;
  for (const { minus, reading } of pieces) {
    const sizeM2 = reading.kind === 'area' ? reading.areaM2 : areaOf([reading.part]);
    if (typeof sizeM2 !== 'number') return sizeM2;
    sumM2 += minus ? -sizeM2 : sizeM2;
  }
  if (sumM2 <= 0)
    return refused(
      pieces.length > 1 ? 'Nothing is left of the lawn. Check the figures.' : 'An area must be above 0.',
    );
  const areaM2 = clean(sumM2);
  const [only] = pieces;
  const echo = pieces.length === 1 && only?.reading.kind === 'area' ? only.reading.echo : undefined;
  const { areaUnit } = AREA_DEFAULTS[units];
  const from = echo === undefined || echo.endsWith(` ${areaUnit}`) ? '' : ` (${echo})`;
  const words = units === 'metric' ? `${shown(areaM2)} m2` : quantity(areaM2, 'm2', units);
  return withinBounds(question, areaM2, about(pieces, `${words}${from}`), { units });
}

/** One figure or two sides, for which the reader of quantities can offer a choice. */
function isSingle(text: string): boolean {
  return !JOINTS.test(text);
}

function about(pieces: readonly Piece[], words: string): string {
  return pieces.some(({ reading }) => reading.approximate) ? `about ${words}` : words;
}

function tidyParts(typed: string): string {
  return numberWords(cleanLine(typed).toLowerCase())
    .replace(PART_OF_ACRE, (_, word: string) => `${word === 'half' ? 1 / 2 : 1 / 4} `)
    .replace(/\ban? (?=acre|hectare)/g, '1 ')
    .replace(/[−–—]/g, '-')
    .replace(/[’‘′]/g, "'")
    .replace(/[”“″]/g, '"')
    .replace(/[.;!]+$/, '')
    .trim();
}

function refused(says: string): Reading {
  return { kind: 'refused', says };
}
