import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greatCircleKm, nearestStation } from '../../src/agronomy/season.js';

const position = fc.record({
  latitudeDeg: fc.double({ min: -90, max: 90, noNaN: true }),
  longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
});
const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

describe('the great circle', () => {
  // A quarter of a sphere of 6371.0088 km: π ÷ 2 × R = 10 007.557 km; half of it 20 015.115 km.
  it.each([
    [at(0, 0), at(90, 0), 10_007.557],
    [at(0, 0), at(0, 90), 10_007.557],
    [at(90, 10), at(-90, 77), 20_015.115],
    [at(0, -179), at(0, 179), (2 * 10_007.557) / 90],
  ])('from %o to %o is %d km', (from, to, expectedKm) => {
    expect(greatCircleKm(from, to)).toBeCloseTo(expectedKm, 2);
  });

  it('is the same both ways, nothing at home, and never longer than a detour', () => {
    fc.assert(
      fc.property(position, position, position, (a, b, c) => {
        expect(greatCircleKm(a, b)).toBeCloseTo(greatCircleKm(b, a), 3);
        expect(greatCircleKm(a, a)).toBe(0);
        // A metre of slack: near the far side of the globe the arc keeps only half the digits.
        expect(greatCircleKm(a, c)).toBeLessThanOrEqual(greatCircleKm(a, b) + greatCircleKm(b, c) + 1e-3);
      }),
    );
  });

  // The other textbook form, by the spherical law of cosines.
  it('agrees with the law of cosines', () => {
    const radians = (degrees: number) => (degrees * Math.PI) / 180;
    fc.assert(
      fc.property(position, position, (a, b) => {
        const cosine =
          Math.sin(radians(a.latitudeDeg)) * Math.sin(radians(b.latitudeDeg)) +
          Math.cos(radians(a.latitudeDeg)) *
            Math.cos(radians(b.latitudeDeg)) *
            Math.cos(radians(b.longitudeDeg - a.longitudeDeg));
        const km = 6371.0088 * Math.acos(Math.min(1, Math.max(-1, cosine)));
        expect(Math.abs(greatCircleKm(a, b) - km)).toBeLessThan(0.5);
      }),
    );
  });
});

describe('the nearest station', () => {
  const stations = [at(51.761, -1.262), at(52.245, 0.102), at(60.139, -1.183)];

  it('to the middle of England is the first of three', () => {
    const { index, distanceKm } = nearestStation(at(51.9, -1.3), stations);
    expect(index).toBe(0);
    expect(distanceKm).toBeLessThan(20);
  });

  it('is the first of equals', () => {
    expect(nearestStation(at(0, 0), [at(0, 1), at(0, -1), at(1, 0)]).index).toBe(0);
  });

  it('is found across the line of the date', () => {
    expect(nearestStation(at(0, 179.9), [at(0, 170), at(0, -179.9)]).index).toBe(1);
  });

  it('has no station nearer than itself', () => {
    fc.assert(
      fc.property(position, fc.array(position, { minLength: 1, maxLength: 20 }), (place, list) => {
        const nearest = nearestStation(place, list);
        for (const station of list)
          expect(greatCircleKm(place, station)).toBeGreaterThanOrEqual(nearest.distanceKm);
      }),
    );
  });

  it('is refused for an empty list and for places off the globe', () => {
    expect(() => nearestStation(at(0, 0), [])).toThrow('stations');
    expect(() => nearestStation(at(95, 0), stations)).toThrow('latitudeDeg');
    expect(() => greatCircleKm(at(0, 0), at(0, 200))).toThrow('longitudeDeg');
  });
});
