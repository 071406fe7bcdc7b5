import { describe, it } from 'vitest';
import { speedKmPerH, sprayVolumeLPerHa } from '../../src/agronomy/spray.js';
import { expectPrinted } from './printed.js';

// Source: agricultural sprayer manuals: L/ha = 600 × L/min ÷ (km/h × m), and km/h = 360 ÷ seconds over 100 m.
describe('identities of the sprayer manuals', () => {
  it('L/ha is 600 for 1 L/min at 1 km/h over 1 m', () => {
    expectPrinted(sprayVolumeLPerHa({ flowLPerMin: 1, speedKmPerH: 1, swathM: 1 }), '600');
  });
  it.each([
    [100, '3.6'],
    [120, '3.0'],
    [90, '4.0'],
  ] as const)('100 m in %d s are %s km/h', (timeS, printed) => {
    expectPrinted(speedKmPerH({ distanceM: 100, timeS }), printed);
  });
});
