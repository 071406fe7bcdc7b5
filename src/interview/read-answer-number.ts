/** Reads a number in the unit of its question, from any unit of the same kind that people type. */
import { cleanLine } from '../base/clean-text.js';
import type { IsoDate } from '../base/dates.js';
import { parseMass, parseVolume } from '../base/quantity/amount.js';
import { parseFraction } from '../base/quantity/fraction.js';
import { inReaders } from '../base/quantity/in-readers.js';
import { parseDepth, parseLength } from '../base/quantity/length.js';
import { parseNumber } from '../base/quantity/number.js';
import { numberWords } from '../base/quantity/number-words.js';
import { parseMassRate, parseVolumeRate } from '../base/quantity/rate.js';
import type { Parsed } from '../base/quantity/result.js';
import { clean, shown } from '../base/quantity/show.js';
import { AREA_IN_M2 } from '../base/units.js';
import type { Units } from '../base/us-units.js';
import type { Question } from '../rules/schema.js';
import { aboutAnswer, limits, whichWithin, withinBounds } from './read-answer-bounds.js';
import { readTimeAnswer } from './read-answer-time.js';
import type { Reading } from './reading.js';
import { showAnswer } from './show-answer.js';

type Reader = (typed: string, units: Units) => Parsed<string>;

/** Readers by the unit a pack gives its question; any other unit is a plain number with that word after it. */
const READERS: Readonly<Record<string, Reader>> = {
  mm: (typed, units) => parseDepth(typed, BARE.mm[units]),
  m: (typed, units) => parseLength(typed, BARE.m[units]),
  g: (typed, units) => parseMass(typed, BARE.g[units]),
  kg: (typed, units) => scaled(parseMass(typed, BARE.kg[units]), 0.001),
  mL: (typed, units) => scaled(parseVolume(typed, BARE.mL[units]), 1000),
  L: (typed, units) => parseVolume(typed, BARE.L[units]),
  // The question names the area, so the amount alone answers it.
  'g/m2': (typed, units) =>
    either(parseMassRate(typed, BARE['g/m2'][units]), () =>
      scaled(parseMass(typed, BARE.g[units]), 1 / AREA_ASKED_M2[units]),
    ),
  'mL/m2': (typed, units) =>
    either(parseVolumeRate(typed, BARE['mL/m2'][units]), () =>
      scaled(parseVolume(typed, BARE.mL[units]), 1000 / AREA_ASKED_M2[units]),
    ),
  'L/m2': (typed, units) =>
    either(scaled(parseVolumeRate(typed, BARE['L/m2'][units]), 0.001), () =>
      scaled(parseVolume(typed, BARE.L[units]), 1 / AREA_ASKED_M2[units]),
    ),
  'L/min': (typed, units) =>
    timedVolume(typed, units) ?? parseVolume(typed.replace(PER_MINUTE, ''), BARE.L[units]),
  degrees: (typed) => gradient(typed) ?? parseNumber(plainWords(typed, 'degrees')),
};

/** What a bare number is meant in, by the unit that the answer is kept in. */
const BARE = {
  mm: { metric: 'mm', us: 'in' },
  m: { metric: 'm', us: 'ft' },
  g: { metric: 'g', us: 'lb' },
  kg: { metric: 'kg', us: 'lb' },
  mL: { metric: 'mL', us: 'US fl oz' },
  L: { metric: 'L', us: 'US gal' },
  'g/m2': { metric: 'g/m2', us: 'lb/1000 ft2' },
  'mL/m2': { metric: 'mL/m2', us: 'US fl oz/1000 ft2' },
  'L/m2': { metric: 'L/m2', us: 'US gal/1000 ft2' },
} as const;
/** The area that a label's rate is asked for. */
const AREA_ASKED_M2: Readonly<Record<Units, number>> = { metric: 1, us: 1000 * AREA_IN_M2.ft2 };

const PER_MINUTE = /\s*(?:\/|\bper\b|\ba\b)\s*(?:1\s*)?min(?:ute)?s?\b/i;
/** The bucket test as it was made: `10 L in 40 seconds`. */
const TIMED =
  /^(.+?)\s*(?:\bin\b|\/)\s*(?:an?\s+)?(\d+(?:[.,]\d+)?)?\s*(s|secs?|seconds?|m|mins?|minutes?)$/i;
/** A slope as builders and road signs give it: `1 in 10`, `10 %`. */
const ONE_IN = /^1\s*(?:in|:)\s*(\d+(?:\.\d+)?)$/i;
const PERCENT = /^(\d+(?:\.\d+)?)\s*(?:%|per ?cent)$/i;
const SECONDS_PER_MINUTE = 60;
/** Nothing of the kind, said where a number is asked for. */
const NONE = /^(?:none|no|no \w+|never|nothing|nil|not any)[.!]?$/i;
/** Words that may stand beside any number: they say nothing that the question has not said. */
const BESIDE =
  /\b(?:in|of|sun|light|per|an?|each|every|p?h|gbp|eur|usd|pounds?|euros?|dollars?|quid)\b|°|\bdeg(?:rees?)?\b|[£$€]/g;
/** The three numbers of a feed bag, typed in full where the first is asked for. */
const BAG_NUMBERS = /^(\d+(?:\.\d+)?)\s*[-:/ ]\s*\d+(?:\.\d+)?\s*[-:/ ]\s*\d+(?:\.\d+)?$/;

/** A number within the bounds of its question, in the question's unit. */
export function readNumberAnswer(question: Question, typed: string, today: IsoDate, units: Units): Reading {
  const read = READERS[question.unit ?? ''];
  // What "none" stands for differs from question to question, and its help says it.
  if (NONE.test(cleanLine(typed))) return readNone(question, units);
  if (read !== undefined)
    return fromParsed(question, read(numberWords(withoutArticle(cleanLine(typed))), units), units);
  return readTimeAnswer(question, typed, today, units) ?? plainNumber(question, typed);
}

