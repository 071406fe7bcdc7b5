import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  caughtVolumeLPerHa,
  meanRunS,
  speedKmPerH,
  sprayVolumeLPerHa,
  testStripM,
  testStripS,
} from '../../src/agronomy/spray.js';
import { amount, expectReal, expectRefusals } from './refusals.js';

describe('calibration', () => {
  it('finds the same volume by flow, speed and swath as by catching the water of a strip', () => {
    fc.assert(
      fc.property(amount, amount, amount, amount, (flowLPerMin, swathM, distanceM, timeS) => {
        const speed = speedKmPerH({ distanceM, timeS });
        const byFlow = sprayVolumeLPerHa({ flowLPerMin, speedKmPerH: speed, swathM });
        const byCatch = caughtVolumeLPerHa({
          areaM2: distanceM * swathM,
          caughtL: (flowLPerMin * timeS) / 60,
        });
        expectReal(byFlow);
        expect(byFlow / byCatch).toBeCloseTo(1, 9);
      }),
    );
  });
  it('lays twice as much at half the speed', () => {
    fc.assert(
      fc.property(amount, amount, amount, (flowLPerMin, speed, swathM) => {
        const volume = sprayVolumeLPerHa({ flowLPerMin, speedKmPerH: speed, swathM });
        expect(sprayVolumeLPerHa({ flowLPerMin, speedKmPerH: speed / 2, swathM }) / volume).toBeCloseTo(2, 9);
      }),
    );
  });
  it('asks for seconds in which the wanted water runs out', () => {
    fc.assert(
      fc.property(amount, amount, amount, (areaM2, waterLPerM2, flowLPerMin) => {
        const timeS = testStripS({ areaM2, waterLPerM2, flowLPerMin });
        expect(((flowLPerMin / 60) * timeS) / (areaM2 * waterLPerM2)).toBeCloseTo(1, 9);
      }),
    );
  });
  it('takes nothing caught as no volume', () =>
    expect(caughtVolumeLPerHa({ areaM2: 25, caughtL: 0 })).toBe(0));
});

describe('refusals', () => {
  it('come for amounts that cannot be', () => {
    const flow = { flowLPerMin: 0.6, speedKmPerH: 2.4, swathM: 0.75 };
    expectRefusals(sprayVolumeLPerHa, flow, { flowLPerMin: [0], speedKmPerH: [0], swathM: [0] });
    expectRefusals(speedKmPerH, { distanceM: 30, timeS: 45 }, { distanceM: [0], timeS: [0] });
    expectRefusals(testStripM, { areaM2: 25, swathM: 0.75 }, { areaM2: [0], swathM: [0] });
    expectRefusals(caughtVolumeLPerHa, { areaM2: 25, caughtL: 0.5 }, { areaM2: [0] });
    const strip = { areaM2: 25, waterLPerM2: 0.1, flowLPerMin: 0.6 };
    expectRefusals(testStripS, strip, { areaM2: [0], waterLPerM2: [0], flowLPerMin: [0] });
  });
  it('come for a single run', () => {
    expect(() => meanRunS({ runsS: [17] })).toThrow('runsS must have 2 or more entries, got 1');
    expect(() => meanRunS({ runsS: [17, 0] })).toThrow('runsS must be above 0');
  });
});
