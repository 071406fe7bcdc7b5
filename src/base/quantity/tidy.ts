/**
 * Brings a typed quantity to one plain spelling before it is read: lower case, ASCII signs, `m2` for every
 * way of writing a square metre, `usgal` for every way of writing a US gallon.
 */

const ABOUT = /^(?:(?:about|around|approximately|approx\.?|roughly|circa|ca\.?|some|say)\s+|[~≈]\s*)/;

const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/[′’‘`]/g, "'"],
  [/[″“”]|''/g, '"'],
  [/[−–—]/g, '-'],
  [/[()]/g, ' '],
  [/[.,;]$/g, ''],
  // Feet and inches are often written 12'-6".
  [/'\s*-\s*(?=\d)/g, "' "],
  [/(?<=[a-z])\.(?!\d)/g, ' '],
  [/(?<![a-z])(?:per[ -]?cent|pct)(?![a-z])/g, '%'],
  [/\s*(?<![a-z])per(?![a-z])\s*/g, '/'],
  [/\s*[×✕✖*]\s*/g, ' x '],
  [/\s+by\s+(?=[\d.,])/g, ' x '],
  [/\s*x\s*(?=[\d.,])/g, ' x '],
  [/(?<![a-z\d] ?)(?:half|1\/2)(?: of)?(?: an?)?\s+(?=[a-z])/g, '1/2 '],
  [/(?<![a-z\d] ?)(?:a )?(?:quarter|1\/4)(?: of)?(?: an?)?\s+(?=[a-z])/g, '1/4 '],
  [/\^/g, ''],
  [/(?<![a-z])cu(?:bic)?\s*(?:metres?|meters?|m)(?![a-z])/g, 'm3'],
  [/(?<![a-z])cu(?:bic)?\s*(?:feet|foot|ft)(?![a-z])/g, 'ft3'],
  [/(?<![a-z])cu(?:bic)?\s*(?:yards?|yds?)(?![a-z])/g, 'yd3'],
  ...squares('m', 'metres?|meters?|mtrs?|m'),
  ...squares('cm', 'centimetres?|centimeters?|cms?'),
  ...squares('ft', 'feet|foot|ft'),
  ...squares('yd', 'yards?|yds?'),
  ...squares('in', 'inches|inch|ins?'),
  [/(?<![a-z])(?:fl|fluid)\s*(?:ounces?|ozs?)(?![a-z])/g, 'floz'],
  [/(?<![a-z])(?:gallons?|gals?)(?![a-z])/g, 'gal'],
  [/(?<![a-z])(?:pints?|pts?)(?![a-z])/g, 'pint'],
  [/(?<![a-z])(?:quarts?|qts?)(?![a-z])/g, 'quart'],
  [/(?<![a-z])(?:usa?|u s|american)\s*(?:liquid\s*)?(?=(?:gal|pint|quart|floz)(?![a-z]))/g, 'us'],
  [/(?<![a-z])(?:uk|u k|imperial|imp|british)\s*(?=(?:gal|pint|quart|floz)(?![a-z]))/g, 'uk'],
  [/(?<![a-z])(gal|pint|quart|floz)\s+(us|uk)(?![a-z])/g, '$2$1'],
  // A rate `per 1,000 ft2` can only mean a thousand.
  [/\/\s*1,000(?=\s*[a-z])/g, '/1000'],
];

/** Every way of writing one square unit: `sq m`, `sqm`, `square metres`, `m sq`, `metres squared`. */
function squares(unit: string, spellings: string): (readonly [RegExp, string])[] {
  return [
    [new RegExp(`(?<![a-z])(?:square|sq)\\s*(?:${spellings})(?![a-z])`, 'g'), `${unit}2`],
    [new RegExp(`(?<![a-z])(?:${spellings})\\s*(?:squared|sq)(?![a-z])`, 'g'), `${unit}2`],
  ];
}

/** Longest text that is read at all; nobody types a quantity longer than this. */
export const LONGEST_TEXT = 120;

export interface TidyText {
  readonly text: string;
  readonly approximate: boolean;
}

/** The text in plain spelling, and whether it said `about`. */
export function tidy(typed: string): TidyText {
  // Single fraction signs first: on its own, `2½` would become `21/2`.
  let text = typed
    .slice(0, LONGEST_TEXT + 1)
    .replace(/″/g, '"')
    .replace(/(\d?)\s*([¼½¾⅐-⅞])/g, (_, digit: string, sign: string) => `${digit} ${sign.normalize('NFKC')}`)
    .normalize('NFKC')
    .replace(/⁄/g, '/')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
  const approximate = ABOUT.test(text);
  text = text.replace(ABOUT, '');
  for (const [spelling, plain] of SPELLINGS) text = text.replace(spelling, plain);
  return { text: text.replace(/\s+/g, ' ').trim(), approximate };
}
