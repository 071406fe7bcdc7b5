import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LawnPart, lawnPartsArea } from '../../src/agronomy/area-parts.js';

const area = (...lawnParts: LawnPart[]) => lawnPartsArea({ lawnParts });
const LAWN: LawnPart = { shape: 'rectangle', lengthM: 12, widthM: 8 };

describe('lawnPartsArea', () => {
  it('adds every shape', () => {
    const { partsM2 } = area(
      LAWN,
      { shape: 'triangle', sidesM: [3, 4, 5] },
      { shape: 'circle', diameterM: 2 },
      { shape: 'ellipse', lengthM: 4, widthM: 2 },
      { shape: 'offsets', spacingM: 1, offsetsM: [0, 1, 4] },
      {
        shape: 'outline',
        pointsM: [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
        ],
      },
    );
    // By hand; the offsets are under x², whose integral from 0 to 2 is 8 ÷ 3.
    const byHand = [96, 6, Math.PI, 2 * Math.PI, 8 / 3, 4];
    for (const [at, partM2] of partsM2.entries()) expect(partM2).toBeCloseTo(byHand[at] as number, 12);
    expect(partsM2).toHaveLength(byHand.length);
  });

  it('takes a bed away', () => {
    const { areaM2, partsM2 } = area(LAWN, { shape: 'rectangle', lengthM: 3, widthM: 2, minus: true });
    expect(areaM2).toBe(90);
    expect(partsM2).toEqual([96, -6]);
  });

  it('counts a part with minus false as lawn', () => {
    expect(area({ ...LAWN, minus: false }).areaM2).toBe(96);
  });

  it('does not mind the order of the parts', () => {
    const bed = { shape: 'circle', diameterM: 3, minus: true } as const;
    expect(area(bed, LAWN).areaM2).toBeCloseTo(area(LAWN, bed).areaM2, 12);
  });

  it('refuses beds as large as the lawn', () => {
    expect(() => area(LAWN, { ...LAWN, minus: true })).toThrow('must leave an area above 0 m2, got 0');
    expect(() => area({ shape: 'circle', diameterM: 1, minus: true })).toThrow(
      'must leave an area above 0 m2',
    );
  });

  it('refuses an empty list', () => expect(() => area()).toThrow('lawnParts must have 1 or more'));

  it('says which part cannot exist', () => {
    expect(() => area(LAWN, { shape: 'triangle', sidesM: [1, 1, 5] })).toThrow(
      'Part 2 (triangle): sidesM must close to a triangle',
    );
  });

  it('is the sum of its parts', () => {
    const side = fc.double({ min: 0.1, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 8 }), (sizes) => {
        const parts = sizes.map(([lengthM, widthM]): LawnPart => ({ shape: 'rectangle', lengthM, widthM }));
        const { areaM2, partsM2 } = lawnPartsArea({ lawnParts: parts });
        expect(areaM2).toBeCloseTo(
          partsM2.reduce((sum, part) => sum + part, 0),
          6,
        );
      }),
    );
  });
});
