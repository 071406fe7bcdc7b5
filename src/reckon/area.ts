/** Areas from tape measurements. */
import { triangleM2 } from '../agronomy/area.js';
import {
  equalOffsetsArea,
  type OffsetRule,
  type OffsetsArea,
  unequalOffsetsArea,
} from '../agronomy/area-offsets.js';
import { outlineM2, type PointM } from '../agronomy/outline.js';
import { out, put, sum } from './figure-text.js';
import {
  ABOVE_0,
  type Given,
  key,
  LENGTH,
  list,
  number,
  optional,
  type Reckoner,
  several,
  WORD,
} from './reckoner.js';

const areaOffsets: Reckoner = {
  name: 'area-offsets',
  says: 'area between a straight line and a curved edge, measured across at intervals',
  keys: [
    key('spacingM', LENGTH, 'distance between the offsets, all alike', ABOVE_0, {
      ...optional,
    }),
    key('distancesM', LENGTH, 'where each offset stands, when they are not alike', 'rising, one an offset', {
      ...optional,
      ...several,
    }),
    key('offsetsM', LENGTH, 'the offsets, in order', 'two or more, each 0 or more, not all 0', several),
    key('rule', WORD, 'how the edge between is taken', 'simpson or trapezoid', {
      words: ['simpson', 'trapezoid'],
    }),
  ],
  exactlyOneOf: ['spacingM', 'distancesM'],
  equation:
    'trapezoid, each strip: h × (y0 + y1) ÷ 2; Simpson, each two strips of equal width: h ÷ 3 × (y0 + 4 × y1 + y2), and of unequal width the parabola through the three offsets; a strip left over is a trapezium',
  sources: [
    { id: 'fao-manual-1-areas', at: 'chapter 1: areas by parts; the two rules by their definitions' },
  ],
  compute: (given) => {
    const area = offsetsArea(given);
    const { areaM2, trapeziumStrips: strips } = area;
    const answer = { value: areaM2, unit: 'm2', working: offsetsWorking(given, area) };
    if (area.rule === 'trapezoid' || strips.length === 0) return answer;
    const which = `strip${strips.length === 1 ? '' : 's'} ${strips.join(', ')}`;
    return {
      ...answer,
      notes: [
        `Simpson's rule takes strips two by two. Taken as a trapezium: ${which}, counted from the first offset.`,
      ],
    };
  },
};

function offsetsArea(given: Given): OffsetsArea {
  const rule = given.rule as OffsetRule;
  const offsetsM = list(given, 'offsetsM');
  return given.distancesM === undefined
    ? equalOffsetsArea({ spacingM: number(given, 'spacingM'), offsetsM, rule })
    : unequalOffsetsArea({ distancesM: list(given, 'distancesM'), offsetsM, rule });
}

/** Strip by strip, because Simpson's rule may leave some of them to the trapezoid rule. */
function offsetsWorking(given: Given, { areaM2, trapeziumStrips }: OffsetsArea): string {
  const offsetsM = list(given, 'offsetsM').map(put);
  const distancesM = list(given, 'distancesM');
  const terms: string[] = [];
  for (let strip = 0; strip < offsetsM.length - 1; strip += 1) {
    const width = (at: number): number =>
      distancesM.length === 0
        ? number(given, 'spacingM')
        : (distancesM[at + 1] as number) - (distancesM[at] as number);
    const [y0, y1, y2] = offsetsM.slice(strip, strip + 3) as [string, string, string];
    if (trapeziumStrips.includes(strip + 1)) {
      terms.push(`${put(width(strip))} × (${y0} + ${y1}) ÷ 2`);
      continue;
    }
    const [h0, h1] = [put(width(strip)), put(width(strip + 1))];
    terms.push(
      h0 === h1
        ? `${h0} ÷ 3 × (${y0} + 4 × ${y1} + ${y2})`
        : `parabola over ${h0} and ${h1} m through ${y0}, ${y1}, ${y2}`,
    );
    strip += 1;
  }
  return `${sum(terms)} = ${out(areaM2, 'm2')}`;
}

const areaOutline: Reckoner = {
  name: 'area-outline',
  says: 'area inside an outline of corner points',
  keys: [
    key(
      'pointsM',
      ['points', 'm'],
      'corners in order round the outline, as "x,y x,y x,y"',
      'three or more, none twice, no side crossing another',
    ),
  ],
  equation: '| sum of (x[i] × y[i+1] − x[i+1] × y[i]) | ÷ 2',
  sources: [{ id: 'rosetta-shoelace', at: 'task text and numerical note' }],
  compute: (given) => {
    const pointsM = given.pointsM as readonly PointM[];
    const value = outlineM2({ pointsM });
    const terms = pointsM.map(([x, y], at) => {
      const [nextX, nextY] = pointsM[(at + 1) % pointsM.length] as PointM;
      return `(${put(x)} × ${put(nextY)} − ${put(nextX)} × ${put(y)})`;
    });
    return { value, unit: 'm2', working: `| ${sum(terms)} | ÷ 2 = ${out(value, 'm2')}` };
  },
};

const areaTriangle: Reckoner = {
  name: 'area-triangle',
  says: 'area of a triangle from its three sides',
  keys: [
    key(
      'sidesM',
      LENGTH,
      'the three sides',
      'three, each above 0, the longest under the other two together',
      several,
    ),
  ],
  equation: 'Heron: s = (a + b + c) ÷ 2; area = √(s × (s − a) × (s − b) × (s − c))',
  sources: [{ id: 'fao-manual-1-areas', at: 'chapter 1, area of triangles; Heron by definition' }],
  compute: (given) => {
    const sides = list(given, 'sidesM');
    if (sides.length !== 3) throw new RangeError(`sidesM must be three lengths, got ${sides.length}.`);
    const value = triangleM2({ sidesM: sides as unknown as readonly [number, number, number] });
    const s = put(sides.reduce((total, side) => total + side, 0) / 2);
    const factors = sides.map((side) => `(${s} − ${put(side)})`).join(' × ');
    return { value, unit: 'm2', working: `s = ${s}; √(${s} × ${factors}) = ${out(value, 'm2')}` };
  },
};

export const AREA_RECKONERS: readonly Reckoner[] = [areaOffsets, areaOutline, areaTriangle];
