import fc from 'fast-check';
import { expect } from 'vitest';

/** An amount a lawn could have, above 0. */
export const amount = fc.double({ min: 1e-3, max: 1e6, noNaN: true });

/** An amount a lawn could have, or 0; nothing so near 0 that binary arithmetic keeps no digits of it. */
export const amountOrNone = fc.oneof(fc.constant(0), fc.double({ min: 1e-9, max: 1e6, noNaN: true }));

/** A share from 0 to 1. */
export const fraction = fc.double({ min: 0, max: 1, noNaN: true });

/** A share that can be divided by. */
export const fractionAboveZero = fc.double({ min: 1e-3, max: 1, noNaN: true });

/** Values that no amount can have. */
const NEVER = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -1];

/**
 * Checks that a function refuses each argument in turn when it is not a number, endless or below 0, with an
 * error that names the argument, and that it takes 0 unless 0 is among the further values.
 *
 * @param valid arguments that the function takes; each number in it is replaced in turn
 * @param more further values that an argument must refuse, such as 0 for a divisor
 */
export function expectRefusals<Args extends object>(
  run: (args: Args) => unknown,
  valid: Args,
  more: Partial<Record<keyof Args, readonly number[]>> = {},
): void {
  expect(() => run(valid)).not.toThrow();
  for (const [name, value] of Object.entries(valid) as [keyof Args & string, unknown][]) {
    if (typeof value !== 'number') continue;
    if (!more[name]?.includes(0)) expect(() => run({ ...valid, [name]: 0 }), `${name} = 0`).not.toThrow();
    for (const bad of [...NEVER, ...(more[name] ?? [])]) {
      const attempt = () => run({ ...valid, [name]: bad });
      expect(attempt, `${name} = ${bad}`).toThrow(RangeError);
      expect(attempt, `${name} = ${bad}`).toThrow(name);
    }
  }
}

/** Checks that a result is a number that can be shown: finite and not below 0. */
export function expectReal(value: number): void {
  expect(Number.isFinite(value)).toBe(true);
  expect(value).toBeGreaterThanOrEqual(0);
}
