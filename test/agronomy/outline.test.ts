import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineM2, type PointM } from '../../src/agronomy/outline.js';

const area = (...pointsM: PointM[]) => outlineM2({ pointsM });

describe('outlineM2', () => {
  it('is length times width for a rectangle', () => expect(area([0, 0], [4, 0], [4, 3], [0, 3])).toBe(12));
  it('leaves a bay in the outline out', () => {
    expect(area([0, 0], [4, 0], [4, 4], [2, 1], [0, 4])).toBe(16 - 6);
  });
  it('does not mind a point on a straight side', () => {
    expect(area([0, 0], [2, 0], [4, 0], [4, 3], [0, 3])).toBe(12);
  });
  it('keeps its centimetres at map coordinates', () => {
    expect(area([530_000, 180_000], [530_004, 180_000], [530_004, 180_003], [530_000, 180_003])).toBe(12);
  });

  // A ring of points at rising angles never crosses itself, whatever the radii.
  const ring = fc.array(fc.double({ min: 1, max: 50, noNaN: true }), { minLength: 3, maxLength: 20 });
  const corners = (radii: readonly number[]): PointM[] =>
    radii.map((radius, at) => {
      const angle = (2 * Math.PI * at) / radii.length;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });

  it('is the sum of the triangles round the middle', () => {
    fc.assert(
      fc.property(ring, (radii) => {
        const slice = Math.sin((2 * Math.PI) / radii.length) / 2;
        const sum = radii.reduce(
          (total, r, at) => total + slice * r * (radii[(at + 1) % radii.length] ?? 0),
          0,
        );
        expect(outlineM2({ pointsM: corners(radii) }) / sum).toBeCloseTo(1, 9);
      }),
    );
  });

  it('does not mind where the outline starts, which way it goes round, or where it lies', () => {
    const shift = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(ring, fc.nat(), shift, shift, (radii, start, dx, dy) => {
        const points = corners(radii);
        const at = start % points.length;
        const moved = [...points.slice(at), ...points.slice(0, at)].map(([x, y]): PointM => [x + dx, y + dy]);
        const same = outlineM2({ pointsM: points });
        expect(outlineM2({ pointsM: moved }) / same).toBeCloseTo(1, 9);
        expect(outlineM2({ pointsM: moved.reverse() }) / same).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('refusals', () => {
  it('come for fewer than three points', () =>
    expect(() => area([0, 0], [1, 0])).toThrow('3 or more entries'));
  it('come for a bow tie, and name the two sides', () => {
    expect(() => area([0, 0], [4, 4], [4, 0], [0, 4])).toThrow(
      'got sides (0,0)-(4,4) and (4,0)-(0,4). Check the order of the points.',
    );
  });
  it('come for a corner that touches another side', () => {
    expect(() => area([0, 0], [4, 0], [4, 4], [2, 0], [0, 4])).toThrow('without crossing or touching');
  });
  it('come for a side that runs back along the one before', () => {
    expect(() => area([0, 0], [4, 0], [2, 0], [2, 3])).toThrow('without crossing or touching');
  });
  it('come for points all on one line', () => {
    expect(() => area([0, 0], [1, 1], [2, 2])).toThrow(RangeError);
    expect(() => area([0, 0], [2, 2], [1, 1])).toThrow(RangeError);
  });
  it('come for a point given twice, the first at the end included', () => {
    expect(() => area([0, 0], [4, 0], [4, 3], [0, 0])).toThrow(
      'must not have a point twice, got (0,0) as points 1 and 4. The outline closes itself.',
    );
    expect(() => area([0, 0], [4, 0], [4, 0], [0, 3])).toThrow('as points 2 and 3');
  });
  it('come for a coordinate that is no number', () => {
    expect(() => area([0, 0], [Number.NaN, 0], [0, 3])).toThrow('pointsM must be a finite number');
  });
});

/** The outline turned, mirrored, walked backwards and begun at each of its corners: the same ground each time. */
function everyWay(pointsM: readonly PointM[]): PointM[][] {
  const turns: ((point: PointM) => PointM)[] = [
    ([x, y]) => [x, y],
    ([x, y]) => [-y, x],
    ([x, y]) => [-x, -y],
    ([x, y]) => [y, -x],
    ([x, y]) => [y, x],
    ([x, y]) => [-x, y],
    ([x, y]) => [x + 7, y - 3],
  ];
  return turns.flatMap((turn) => {
    const turned = pointsM.map(turn);
    return [turned, [...turned].reverse()].flatMap((walk) =>
      walk.map((_, start) => [...walk.slice(start), ...walk.slice(0, start)]),
    );
  });
}

describe('whichever way an outline is turned, mirrored and walked', () => {
  it.each<[string, number, PointM[]]>([
    [
      'an L',
      12,
      [
        [0, 0],
        [4, 0],
        [4, 2],
        [2, 2],
        [2, 4],
        [0, 4],
      ],
    ],
    [
      'a leaning kite with points on straight sides',
      8,
      [
        [0, 0],
        [1, 1],
        [2, 2],
        [4, 0],
        [3, -1],
        [2, -2],
        [1, -1],
      ],
    ],
    [
      'a comb whose teeth come close',
      11,
      [
        [0, 0],
        [5, 0],
        [5, 3],
        [4, 3],
        [4, 1],
        [3, 1],
        [3, 3],
        [2, 3],
        [2, 1],
        [1, 1],
        [1, 3],
        [0, 3],
      ],
    ],
    [
      'an arrow head',
      4,
      [
        [0, 0],
        [4, 2],
        [0, 4],
        [2, 2],
      ],
    ],
  ])('%s keeps its area', (_, areaM2, pointsM) => {
    for (const walk of everyWay(pointsM)) expect(outlineM2({ pointsM: walk })).toBeCloseTo(areaM2, 9);
  });

  it.each<[string, PointM[]]>([
    [
      'a bow tie',
      [
        [0, 0],
        [4, 4],
        [4, 0],
        [0, 4],
      ],
    ],
    [
      'a lopsided bow tie',
      [
        [0, 0],
        [6, 4],
        [5, 0],
        [0, 3],
      ],
    ],
    [
      'a star of five points',
      [
        [0, 3],
        [2, -3],
        [-3, 1],
        [3, 1],
        [-2, -3],
      ],
    ],
    [
      'a corner on another side',
      [
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ],
    ],
    [
      'a corner on another slanting side',
      [
        [0, 0],
        [4, 4],
        [0, 6],
        [2, 2],
        [-2, 3],
      ],
    ],
    [
      'a spike along a level side',
      [
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 3],
      ],
    ],
    [
      'a spike along a slanting side',
      [
        [0, 0],
        [4, 4],
        [1, 1],
        [0, 5],
      ],
    ],
    [
      'a spike that sticks out',
      [
        [0, 0],
        [4, 0],
        [4, 3],
        [6, 5],
        [5, 4],
        [0, 3],
      ],
    ],
    [
      'two sides on one line',
      [
        [0, 0],
        [4, 0],
        [5, 1],
        [5, 0],
        [2, 0],
        [2, -1],
        [0, -1],
      ],
    ],
  ])('%s is refused', (_, pointsM) => {
    for (const walk of everyWay(pointsM)) {
      expect(() => outlineM2({ pointsM: walk }), JSON.stringify(walk)).toThrow(
        'without crossing or touching',
      );
    }
  });
});
