import { describe, expect, it } from 'vitest';
import {
  finiteResult,
  requireAbove,
  requireAtLeast,
  requireBetween,
  requireCount,
  requireFinite,
  requireFraction,
  requireFractionAboveZero,
  requireRange,
  requireWhole,
} from '../../src/base/refuse.js';

const NEVER = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

describe('a guard', () => {
  it('names the argument, what is allowed and what was found', () => {
    expect(() => requireAbove('areaM2', -3, 0)).toThrow(new RangeError('areaM2 must be above 0, got -3.'));
    expect(() => requireAtLeast('hours', -1, 0)).toThrow(new RangeError('hours must be 0 or more, got -1.'));
  });

  it('adds the hint it is given', () => {
    expect(() => requireAbove('limitMm', 0, 0, 'Let it grow.')).toThrow('got 0. Let it grow.');
  });

  it('shows how a percentage is written as a share', () => {
    expect(() => requireFraction('nitrogenFraction', 28)).toThrow('28 % is written 0.28.');
    expect(() => requireFractionAboveZero('nitrogenFraction', 8.3)).toThrow('8.3 % is written 0.083.');
    expect(() => requireFraction('x', 100)).toThrow('100 % is written 1.');
    expect(() => requireFraction('x', 150)).toThrow(
      new RangeError('x is a share and must be from 0 to 1, got 150.'),
    );
  });

  it.each(NEVER)('never lets %d pass', (value) => {
    const guards = [
      () => requireFinite('x', value),
      () => requireAbove('x', value, 0),
      () => requireAtLeast('x', value, 0),
      () => requireBetween('x', value, { min: 0, max: 1 }),
      () => requireFraction('x', value),
      () => requireFractionAboveZero('x', value),
      () => requireWhole('x', value, 0),
      () => requireRange('x', { min: 0, max: value }, 0),
      () => finiteResult('x', value),
    ];
    for (const guard of guards) expect(guard).toThrow(RangeError);
  });

  it('lets the limits pass that it states', () => {
    expect(() => {
      requireAtLeast('x', 0, 0);
      requireBetween('x', 0, { min: 0, max: 1 });
      requireBetween('x', 1, { min: 0, max: 1 });
      requireFraction('x', 0);
      requireFraction('x', 1);
      requireFractionAboveZero('x', 1);
      requireWhole('x', 3, 3);
      requireRange('x', { min: 2, max: 2 }, 2);
      requireCount('x', [1, 2], 2);
    }).not.toThrow();
  });

  it('refuses just past the limits that it states', () => {
    expect(() => requireAbove('x', 0, 0)).toThrow(RangeError);
    expect(() => requireFractionAboveZero('x', 0)).toThrow(RangeError);
    expect(() => requireWhole('x', 2.5, 0)).toThrow('whole number');
    expect(() => requireRange('x', { min: 3, max: 2 }, 0)).toThrow('x.max');
    expect(() => requireRange('x', { min: -1, max: 2 }, 0)).toThrow('x.min');
    expect(() => requireCount('x', [1], 2)).toThrow('2 or more entries, got 1');
  });

  it('hands a finite result on', () => expect(finiteResult('x', 4.5)).toBe(4.5));
});
