import { describe, expect, it } from 'vitest';
import { once } from '../../src/base/once.js';

describe('work done once', () => {
  it('is done for each object once, and again for another that looks the same', () => {
    let times = 0;
    const count = once((_: object) => ++times);
    const [one, two] = [{ a: 1 }, { a: 1 }];
    expect([count(one), count(one), count(two), count(one)]).toEqual([1, 1, 2, 1]);
  });

  it('remembers that nothing came of it', () => {
    let times = 0;
    const nothing = once((_: object): undefined => void times++);
    const key = {};
    nothing(key);
    nothing(key);
    expect(times).toBe(1);
  });
});
