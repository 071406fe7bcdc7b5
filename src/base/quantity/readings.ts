/** Finds every way a text can be read, reads each, and makes one result of them. */

import { type Parsed, type Reading, unclear } from './result.js';
import { clean, shown } from './show.js';
import { LONGEST_TEXT, tidy } from './tidy.js';

/** Past this it is a slip of the finger, whatever the unit. */
const LARGEST = 1e12;

/** `1,234` is one and a bit, or more than a thousand; `0,234` and `12,34` can only be decimals. */
const DOUBTFUL_COMMA = /(?<![\d.,])([1-9]\d{0,2}),(\d{3})(?![\d.,])/g;
const DOUBTFUL_UNIT = /(?<![a-z])(?=(?:gal|pint|quart|floz)(?![a-z]))/g;
const RANGE = /(?<![\d.,/])(\d+(?:[.,]\d+)?) ?(?:-|to) ?(\d+(?:[.,]\d+)?)(?![\d.,/])/;

/**
 * Reads a typed text with a reader for one tidy, unambiguous text.
 *
 * @param typed as typed
 * @param unit of the value the reader gives
 * @param read reads one tidy text
 * @param shownUnit unit as shown after the value; the unit itself when left out
 */
export function parse<Unit extends string>(
  typed: string,
  unit: Unit,
  read: (text: string) => Reading,
  shownUnit: string = unit,
): Parsed<Unit> {
  const { text, approximate } = tidy(typed);
  if (text === '') return unclear('Nothing was typed.');
  if (text.length > LONGEST_TEXT || typed.length > LONGEST_TEXT)
    return unclear('That is too long for one figure.');
  const range = RANGE.exec(text);
  if (range) return unclear(rangeReason(range));
  const readings = variants(text).map(read);
  const good = readings.filter((reading) => reading.ok);
  if (good.some(({ value }) => !(Math.abs(value) <= LARGEST))) return unclear('That is too large a figure.');
  const [first] = readings as [Reading, ...Reading[]];
  const [only, another] = good;
  if (only === undefined) return first as Parsed<Unit>;
  const dressed = good.map(({ value, echo, understood }) => ({
    typed: echo,
    value: clean(value),
    understood: understood ?? equation(echo, value, shownUnit),
  }));
  if (another !== undefined) return unclear(`"${typed.trim()}" can be read in more than one way.`, dressed);
  const { value, understood } = dressed[0] as (typeof dressed)[0];
  return { ok: true, value, unit, understood, approximate };
}

/** The text and the value it comes to, or only the text when it is already that value. */
function equation(echo: string, value: number, unit: string): string {
  const withUnit = (figure: string) => `${figure} ${unit}`.trim();
  return echo === withUnit(String(clean(value))) ? echo : `${echo} = ${withUnit(shown(value))}`;
}

function variants(text: string): string[] {
  const commas = text.match(DOUBTFUL_COMMA)
    ? [text.replace(DOUBTFUL_COMMA, '$1.$2'), text.replace(DOUBTFUL_COMMA, '$1$2')]
    : [text];
  return commas.flatMap((each) => (each.match(DOUBTFUL_UNIT) ? unitVariants(each) : [each]));
}

function unitVariants(text: string): string[] {
  const us = text.replace(DOUBTFUL_UNIT, 'us');
  // Rates per 1,000 square feet are written in the United States only.
  return /\/ ?1000 ?ft2/.test(text) ? [us] : [us, text.replace(DOUBTFUL_UNIT, 'uk')];
}

function rangeReason([, from, to]: RegExpExecArray): string {
  const middle = (Number(from?.replace(',', '.')) + Number(to?.replace(',', '.'))) / 2;
  return `That is a range. Type one figure; the middle is ${shown(middle)}.`;
}
