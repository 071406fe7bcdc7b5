/** Reads one part of a lawn: `12 x 7`, `circle 3`, `triangle 3 4 5`, `oval 6 x 4`, `edge every 2: 0 3 4 0`. */
import { type AreaDefaults, parseArea } from '../base/quantity/area.js';
import { parseLength } from '../base/quantity/length.js';
import { LENGTH_IN_M } from '../base/units.js';
import type { Units } from '../base/us-units.js';
import type { LawnPart } from './answers.js';

/** What bare numbers are meant in. */
export const AREA_DEFAULTS: Readonly<Record<Units, AreaDefaults>> = {
  metric: { areaUnit: 'm2', sideUnit: 'm' },
  us: { areaUnit: 'ft2', sideUnit: 'ft' },
};

/** A shape with its lengths, a bare area, or what is wrong. */
export type PartReading =
  | { readonly kind: 'shape'; readonly part: LawnPart; readonly approximate: boolean }
  | {
      readonly kind: 'area';
      readonly areaM2: number;
      readonly approximate: boolean;
      /** As it was typed, in standard words: `8000 ft2`. */
      readonly echo: string;
    }
  | { readonly kind: 'wrong'; readonly says: string };

type Lengths =
  | { readonly ok: true; readonly lengthsM: readonly number[]; readonly approximate: boolean }
  | { readonly ok: false; readonly says: string };

const SHAPES =
  'circle|circular|round|disc|triangle|triangular|ellipse|elliptical|oval|square|rectangle|rectangular|edge|curve|offsets|outline|corners';
const SHAPE_FIRST = new RegExp(
  `^(?:an? )?(${SHAPES})\\b(?: (?:bed|pond|lawn|part|of|with|sides?))*[ :]*(.*)$`,
);
const SHAPE_LAST = new RegExp(`^(.+?) (${SHAPES})(?: (?:bed|pond|lawn|part))?$`);
const UNREAD_SHAPE =
  /\b(half|quarter|semi|hexagon|pentagon|octagon|diamond|trapez\w+|l[ -]shaped?|kidney)\b.*(?:circle|oval|shape|$)/;
