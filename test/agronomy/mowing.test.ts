import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mowAtMm, stepDownMm } from '../../src/agronomy/mowing.js';
import { expectRefusals } from './refusals.js';

const height = fc.double({ min: 5, max: 1000, noNaN: true });
const take = fc.double({ min: 0.1, max: 0.9, noNaN: true });

describe('stepDownMm', () => {
  it('brings 120 mm to 40 mm in three cuts of a third', () => {
    const cuts = stepDownMm({ heightMm: 120, targetMm: 40, takeFraction: 1 / 3 });
    expect(cuts).toHaveLength(3);
    expect(cuts[0]).toBeCloseTo(80, 9);
    expect(cuts[1]).toBeCloseTo(160 / 3, 9);
    expect(cuts[2]).toBe(40);
  });
  it('is one cut from the height at which the rule says to mow', () => {
    expect(stepDownMm({ heightMm: 60, targetMm: 40, takeFraction: 1 / 3 })).toEqual([40]);
  });
  it('is no cut for grass that is not above the height', () => {
    expect(stepDownMm({ heightMm: 40, targetMm: 40, takeFraction: 1 / 3 })).toEqual([]);
    expect(stepDownMm({ heightMm: 20, targetMm: 40, takeFraction: 1 / 3 })).toEqual([]);
  });
  it('falls at each cut by no more than the share, and ends at the target', () => {
    fc.assert(
      fc.property(height, height, take, (heightMm, targetMm, takeFraction) => {
        const cuts = stepDownMm({ heightMm, targetMm, takeFraction });
        let before = heightMm;
        for (const after of cuts) {
          expect(after).toBeLessThan(before);
          expect(after).toBeGreaterThanOrEqual((1 - takeFraction) * before * (1 - 2e-9));
          before = after;
        }
        if (heightMm > targetMm) expect(cuts.at(-1)).toBe(targetMm);
        else expect(cuts).toEqual([]);
      }),
    );
  });
});

describe('mowAtMm', () => {
  it('is the height from which one cut reaches the target', () => {
    fc.assert(
      fc.property(height, take, (targetMm, takeFraction) => {
        const at = mowAtMm({ targetMm, takeFraction });
        expect((1 - takeFraction) * at).toBeCloseTo(targetMm, 9);
      }),
    );
  });
  it('is refused for what cannot be', () => {
    expectRefusals(
      mowAtMm,
      { targetMm: 40, takeFraction: 0.33 },
      { targetMm: [0], takeFraction: [0, 1, 33] },
    );
    expectRefusals(
      stepDownMm,
      { heightMm: 90, targetMm: 40, takeFraction: 0.33 },
      { heightMm: [0], targetMm: [0], takeFraction: [0, 1] },
    );
  });
});
