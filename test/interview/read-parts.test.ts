import { describe, expect, it } from 'vitest';
import { readingOf, valueRead } from './read-samples.js';

const rectangle = (lengthM: number, widthM: number) => ({ shape: 'rectangle', lengthM, widthM });
const circle = (diameterM: number) => ({ shape: 'circle', diameterM });
// Exact by definition: 1 ft = 0.3048 m, 1 acre = 4046.8564224 m2 (NIST Handbook 44, appendix C).
const FT_M = 0.3048;

describe('an area', () => {
  it.each([
    ['84', 84],
    ['84 m2', 84],
    ['84 m²', 84],
    ['84 square metres', 84],
    ['about 100', 100],
    ['12 x 7', 84],
    ['12x7', 84],
    ['12 × 7', 84],
    ['12 by 7', 84],
    ['12 m by 7 m', 84],
    ['12,5 x 7', 87.5],
    ['square 5', 25],
    ['three metres by four metres', 12],
    ['84 - 2 x 1', 82],
    ['10 + 20 m2', 30],
  ])('reads %j as %f m2', (typed, areaM2) => {
    expect(valueRead('area', typed)).toBe(areaM2);
  });

  it.each([
    ['40x25 ft', 1000 * FT_M ** 2],
    ['12 ft 6 in x 25 ft', 12.5 * 25 * FT_M ** 2],
    ['8000 sq ft', 8000 * FT_M ** 2],
    ['1/4 acre', 4046.8564224 / 4],
  ])('reads %j in square metres', (typed, areaM2) => {
    expect(valueRead('area', typed)).toBeCloseTo(areaM2, 6);
  });

  it('repeats sides and area', () => {
    expect(readingOf('area', '12 x 7')).toMatchObject({ understood: '12 m by 7 m: 84 m2' });
    expect(readingOf('area', '8000 sq ft')).toMatchObject({ understood: '743 m2 (8000 ft2)' });
  });

  it('gives a list of parts when there is more than one', () => {
    expect(readingOf('area', '12 x 7 + circle 3 - 2 x 1')).toEqual({
      kind: 'value',
      value: [rectangle(12, 7), circle(3), { ...rectangle(2, 1), minus: true }],
      // 84 + 9 pi / 4 - 2 = 89.07
      understood: '12 m by 7 m and a circle 3 m across minus 2 m by 1 m: 89.1 m2',
    });
  });

  it.each([
    ['12 x 7 and 3 x 2', [rectangle(12, 7), rectangle(3, 2)]],
    ['12 x 7 minus circle 3', [rectangle(12, 7), { ...circle(3), minus: true }]],
    ['12 x 7 – 2 x 1', [rectangle(12, 7), { ...rectangle(2, 1), minus: true }]],
    ['12x7 less a round bed 3', [rectangle(12, 7), { ...circle(3), minus: true }]],
    ['circle 3', [circle(3)]],
    ['circle radius 1.5 m', [circle(3)]],
    ['a circle of 3 m', [circle(3)]],
    ['triangle 3 4 5', [{ shape: 'triangle', sidesM: [3, 4, 5] }]],
    ['triangle 3, 4, 5', [{ shape: 'triangle', sidesM: [3, 4, 5] }]],
    ['triangle 3 m x 4 m x 5 m', [{ shape: 'triangle', sidesM: [3, 4, 5] }]],
    ['oval 6 x 4', [{ shape: 'ellipse', lengthM: 6, widthM: 4 }]],
    ['6 x 4 oval', [{ shape: 'ellipse', lengthM: 6, widthM: 4 }]],
    ['edge every 2: 0 3 4 3.5 0', [{ shape: 'offsets', spacingM: 2, offsetsM: [0, 3, 4, 3.5, 0] }]],
    [
      'outline 0,0 12,0 12,7 0,7',
      [
        {
          shape: 'outline',
          pointsM: [
            [0, 0],
            [12, 0],
            [12, 7],
            [0, 7],
          ],
        },
      ],
    ],
  ])('reads %j as parts', (typed, parts) => {
    expect(valueRead('area', typed)).toEqual(parts);
    expect(valueRead('parts', typed)).toEqual(parts);
  });

  it('gives the shapes themselves where the question is for shapes, even for one rectangle', () => {
    expect(valueRead('parts', '12 x 7')).toEqual([rectangle(12, 7)]);
    expect(readingOf('parts', '84').kind).toBe('refused');
  });

  it('asks whether a comma parts thousands', () => {
    expect(readingOf('area', '1,234')).toMatchObject({
      kind: 'which',
      choices: [{ value: 1.234 }, { value: 1234 }],
    });
    // 1.2 ft2 is under the least area, so only one reading is left.
    expect(valueRead('area', '1,200 sq ft')).toBeCloseTo(1200 * FT_M ** 2, 6);
  });

  it('asks again about a very large lawn and refuses an impossible one', () => {
    expect(readingOf('area', '50 x 60')).toMatchObject({ kind: 'odd', value: 3000 });
    expect(readingOf('area', '30000')).toMatchObject({
      kind: 'refused',
      says: "30000 m2 cannot be. Give a number from 1 to 20000 m2, or don't know. (A car takes up 8 m2.)",
    });
  });

  it.each([
    ['12-14 x 7', /minus/],
    ['12x7-2x1', /minus/],
    ['12 x', /side is missing/],
    ['12 x 7 +', /missing/],
    ['12 x 7 x 3', /two sides/],
    ['12 m', /two sides/],
    ['0 x 7', /above 0/],
    ['0', /above 0/],
    ['-5', /below 0/],
    ['2 x 1 - 12 x 7', /as large as the lawn/],
    ['10 - 84', /Nothing is left/],
    ['triangle 1 2 9', /cannot close/],
    ['triangle 3 4', /three sides/],
    ['circle 3 x 4', /one length/],
    ['half circle 3', /Cut other shapes/],
    ['kidney shape', /Cut other shapes/],
    ['outline 0,0 12,7 12,0 0,7', /crosses itself/],
    ['edge every 0: 1 2', /above 0/],
    ['10 paces by 7', /paces/],
    ['big', /not an area/],
    ['', /Nothing was typed/],
    [Array(50).fill('1 x 1').join(' + '), /more than 40/],
  ])('refuses %j', (typed, says) => {
    expect(readingOf('area', typed)).toMatchObject({ kind: 'refused', says: expect.stringMatching(says) });
  });
});
