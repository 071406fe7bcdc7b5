import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circleM2, ellipseM2, rectangleM2, triangleM2 } from '../../src/agronomy/area.js';
import { amount, expectReal, expectRefusals } from './refusals.js';

describe('triangleM2', () => {
  // Heron's own kind of examples: whole sides with a whole area, known since antiquity.
  it.each([
    [[3, 4, 5], 6],
    [[13, 14, 15], 84],
    [[5, 5, 6], 12],
    [[9, 10, 17], 36],
  ] as const)('sides of %j enclose %d', (sidesM, areaM2) => {
    expect(triangleM2({ sidesM })).toBeCloseTo(areaM2, 12);
  });

  it('does not mind the order of the sides', () => {
    for (const sidesM of [
      [3, 4, 5],
      [4, 5, 3],
      [5, 4, 3],
    ] as const)
      expect(triangleM2({ sidesM })).toBe(6);
  });

  it('stays right for a needle, where the textbook formula loses its digits', () => {
    // Base 1 µm between two sides of 1 km: half base × height, the height being the side to 1e-19.
    expect(triangleM2({ sidesM: [1000, 1000, 1e-6] })).toBeCloseTo(0.0005, 12);
  });

  it.each([[[1, 2, 3]], [[1, 2, 4]], [[10, 1, 1]]] as const)(
    'refuses sides of %j, which cannot close',
    (sidesM) => {
      expect(() => triangleM2({ sidesM })).toThrow(
        /sidesM must close to a triangle, got .*Measure them again/,
      );
    },
  );

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a side of %d', (side) => {
    expect(() => triangleM2({ sidesM: [3, side, 5] })).toThrow('sidesM must be above 0');
  });

  it('grows with the square of its size', () => {
    fc.assert(
      fc.property(amount, (scale) => {
        const grown = triangleM2({ sidesM: [13 * scale, 14 * scale, 15 * scale] });
        expect(grown / (84 * scale ** 2)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('gives a real area for sides that close and refuses those that do not', () => {
    fc.assert(
      fc.property(amount, amount, amount, (a, b, c) => {
        const [short, middle, long] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        const spare = (short + middle - long) / long;
        // On the very edge the sums round either way.
        fc.pre(Math.abs(spare) > 1e-9);
        const area = () => triangleM2({ sidesM: [a, b, c] });
        if (spare > 0) expectReal(area());
        else expect(area).toThrow(RangeError);
      }),
    );
  });
});

describe('rounded shapes', () => {
  it('a circle of 2 m is π m²', () => expect(circleM2({ diameterM: 2 })).toBeCloseTo(Math.PI, 12));
  it('an ellipse of 10 by 6 m is 47.124 m²', () => {
    expect(ellipseM2({ lengthM: 10, widthM: 6 })).toBeCloseTo(47.124, 3);
  });
  it('an ellipse as wide as it is long is a circle', () => {
    fc.assert(
      fc.property(amount, (size) => {
        expect(ellipseM2({ lengthM: size, widthM: size }) / circleM2({ diameterM: size })).toBeCloseTo(1, 12);
      }),
    );
  });
  it('both fit inside the rectangle round them', () => {
    fc.assert(
      fc.property(amount, amount, (lengthM, widthM) => {
        const box = rectangleM2({ lengthM, widthM });
        expect(ellipseM2({ lengthM, widthM })).toBeLessThan(box);
      }),
    );
  });
});

describe('refusals', () => {
  it('come for a side that is no length', () => {
    expectRefusals(rectangleM2, { lengthM: 3, widthM: 2 }, { lengthM: [0], widthM: [0] });
    expectRefusals(ellipseM2, { lengthM: 3, widthM: 2 }, { lengthM: [0], widthM: [0] });
    expectRefusals(circleM2, { diameterM: 3 }, { diameterM: [0] });
  });
  it('come for sides so large that the area is not a number any more', () => {
    expect(() => rectangleM2({ lengthM: 1e200, widthM: 1e200 })).toThrow('areaM2 came out too large');
  });
});
