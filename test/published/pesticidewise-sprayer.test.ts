import { describe, expect, it } from 'vitest';
import { rectangleM2 } from '../../src/agronomy/area.js';
import { speedKmPerH, sprayVolumeLPerHa } from '../../src/agronomy/spray.js';
import { expectPrinted } from './printed.js';

// Source: Pesticidewise, hand sprayer calibration: a swath of 0.75 m over 33.3 m, walked in 50 s for 2.4 km/h,
// 200 L/ha wanted. The flow is by hand: 0.5 L in 50 s.
describe('a strip of 0.75 × 33.3 m', () => {
  it('is 25 m²', () => expectPrinted(rectangleM2({ lengthM: 33.3, widthM: 0.75 }), '25'));
  it('walked in 50 s is 2.4 km/h', () => expectPrinted(speedKmPerH({ distanceM: 33.3, timeS: 50 }), '2.4'));
  it('gets 200 L/ha from 0.60 L/min at that speed', () => {
    expectPrinted(sprayVolumeLPerHa({ flowLPerMin: 0.6, speedKmPerH: 2.4, swathM: 0.75 }), '200');
  });
  it('walked in 55 s is 2.18 km/h, not "very close to 2.4", and gets 220 L/ha', () => {
    const slow = speedKmPerH({ distanceM: 33.3, timeS: 55 });
    expectPrinted(slow, '2.18');
    expectPrinted(sprayVolumeLPerHa({ flowLPerMin: 0.6, speedKmPerH: slow, swathM: 0.75 }), '220');
  });
  it('takes faster steps in 50 s than in 55, where the page says to slow down', () => {
    expect(speedKmPerH({ distanceM: 33.3, timeS: 50 })).toBeGreaterThan(
      speedKmPerH({ distanceM: 33.3, timeS: 55 }),
    );
  });
});
