import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  canTrips,
  hoseFlowLPerMin,
  hoseMinutes,
  waterDepthMm,
  waterVolumeL,
} from '../../src/agronomy/watering.js';

describe('water on an area', () => {
  it('goes from depth to volume and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 10_000, noNaN: true }),
        (depthMm, areaM2) => {
          expect(waterDepthMm({ volumeL: waterVolumeL({ depthMm, areaM2 }), areaM2 })).toBeCloseTo(
            depthMm,
            9,
          );
        },
      ),
    );
  });

  it('is 420 L for 5 mm on 84 m²', () => {
    expect(waterVolumeL({ depthMm: 5, areaM2: 84 })).toBe(420);
  });

  it('is refused on no area', () => {
    expect(() => waterVolumeL({ depthMm: 5, areaM2: 0 })).toThrow('areaM2');
    expect(() => waterDepthMm({ volumeL: -5, areaM2: 1 })).toThrow('volumeL');
  });
});

describe('water through a hose', () => {
  // 6 US gal/min on 600 ft²: an inch is 600 × 144 in³ of water, a gallon 231 in³, so 600 × 144 ÷ 231 ÷ 6 = 62.3 min.
  it('takes 62.3 minutes for an inch on 600 ft² at 6 US gal/min', () => {
    const litres = 600 * 0.09290304 * 25.4;
    const minutes = hoseMinutes({ volumeL: litres, flowLPerMin: 6 * 3.785411784, efficiencyFraction: 1 });
    expect(minutes).toBeCloseTo((600 * 144) / 231 / 6, 9);
  });

  it('of a 10 L bucket in 40 s is 15 L/min, and 420 L then take 28 minutes', () => {
    const flowLPerMin = hoseFlowLPerMin({ bucketL: 10, fillSeconds: 40 });
    expect(flowLPerMin).toBe(15);
    expect(hoseMinutes({ volumeL: 420, flowLPerMin, efficiencyFraction: 1 })).toBe(28);
    expect(hoseMinutes({ volumeL: 420, flowLPerMin, efficiencyFraction: 0.7 })).toBeCloseTo(40, 9);
  });

  it('is refused without flow or with an efficiency of nothing', () => {
    expect(() => hoseMinutes({ volumeL: 1, flowLPerMin: 0, efficiencyFraction: 1 })).toThrow('flowLPerMin');
    expect(() => hoseMinutes({ volumeL: 1, flowLPerMin: 1, efficiencyFraction: 0 })).toThrow(
      'efficiencyFraction',
    );
    expect(() => hoseFlowLPerMin({ bucketL: 10, fillSeconds: 0 })).toThrow('fillSeconds');
  });
});

describe('trips with a can', () => {
  it.each([
    [105, 9, 1, 12],
    [105, 9, 2, 6],
    [108, 9, 1, 12],
    [108.1, 9, 1, 13],
    [0, 9, 1, 0],
  ])('for %d L with cans of %i L, %i at once, are %i', (volumeL, canL, cansPerTrip, trips) => {
    expect(canTrips({ volumeL, canL, cansPerTrip })).toBe(trips);
  });

  it('are not one more because of binary fractions', () => {
    expect(canTrips({ volumeL: 0.1 * 3, canL: 0.1, cansPerTrip: 1 })).toBe(3);
  });

  it('are refused with half a can', () => {
    expect(() => canTrips({ volumeL: 10, canL: 9, cansPerTrip: 0.5 })).toThrow('cansPerTrip');
  });
});
