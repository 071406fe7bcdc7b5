import { describe, it } from 'vitest';
import { mowAtMm } from '../../src/agronomy/mowing.js';
import { expectPrinted } from './printed.js';

// Source: Cornell University, home gardening tidbits 1454 and f758: never take more than a third of the leaf.
// (Purdue AY-8 prints 4 in for the same 3 in lawn, which takes only a quarter.)
const mowAtIn = (targetIn: number) => mowAtMm({ targetMm: targetIn * 25.4, takeFraction: 1 / 3 }) / 25.4;

describe('the one-third rule', () => {
  it('mows a lawn of 3 in at 4.5 in', () => expectPrinted(mowAtIn(3), '4.5'));
  // Printed as just over 2 in, after three quarters of an inch of growth.
  it('mows a lawn of 1.5 in at 2.25 in', () => expectPrinted(mowAtIn(1.5), '2.25'));
  it('lets a lawn of 3 in grow twice as much between cuts as one of 1.5 in', () => {
    expectPrinted((mowAtIn(3) - 3) / (mowAtIn(1.5) - 1.5), '2.00');
  });
});
