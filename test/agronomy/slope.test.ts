import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { riseM, slopeDeg } from '../../src/agronomy/slope.js';
import { expectRefusals } from './refusals.js';

describe('slope', () => {
  // Angles everyone knows: level, half a square corner, and the 30 of a 1 to √3 set square.
  it.each([
    [0, 1, 0],
    [1, 1, 45],
    [1, Math.sqrt(3), 30],
  ])('%d m in %d m is %d degrees', (rise, runM, degrees) => {
    expect(slopeDeg({ riseM: rise, runM })).toBeCloseTo(degrees, 9);
  });
  it('goes to rise and back', () => {
    const run = fc.double({ min: 0.1, max: 100, noNaN: true });
    fc.assert(
      fc.property(run, fc.double({ min: 0, max: 89, noNaN: true }), (runM, degrees) => {
        expect(slopeDeg({ riseM: riseM({ runM, slopeDeg: degrees }), runM })).toBeCloseTo(degrees, 9);
      }),
    );
  });
  it('is refused for what cannot be', () => {
    expectRefusals(slopeDeg, { riseM: 1, runM: 4 }, { runM: [0] });
    expectRefusals(riseM, { runM: 4, slopeDeg: 15 }, { runM: [0], slopeDeg: [90] });
  });
});