/** A share of the whole, 0 to 1. */
export function readFractionAnswer(question: Question, typed: string): Reading {
  return fromParsed(question, parseFraction(cleanLine(typed)));
}

function readNone(question: Question, units: Units): Reading {
  const { noneIs, help, safety } = question;
  if (noneIs === undefined) return { kind: 'refused', says: `${help} ${limits(question, units)}` };
  const understood = showAnswer(question, noneIs, units);
  if (safety !== true) return { kind: 'value', value: noneIs, understood };
  return { kind: 'odd', value: noneIs, understood, says: `I read that as: ${understood}.` };
}

/** `an inch` is 1 inch. */
const withoutArticle = (typed: string): string => typed.replace(/^an?\s+(?=\p{L}+$)/iu, '1 ');

function timedVolume(typed: string, units: Units): Parsed<string> | undefined {
  const [, volume, count = '1', unit] = TIMED.exec(typed) ?? [];
  if (volume === undefined || unit === undefined) return undefined;
  const seconds = Number(count.replace(',', '.')) * (unit.startsWith('s') ? 1 : SECONDS_PER_MINUTE);
  if (!(seconds > 0)) return undefined;
  const flow = scaled(inReaders(parseVolume(volume, BARE.L[units]), units), SECONDS_PER_MINUTE / seconds);
  return flow.ok ? { ...flow, understood: `${typed} = ${shown(flow.value)} L/min` } : flow;
}

function gradient(typed: string): Parsed<string> | undefined {
  const [, run] = ONE_IN.exec(typed) ?? [];
  const [, percent] = PERCENT.exec(typed) ?? [];
  const rise = run === undefined ? Number(percent) / 100 : 1 / Number(run);
  if (!Number.isFinite(rise)) return undefined;
  const value = clean(Math.round(((Math.atan(rise) * 180) / Math.PI) * 10) / 10);
  return { ok: true, value, unit: 'degrees', understood: `${typed} = ${value} degrees`, approximate: false };
}

function plainNumber(question: Question, typed: string): Reading {
  const bag = question.unit === '%' ? BAG_NUMBERS.exec(numberWords(cleanLine(typed).toLowerCase())) : null;
  return fromParsed(question, parseNumber(bag ? (bag[1] as string) : plainWords(typed, question.unit ?? '')));
}

/** The number alone, without the words of its unit and others that say nothing. */
function plainWords(typed: string, unit: string): string {
  let text = numberWords(cleanLine(typed).toLowerCase());
  for (const word of unitWords(unit)) text = text.replace(wholeWord(word), ' ');
  return text.replace(BESIDE, ' ').trim();
}

/** The words of a unit, each also in the singular; hours also as people shorten them. */
function unitWords(unit: string): string[] {
  const words = unit
    .toLowerCase()
    .split(/[^a-z%]+/)
    .filter((word) => word !== '');
  const short = words.includes('hours') ? ['hrs', 'hr', 'h'] : [];
  return [...words.flatMap((word) => [word, word.replace(/s$/, '')]), ...short];
}

/** The word where no other letter touches it: `10hours` and `10 hours` both hold hours. */
function wholeWord(word: string): RegExp {
  const escaped = word.replace(/[^\w]/g, '\\$&');
  return new RegExp(`(?<![a-z])${escaped}(?![a-z])`, 'g');
}

function fromParsed(question: Question, read: Parsed<string>, units: Units = 'metric'): Reading {
  const parsed = inReaders(read, units);
  if (!parsed.ok) {
    if (parsed.choices === undefined)
      return { kind: 'refused', says: `${parsed.reason} ${limits(question, units)}` };
    const choices = parsed.choices.map(({ understood, value }) => ({ label: understood, value }));
    return whichWithin(question, parsed.reason, choices, units);
  }
  const words = aboutAnswer(question, parsed.value, parsed.approximate, units);
  return withinBounds(question, parsed.value, `${words}${convertedFrom(question, parsed, units)}`, { units });
}

/** ` (1/2 in)` after a figure that was typed in another unit; nothing where it would only repeat it. */
function convertedFrom(question: Question, parsed: Parsed<string> & { ok: true }, units: Units): string {
  const [echo = '', result] = parsed.understood.split(' = ');
  if (question.kind === 'fraction') return '';
  if (units === 'us') return isAskedIn(question, echo) ? '' : ` (${echo})`;
  return result === undefined || echo.startsWith(`${shown(parsed.value)} `) ? '' : ` (${echo})`;
}

/** Whether the figure was typed in the US unit that is asked for, or stands beside the answer anyhow. */
function isAskedIn({ unit = '' }: Question, echo: string): boolean {
  const asked = Object.entries(BARE).find(([each]) => each === unit)?.[1].us;
  return asked === undefined || unit.endsWith('/m2') || echo.endsWith(` ${asked}`);
}

function either(parsed: Parsed<string>, otherwise: () => Parsed<string>): Parsed<string> {
  if (parsed.ok || parsed.choices !== undefined) return parsed;
  const second = otherwise();
  return second.ok || second.choices !== undefined ? second : parsed;
}

function scaled(parsed: Parsed<string>, factor: number): Parsed<string> {
  if (parsed.ok) return { ...parsed, value: clean(parsed.value * factor) };
  if (parsed.choices === undefined) return parsed;
  const choices = parsed.choices.map((choice) => ({ ...choice, value: clean(choice.value * factor) }));
  return { ...parsed, choices };
}
