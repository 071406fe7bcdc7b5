import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equalOffsetsArea, unequalOffsetsArea } from '../../src/agronomy/area-offsets.js';
import { expectReal } from './refusals.js';

const offset = fc.double({ min: 0, max: 1000, noNaN: true });
const offsets = fc
  .array(offset, { minLength: 2, maxLength: 12 })
  .filter((list) => list.some((offsetM) => offsetM > 1e-6));
const rule = fc.constantFrom('simpson', 'trapezoid');

describe('Simpson', () => {
  // The integral of x² from 0 to 4 is 64 ÷ 3, and a parabola is what the rule is exact for.
  it('is exact for a parabola at equal steps', () => {
    const { areaM2, trapeziumStrips } = equalOffsetsArea({
      spacingM: 1,
      offsetsM: [0, 1, 4, 9, 16],
      rule: 'simpson',
    });
    expect(areaM2).toBeCloseTo(64 / 3, 12);
    expect(trapeziumStrips).toEqual([]);
  });

  it('is exact for a parabola at unequal steps', () => {
    const distancesM = [0, 1, 2.5, 3, 4];
    const offsetsM = distancesM.map((x) => x ** 2);
    // The pair of 0.5 and 1 m is just within the rule's twofold limit.
    const { areaM2, trapeziumStrips } = unequalOffsetsArea({ distancesM, offsetsM, rule: 'simpson' });
    expect(areaM2).toBeCloseTo(64 / 3, 12);
    expect(trapeziumStrips).toEqual([]);
  });

  it('takes a last odd strip as a trapezium and says which', () => {
    const { areaM2, trapeziumStrips } = equalOffsetsArea({
      spacingM: 1,
      offsetsM: [0, 1, 4, 9],
      rule: 'simpson',
    });
    expect(areaM2).toBeCloseTo(8 / 3 + (4 + 9) / 2, 12);
    expect(trapeziumStrips).toEqual([3]);
  });

  it('is a trapezium when there is only one strip', () => {
    expect(equalOffsetsArea({ spacingM: 2, offsetsM: [3, 5], rule: 'simpson' })).toEqual({
      areaM2: 8,
      rule: 'simpson',
      trapeziumStrips: [1],
    });
  });

  it('takes two strips of very different width as trapezia, so that an offset never counts below nothing', () => {
    const result = unequalOffsetsArea({ distancesM: [0, 1, 4], offsetsM: [9, 0, 0], rule: 'simpson' });
    expect(result.areaM2).toBeCloseTo(4.5, 12);
    expect(result.trapeziumStrips).toEqual([1, 2]);
  });
});

describe('trapezoid', () => {
  it('lists every strip as a trapezium', () => {
    const { areaM2, trapeziumStrips } = unequalOffsetsArea({
      distancesM: [10, 12, 15],
      offsetsM: [2, 4, 1],
      rule: 'trapezoid',
    });
    expect(areaM2).toBeCloseTo(2 * 3 + 3 * 2.5, 12);
    expect(trapeziumStrips).toEqual([1, 2]);
  });
});

describe('both rules', () => {
  it('give a rectangle for equal offsets', () => {
    fc.assert(
      fc.property(rule, fc.integer({ min: 1, max: 20 }), (which, strips) => {
        const offsetsM = Array.from({ length: strips + 1 }, () => 3);
        const { areaM2 } = equalOffsetsArea({ spacingM: 2, offsetsM, rule: which });
        expect(areaM2).toBeCloseTo(6 * strips, 9);
      }),
    );
  });

  it('give a real area for any offsets at any steps', () => {
    const steps = fc.array(fc.double({ min: 0.01, max: 100, noNaN: true }), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(offsets, steps, rule, (offsetsM, stepsM, which) => {
        let distanceM = 0;
        const distancesM = offsetsM.map((_, index) => (distanceM += stepsM[index] ?? 1));
        const { areaM2 } = unequalOffsetsArea({ distancesM, offsetsM, rule: which });
        expectReal(areaM2);
        expect(areaM2).toBeGreaterThan(0);
      }),
    );
  });

  it('double with the offsets and with the steps', () => {
    fc.assert(
      fc.property(offsets, rule, (offsetsM, which) => {
        const { areaM2 } = equalOffsetsArea({ spacingM: 2, offsetsM, rule: which });
        const wider = equalOffsetsArea({ spacingM: 2, offsetsM: offsetsM.map((y) => 2 * y), rule: which });
        const longer = equalOffsetsArea({ spacingM: 4, offsetsM, rule: which });
        expect(wider.areaM2 / areaM2).toBeCloseTo(2, 9);
        expect(longer.areaM2 / areaM2).toBeCloseTo(2, 9);
      }),
    );
  });

  it('never shrink when one offset grows', () => {
    fc.assert(
      fc.property(offsets, rule, fc.nat(), (offsetsM, which, at) => {
        const more = offsetsM.map((y, index) => (index === at % offsetsM.length ? y + 1 : y));
        const before = equalOffsetsArea({ spacingM: 2, offsetsM, rule: which }).areaM2;
        expect(equalOffsetsArea({ spacingM: 2, offsetsM: more, rule: which }).areaM2).toBeGreaterThan(before);
      }),
    );
  });
});

describe('refusals', () => {
  const area = (distancesM: number[], offsetsM: number[]) => () =>
    unequalOffsetsArea({ distancesM, offsetsM, rule: 'simpson' });
  it('come for one offset alone', () => expect(area([0], [1])).toThrow('offsetsM must have 2 or more'));
  it('come for an offset below 0', () => expect(area([0, 1], [1, -1])).toThrow('offsetsM must be 0 or more'));
  it('come for offsets that are all 0', () => expect(area([0, 1], [0, 0])).toThrow('must not all be 0'));
  it('come for a missing distance', () => expect(area([0], [1, 2])).toThrow('one entry for each of the 2'));
  it('come for distances that do not rise', () => {
    expect(area([0, 2, 2], [1, 1, 1])).toThrow('They must rise along the line');
    expect(area([0, 2, 1], [1, 1, 1])).toThrow('distancesM');
  });
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0, -1])('come for a step of %d', (spacingM) => {
    expect(() => equalOffsetsArea({ spacingM, offsetsM: [1, 2], rule: 'trapezoid' })).toThrow('spacingM');
  });
});
