import { describe, expect, it } from 'vitest';
import { outlineM2, type PointM } from '../../src/agronomy/outline.js';

// Source: Rosetta Code, task "Shoelace formula for polygonal area": five corners, area 30.
const CORNERS: readonly PointM[] = [
  [3, 4],
  [5, 11],
  [12, 8],
  [9, 5],
  [5, 6],
];

describe('the outline of the task', () => {
  it('encloses 30', () => expect(outlineM2({ pointsM: CORNERS })).toBe(30));
  it('encloses 30 the other way round', () =>
    expect(outlineM2({ pointsM: [...CORNERS].reverse() })).toBe(30));
});

// The task's numerical note: a triangle of 2 by π moved by 10^6 loses five digits when it is multiplied out as it
// stands (3.1415966). Only what the coordinates lose, about 1e-10, may be lost here.
it.each([0, 3, 6])('a triangle of 2 by π keeps its area when it is moved by 10^%d', (power) => {
  const away = 10 ** power;
  const pointsM = [
    [away, away],
    [away + 2, away],
    [away, away + Math.PI],
  ] as const;
  expect(Math.abs(outlineM2({ pointsM }) - Math.PI)).toBeLessThan(3e-10);
});
