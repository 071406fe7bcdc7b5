import { expect, it } from 'vitest';
import { greatCircleKm } from '../../src/agronomy/season.js';

// Source: geographiclib, geodesictest.js, GeodSolve0: from 40.6, -73.8 to 49.01666667, 2.55 the geodesic on
// the WGS84 ellipsoid is 5 853 226 m. The sphere used here may differ from it by 0.6 %.
it('the great circle is within 0.6 % of the geodesic of 5853.226 km (geographiclib)', () => {
  const distanceKm = greatCircleKm(
    { latitudeDeg: 40.6, longitudeDeg: -73.8 },
    { latitudeDeg: 49.01666667, longitudeDeg: 2.55 },
  );
  expect(Math.abs(distanceKm / 5853.226 - 1)).toBeLessThan(0.006);
});
