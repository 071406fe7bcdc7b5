/** Area inside an outline of corner points, by the shoelace rule. */
import { finiteResult, refuse, requireCount, requireFinite } from '../base/refuse.js';

/** Metres east (x) and north (y) of any fixed point, or along any two lines at right angles. */
export type PointM = readonly [x: number, y: number];

/**
 * Area inside an outline.
 *
 *   areaM2 = | Σ (x[i] y[i+1] − x[i+1] y[i]) | ÷ 2
 *
 * The first point is taken off all points before multiplying, so that map coordinates in the hundred
 * thousands do not eat the digits. Direction round the outline does not matter, and it closes itself.
 *
 * @param pointsM three or more corners in order round the outline, m, no corner twice
 * @returns m²
 * @throws {RangeError} when a point repeats, or a side crosses, touches or runs back along another
 */
export function outlineM2({ pointsM }: { readonly pointsM: readonly PointM[] }): number {
  requireCount('pointsM', pointsM, 3);
  const corners = shiftedToFirst(pointsM);
  requireNoRepeats(pointsM);
  requireSimple(corners, pointsM);
  let twiceM2 = 0;
  corners.forEach((here, index) => {
    const next = corners[(index + 1) % corners.length] as PointM;
    twiceM2 += here[0] * next[1] - next[0] * here[1];
  });
  const areaM2 = finiteResult('areaM2', Math.abs(twiceM2) / 2);
  if (areaM2 === 0) refuse('pointsM', 'must enclose an area', areaM2);
  return areaM2;
}

function shiftedToFirst(pointsM: readonly PointM[]): PointM[] {
  const [originX, originY] = pointsM[0] as PointM;
  return pointsM.map(([x, y]) => {
    requireFinite('pointsM', x);
    requireFinite('pointsM', y);
    return [x - originX, y - originY];
  });
}

function requireNoRepeats(pointsM: readonly PointM[]): void {
  const seen = new Map<string, number>();
  pointsM.forEach(([x, y], index) => {
    const place = `${x},${y}`;
    const earlier = seen.get(place);
    if (earlier !== undefined) {
      const found = `(${place}) as points ${earlier + 1} and ${index + 1}`;
      refuse('pointsM', 'must not have a point twice', found, 'The outline closes itself.');
    }
    seen.set(place, index);
  });
}

/**
 * Looks at every two sides that share no corner. Two that share one need no look: where one runs back along the
 * other, the side after it starts on that other side, and three points on one line enclose no area.
 */
function requireSimple(corners: readonly PointM[], pointsM: readonly PointM[]): void {
  const count = corners.length;
  for (let first = 0; first < count; first += 1) {
    const lastApart = first === 0 ? count - 2 : count - 1;
    for (let second = first + 2; second <= lastApart; second += 1) {
      if (!sidesMeet(corners, first, second)) continue;
      const found = `sides ${sideName(pointsM, first)} and ${sideName(pointsM, second)}`;
      const hint = 'Check the order of the points.';
      refuse('pointsM', 'must go round without crossing or touching itself', found, hint);
    }
  }
}

function sideName(pointsM: readonly PointM[], side: number): string {
  const from = pointsM[side] as PointM;
  const to = pointsM[(side + 1) % pointsM.length] as PointM;
  return `(${from.join(',')})-(${to.join(',')})`;
}

function ends(corners: readonly PointM[], side: number): readonly [PointM, PointM] {
  return [corners[side] as PointM, corners[(side + 1) % corners.length] as PointM];
}

/** Whether two sides that share no corner have a point in common. */
function sidesMeet(corners: readonly PointM[], first: number, second: number): boolean {
  const [a, b] = ends(corners, first);
  const [c, d] = ends(corners, second);
  if (!boxesMeet(a, b, c, d)) return false;
  const acrossFirst = turn(a, b, c) * turn(a, b, d);
  const acrossSecond = turn(c, d, a) * turn(c, d, b);
  return acrossFirst <= 0 && acrossSecond <= 0;
}

function boxesMeet(a: PointM, b: PointM, c: PointM, d: PointM): boolean {
  return ([0, 1] as const).every(
    (axis) =>
      Math.max(a[axis], b[axis]) >= Math.min(c[axis], d[axis]) &&
      Math.max(c[axis], d[axis]) >= Math.min(a[axis], b[axis]),
  );
}

/** Above 0 when the way from a by b to c turns left, below 0 when right, 0 when straight; −1, 0 or 1. */
function turn(a: PointM, b: PointM, c: PointM): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}
