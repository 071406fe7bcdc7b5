import { triangleM2 } from '../agronomy/area.js';
import { equalOffsetsArea, type OffsetRule, unequalOffsetsArea } from '../agronomy/area-offsets.js';
import { pointCover } from '../agronomy/cover.js';
import { outlineM2, type PointM } from '../agronomy/outline.js';
import { plainNumber } from '../base/quantity-words.js';
import { key, list, number, optional, type Reckoner } from './reckoner.js';

export const AREA_RECKONERS: readonly Reckoner[] = [
  {
    name: 'area-offsets',
    says: 'area of a strip measured across at intervals',
    keys: [
      key('spacingM', 'length', 'm', 'distance between the offsets, all alike', optional),
      key('distancesM', 'length', 'm', 'where each offset stands, when they are not alike', {
        isList: true,
        isOptional: true,
      }),
      key('offsetsM', 'length', 'm', 'the offsets, in order', { isList: true }),
      key('rule', 'word', '', 'how the curve between is taken', {
        isOptional: true,
        words: ['simpson', 'trapezoid'],
      }),
    ],
    equation: 'trapezoid: h × (half the ends + the rest); Simpson: h/3 × (ends + 4 × odd + 2 × even)',
    sources: [{ id: 'fao-manual-1-areas', at: 'chapter 1; the two rules by their definitions' }],
    compute: (given) => {
      const offsetsM = list(given, 'offsetsM');
      const rule = (given.rule ?? 'simpson') as OffsetRule;
      const distancesM = list(given, 'distancesM');
      if (distancesM.length > 0 === (given.spacingM !== undefined)) {
        throw new RangeError('give either spacingM or distancesM, and not both');
      }
      const { areaM2, trapeziumStrips } =
        distancesM.length > 0
          ? unequalOffsetsArea({ distancesM, offsetsM, rule })
          : equalOffsetsArea({ spacingM: number(given, 'spacingM'), offsetsM, rule });
      const notes =
        rule === 'simpson' && trapeziumStrips.length > 0
          ? [
              `Simpson's rule takes strips in pairs; taken as a trapezium: strip ${trapeziumStrips.map((index) => index + 1).join(', ')}.`,
            ]
          : [];
      return {
        value: areaM2,
        unit: 'm2',
        working: `${rule} over ${offsetsM.length} offsets = ${plainNumber(areaM2)} m2`,
        notes,
      };
    },
  },
  {
    name: 'area-outline',
    says: 'area inside an outline of corner points',
    keys: [key('pointsM', 'points', 'm', 'corners in order round the outline, as "x,y x,y x,y"')],
    equation: 'half of | sum of (x[i] × y[i+1] − x[i+1] × y[i]) |',
    sources: [{ id: 'rosetta-shoelace', at: 'task text and numerical note' }],
    compute: (given) => {
      const pointsM = (given.pointsM ?? []) as readonly PointM[];
      const value = outlineM2({ pointsM });
      return { value, unit: 'm2', working: `${pointsM.length} corners = ${plainNumber(value)} m2` };
    },
  },
  {
    name: 'area-triangle',
    says: 'area of a triangle from its three sides',
    keys: [key('sidesM', 'length', 'm', 'the three sides', { isList: true })],
    equation: 'Heron: s = half of a + b + c; area = √(s × (s − a) × (s − b) × (s − c))',
    sources: [{ id: 'fao-manual-1-areas', at: 'chapter 1, area of triangles' }],
    compute: (given) => {
      const sides = list(given, 'sidesM');
      if (sides.length !== 3) throw new RangeError(`sidesM must be three lengths, got ${sides.length}`);
      const value = triangleM2({ sidesM: sides as unknown as readonly [number, number, number] });
      return {
        value,
        unit: 'm2',
        working: `sides ${sides.map((side) => plainNumber(side)).join(', ')} m = ${plainNumber(value)} m2`,
      };
    },
  },
  {
    name: 'plug-cover',
    says: 'share of cover from a walk with a pin: hits out of points',
    keys: [
      key('hits', 'number', 'count', 'points at which the pin met it first'),
      key('points', 'number', 'count', 'points in all'),
    ],
    equation: 'cover = hits ÷ points; 95 % interval by Wilson',
    sources: [{ id: 'idaho-cover-points', at: 'cover from points' }],
    compute: (given) => {
      const [hits, points] = [number(given, 'hits'), number(given, 'points')];
      const { fraction, lowFraction, highFraction } = pointCover({ hits, points });
      return {
        value: fraction,
        unit: 'fraction',
        working: `${hits} ÷ ${points} = ${plainNumber(fraction)}`,
        more: {
          low: { value: lowFraction, unit: 'fraction' },
          high: { value: highFraction, unit: 'fraction' },
        },
        notes: ['In 95 of 100 such walks the true share lies between low and high.'],
      };
    },
  },
];
