import { describe, expect, it } from 'vitest';
import { readAmount } from '../../src/training/read-amount.js';
import type { RightAmount } from '../../src/training/right-amount.js';

const right = (unit: string, value = 100): RightAmount => ({
  value,
  unit,
  loose: false,
  range: null,
  working: '',
  isLabelled: false,
});

describe('an amount as it is typed', () => {
  it.each([
    ['84', 'm2', 84],
    ['12 x 7', 'm2', 84],
    // 1 ft is 0.3048 m exactly.
    ['100 sq ft', 'm2', 9.290304],
    ['5.1 kg', 'g', 5100],
    ['5100', 'g', 5100],
    // 1 lb is 453.59237 g exactly.
    ['2 lb', 'g', 907.18474],
    ['0.84 L', 'mL', 840],
    ['840', 'mL', 840],
    ['3.4', 'L', 3.4],
    ['two weeks', 'd', 14],
    ['14 days', 'd', 14],
    ['14', 'd', 14],
    ['2 loads', 'loads', 2],
    ['60', 'mm', 60],
    ['6 cm', 'mm', 60],
    // 1 in is 25.4 mm exactly.
    ['2 in', 'mm', 50.8],
    ['65 min', 'min', 65],
    ['1 h 5 min', 'min', 65],
    ['2 hours', 'min', 120],
    ['622 grubs', 'each', 622],
  ])('%s as %s is %d', (typed, unit, value) => {
    const read = readAmount(typed, right(unit), 'metric');
    expect(read.ok).toBe(true);
    if (read.ok) expect(read.value).toBeCloseTo(value, 6);
  });

  it.each([
    ['about so much', 'm2'],
    ['12 kg', 'L'],
    ['1,234', 'g'],
    ['2 gal', 'L'],
    ['', 'd'],
    ['an hour or so', 'min'],
    ['60 kg', 'mm'],
  ])('%s as %s is refused with what to type', (typed, unit) => {
    const read = readAmount(typed, right(unit), 'metric');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.says.length).toBeGreaterThan(10);
  });
});
