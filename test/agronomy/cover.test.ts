import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointCover } from '../../src/agronomy/cover.js';

const counts = fc
  .integer({ min: 1, max: 100_000 })
  .chain((points) => fc.tuple(fc.integer({ min: 0, max: points }), fc.constant(points)));

describe('pointCover', () => {
  it('always has the fraction inside an interval from 0 to 1 that has some width', () => {
    fc.assert(
      fc.property(counts, ([hits, points]) => {
        const { fraction, lowFraction, highFraction } = pointCover({ hits, points });
        expect(lowFraction).toBeGreaterThanOrEqual(0);
        expect(lowFraction).toBeLessThanOrEqual(fraction);
        expect(highFraction).toBeGreaterThanOrEqual(fraction);
        expect(highFraction).toBeLessThanOrEqual(1);
        expect(highFraction).toBeGreaterThan(lowFraction);
      }),
    );
  });
  it('says the same of the points that were not hit', () => {
    fc.assert(
      fc.property(counts, ([hits, points]) => {
        const hit = pointCover({ hits, points });
        const missed = pointCover({ hits: points - hits, points });
        expect(missed.lowFraction).toBeCloseTo(1 - hit.highFraction, 9);
      }),
    );
  });
  it('grows surer with more points', () => {
    const width = (points: number) => {
      const { lowFraction, highFraction } = pointCover({ hits: points / 2, points });
      return highFraction - lowFraction;
    };
    expect(width(20)).toBeLessThan(width(10));
    expect(width(100)).toBeLessThan(width(20));
  });
  it('is not sure of nothing after a few points without a hit', () => {
    const { lowFraction, highFraction } = pointCover({ hits: 0, points: 10 });
    expect(lowFraction).toBe(0);
    expect(highFraction).toBeGreaterThan(0.2);
  });
  it.each([
    [3, 2, 'hits must not be more than the 2 points'],
    [1.5, 10, 'hits must be a whole number'],
    [-1, 10, 'hits must be a whole number'],
    [0, 0, 'points must be a whole number, 1 or more'],
    [1, Number.NaN, 'points'],
  ])('refuses %d hits in %d points', (hits, points, message) => {
    expect(() => pointCover({ hits, points })).toThrow(message);
  });
});
