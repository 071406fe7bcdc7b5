import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootZone } from '../../src/agronomy/root-zone.js';
import { expectRefusals } from './refusals.js';

const stem = fc.double({ min: 0.02, max: 5, noNaN: true });

describe('rootZone', () => {
  it('is a circle of its own radius, capped or not', () => {
    fc.assert(
      fc.property(stem, (stemDiameterM) => {
        const { radiusM, areaM2 } = rootZone({ stemDiameterM, multiple: 12, capM2: 707 });
        expect(areaM2 / (Math.PI * radiusM ** 2)).toBeCloseTo(1, 9);
        expect(areaM2).toBeLessThanOrEqual(707 * (1 + 1e-12));
      }),
    );
  });
  it('never shrinks with a thicker stem', () => {
    fc.assert(
      fc.property(stem, stem, (one, other) => {
        const radius = (stemDiameterM: number) =>
          rootZone({ stemDiameterM, multiple: 12, capM2: 707 }).radiusM;
        expect(radius(Math.max(one, other))).toBeGreaterThanOrEqual(radius(Math.min(one, other)));
      }),
    );
  });
  it('refuses what cannot be', () => {
    expectRefusals(
      rootZone,
      { stemDiameterM: 0.35, multiple: 12, capM2: 707 },
      { stemDiameterM: [0], multiple: [0], capM2: [0] },
    );
  });
});