const HAS_UNIT = /[a-z'"]/;
const LAST_UNIT = /[a-z'"]+\s*$/;

/** The part that a text without plus and minus describes. */
export function readPart(text: string, units: Units): PartReading {
  const [, first, rest] = SHAPE_FIRST.exec(text) ?? [];
  if (first !== undefined && rest !== undefined) return shapeOf(first, rest, units);
  const [, lengths, last] = SHAPE_LAST.exec(text) ?? [];
  if (lengths !== undefined && last !== undefined && !UNREAD_SHAPE.test(text))
    return shapeOf(last, lengths, units);
  if (UNREAD_SHAPE.test(text) && !/\d\s*(?:an? )?acre/.test(text)) {
    return wrong(
      'I read rectangles, triangles, circles and ovals. Cut other shapes into those, joined with +.',
    );
  }
  const sides = text.split(/\s*(?:[x×*]|\bby\b)\s*/);
  if (sides.length === 1) return bareArea(text, units);
  if (sides.includes('')) return wrong('A side is missing. Type both, such as 12 x 7.');
  const read = lengthsOf(sides, units);
  if (!read.ok) return wrong(read.says);
  const [lengthM, widthM, ...more] = read.lengthsM;
  if (lengthM === undefined || widthM === undefined || more.length > 0)
    return wrong('A rectangle has two sides, such as 12 x 7. Put triangle before three.');
  return shape({ shape: 'rectangle', lengthM, widthM }, read.approximate);
}

function shapeOf(name: string, rest: string, units: Units): PartReading {
  if (name === 'outline' || name === 'corners') return outline(rest, units);
  if (name === 'edge' || name === 'curve' || name === 'offsets') return edge(rest, units);
  const isRadius = /\bradius\b/.test(rest);
  const text = rest.replace(/\b(?:radius|diameter|across|wide|sides?|of)\b/g, ' ').trim();
  const read = lengthsOf(splitLengths(text), units);
  if (!read.ok) return wrong(read.says);
  const { lengthsM, approximate } = read;
  if (/^(?:circ|round|disc)/.test(name)) {
    const [acrossM, ...more] = lengthsM;
    if (acrossM === undefined || more.length > 0)
      return wrong('A circle takes one length, straight across, such as circle 3.');
    return shape({ shape: 'circle', diameterM: isRadius ? 2 * acrossM : acrossM }, approximate);
  }
  if (name.startsWith('triang')) return triangle(lengthsM, approximate);
  const [lengthM, widthM = name === 'square' ? lengthM : undefined, ...more] = lengthsM;
  if (lengthM === undefined || widthM === undefined || more.length > 0) {
    return wrong(
      name === 'square'
        ? 'A square takes one side, such as square 5.'
        : `Give two lengths, such as ${name} 6 x 4.`,
    );
  }
  const isOval = /^(?:ellip|oval)/.test(name);
  return shape({ shape: isOval ? 'ellipse' : 'rectangle', lengthM, widthM }, approximate);
}

function triangle(lengthsM: readonly number[], approximate: boolean): PartReading {
  const [a, b, c, ...more] = lengthsM;
  if (a === undefined || b === undefined || c === undefined || more.length > 0)
    return wrong('A triangle takes its three sides, such as triangle 3 4 5.');
  const longest = Math.max(a, b, c);
  if (2 * longest >= a + b + c) {
    return wrong(
      'Those three sides cannot close: the longest must be shorter than the other two together. Measure them again.',
    );
  }
  return shape({ shape: 'triangle', sidesM: [a, b, c] }, approximate);
}

/** `every 2 m: 0 3 4 3.5 0` */
function edge(rest: string, units: Units): PartReading {
  const [, step, offsets] = /^(?:measured )?(?:every|each|at) ([^:]+):\s*(.+)$/.exec(rest) ?? [];
  if (step === undefined || offsets === undefined)
    return wrong('Type an edge as: edge every 2: 0 3 4 3.5 0, the widths from one end to the other.');
  const read = lengthsOf([step, ...splitLengths(offsets)], units);
  if (!read.ok) return wrong(read.says);
  const [spacingM, ...offsetsM] = read.lengthsM;
  if (
    spacingM === undefined ||
    spacingM === 0 ||
    offsetsM.length < 2 ||
    offsetsM.every((offsetM) => offsetM === 0)
  )
    return wrong('An edge needs a step above 0 and two or more widths, not all of them 0.');
  return shape({ shape: 'offsets', spacingM, offsetsM }, read.approximate);
}

/** `0,0 12,0 12,7 0,7`: so far along and so far out, a comma between the two. */
function outline(rest: string, units: Units): PartReading {
  const { sideUnit } = AREA_DEFAULTS[units];
  const inM = (typed: string): number => Number(typed) * LENGTH_IN_M[sideUnit];
  const pairs = rest.split(/\s+/).map((pair) => pair.split(',').map(inM));
  const pointsM = pairs.filter(
    (pair): pair is [number, number] => pair.length === 2 && pair.every(Number.isFinite),
  );
  if (pointsM.length < 3 || pointsM.length !== pairs.length)
    return wrong('Type an outline as three or more corners in order: outline 0,0 12,0 12,7 0,7.');
  return shape({ shape: 'outline', pointsM }, false);
}

function bareArea(text: string, units: Units): PartReading {
  const parsed = parseArea(text, AREA_DEFAULTS[units]);
  if (!parsed.ok) return wrong(withChoices(parsed));
  const [echo = ''] = parsed.understood.split(' = ');
  return { kind: 'area', areaM2: parsed.value, approximate: parsed.approximate, echo };
}

/** Lengths in metres; a unit on the last one serves for those that have none, as in `40 x 25 ft`. */
function lengthsOf(texts: readonly string[], units: Units): Lengths {
  const shared = texts
    .map((text) => LAST_UNIT.exec(text)?.[0])
    .filter((unit) => unit !== undefined)
    .at(-1);
  const lengthsM: number[] = [];
  let approximate = false;
  for (const text of texts) {
    const needsUnit = shared !== undefined && !HAS_UNIT.test(text.replace(/^(?:about|around|roughly)\s/, ''));
    const parsed = parseLength(needsUnit ? `${text} ${shared}` : text, AREA_DEFAULTS[units].sideUnit);
    if (!parsed.ok) return { ok: false, says: withChoices(parsed) };
    lengthsM.push(parsed.value);
    approximate ||= parsed.approximate;
  }
  return { ok: true, lengthsM, approximate };
}

/** Several lengths apart by x, by, a comma and a space, or a space between two plain figures. */
function splitLengths(text: string): string[] {
  return text
    .split(/\s*(?:[x×*]|\bby\b|,\s|\band\b)\s*/)
    .flatMap((part) => (/^[\d.,\s]+$/.test(part) ? part.trim().split(/\s+/) : [part]))
    .filter((part) => part !== '');
}

function withChoices({
  reason,
  choices,
}: {
  readonly reason: string;
  readonly choices?: readonly { readonly typed: string }[];
}): string {
  return choices === undefined ? reason : `${reason} Type ${choices.map(({ typed }) => typed).join(' or ')}.`;
}

function shape(part: LawnPart, approximate: boolean): PartReading {
  return { kind: 'shape', part, approximate };
}

function wrong(says: string): PartReading {
  return { kind: 'wrong', says };
}
