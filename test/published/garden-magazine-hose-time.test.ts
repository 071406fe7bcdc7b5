import { describe, expect, it } from 'vitest';
import { hoseFlowLPerMin, hoseMinutes } from '../../src/agronomy/watering.js';
import { VOLUME_IN_L } from '../../src/base/units.js';

const inUsGallons = (volumeL: number) => volumeL / VOLUME_IN_L['US gal'];

// Source: gardening magazine page on hose time: a gallon in 30 s is 2 gal/min; time is volume over flow,
// divided by 0.70 for what a sprinkler loses and by 0.85 for drip.
describe('time at the hose', () => {
  const flowLPerMin = hoseFlowLPerMin({ bucketL: VOLUME_IN_L['US gal'], fillSeconds: 30 });
  it('goes by 2 gal/min when a gallon takes 30 s', () => {
    expect(inUsGallons(flowLPerMin)).toBeCloseTo(2, 9);
  });
  it.each([
    [0.7, 100 / 2 / 0.7],
    [0.85, 100 / 2 / 0.85],
  ])(
    'for 100 gal at an efficiency of %d is volume over flow over efficiency',
    (efficiencyFraction, minutes) => {
      const volumeL = 100 * VOLUME_IN_L['US gal'];
      expect(hoseMinutes({ volumeL, flowLPerMin, efficiencyFraction })).toBeCloseTo(minutes, 9);
    },
  );
});
