import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaErrorFraction, lawnErrorM2, paceM, rectangleErrorM2 } from '../../src/agronomy/measuring.js';
import { amount, expectRefusals, fraction } from './refusals.js';

// By hand from the law of error propagation, √((W sL)² + (L sW)²): a lawn of 20 × 12 m.
describe('a lawn of 20 × 12 m', () => {
  const size = { lengthM: 20, widthM: 12 };
  it('taped to 5 cm each way is good to 1.17 m²', () => {
    const errorM2 = rectangleErrorM2({ ...size, lengthErrorM: 0.05, widthErrorM: 0.05, kind: 'independent' });
    expect(errorM2).toBeCloseTo(1.17, 2);
  });
  it('paced to 5 % each way is good to 17.0 m², 7.1 %', () => {
    const errorM2 = rectangleErrorM2({ ...size, lengthErrorM: 1, widthErrorM: 0.6, kind: 'independent' });
    expect(errorM2).toBeCloseTo(17.0, 1);
    expect(areaErrorFraction({ lengthErrorFraction: 0.05, kind: 'independent' })).toBeCloseTo(0.071, 3);
  });
  it('paced with one pace that is 5 % off is off by 10 %', () => {
    const errorM2 = rectangleErrorM2({ ...size, lengthErrorM: 1, widthErrorM: 0.6, kind: 'same-cause' });
    expect(errorM2).toBeCloseTo(24, 12);
    expect(areaErrorFraction({ lengthErrorFraction: 0.05, kind: 'same-cause' })).toBeCloseTo(0.1, 12);
  });
});

describe('lawnErrorM2', () => {
  it('agrees with the rectangle for one part', () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        fraction,
        fc.constantFrom('independent', 'same-cause'),
        (lengthM, widthM, e, kind) => {
          const one = lawnErrorM2({ partsM2: [lengthM * widthM], lengthErrorFraction: e, kind });
          const sides = { lengthErrorM: e * lengthM, widthErrorM: e * widthM };
          expect(one).toBeCloseTo(rectangleErrorM2({ lengthM, widthM, ...sides, kind }), 3);
        },
      ),
    );
  });
  it('lets one wrong pace scale lawn and beds alike', () => {
    expect(lawnErrorM2({ partsM2: [96, -6], lengthErrorFraction: 0.05, kind: 'same-cause' })).toBeCloseTo(
      9,
      12,
    );
  });
  it('is never below 0, not even for a bed alone', () => {
    expect(lawnErrorM2({ partsM2: [-6], lengthErrorFraction: 0.05, kind: 'same-cause' })).toBeCloseTo(
      0.6,
      12,
    );
  });
  it('lets independent slips in a bed widen the error, not narrow it', () => {
    const lawn = lawnErrorM2({ partsM2: [96], lengthErrorFraction: 0.05, kind: 'independent' });
    const both = lawnErrorM2({ partsM2: [96, -30], lengthErrorFraction: 0.05, kind: 'independent' });
    expect(both).toBeGreaterThan(lawn);
  });
  it('never calls independent slips worse than a common one', () => {
    const parts = fc.array(amount, { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(parts, fraction, (partsM2, lengthErrorFraction) => {
        const independent = lawnErrorM2({ partsM2, lengthErrorFraction, kind: 'independent' });
        const common = lawnErrorM2({ partsM2, lengthErrorFraction, kind: 'same-cause' });
        expect(independent).toBeLessThanOrEqual(common * (1 + 1e-9));
      }),
    );
  });
});

describe('refusals', () => {
  it('come for lengths and errors that cannot be', () => {
    expectRefusals(
      rectangleErrorM2,
      { lengthM: 2, widthM: 1, lengthErrorM: 0.1, widthErrorM: 0.1, kind: 'independent' as const },
      { lengthM: [0], widthM: [0] },
    );
    expectRefusals(areaErrorFraction, { lengthErrorFraction: 0.1, kind: 'independent' as const });
    expect(() => lawnErrorM2({ partsM2: [], lengthErrorFraction: 0, kind: 'independent' })).toThrow(
      'partsM2',
    );
    expect(() => lawnErrorM2({ partsM2: [Number.NaN], lengthErrorFraction: 0, kind: 'independent' })).toThrow(
      'partsM2',
    );
  });
  it('come for a walk without paces', () => {
    expect(() => paceM({ distanceM: 20, paceCounts: [] })).toThrow('paceCounts');
    expect(() => paceM({ distanceM: 20, paceCounts: [0] })).toThrow('paceCounts');
    expect(() => paceM({ distanceM: 0, paceCounts: [30] })).toThrow('distanceM');
  });
});
