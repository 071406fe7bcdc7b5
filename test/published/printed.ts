import { expect } from 'vitest';

/**
 * Checks a value against a figure as a publication prints it.
 *
 * @param printed the printed text: a value passes when it rounds to it, so `'4.39'` allows 0.005 either way
 * @param offFraction further relative difference that is known and explained beside the check
 */
export function expectPrinted(actual: number, printed: string, offFraction = 0): void {
  const decimals = printed.split('.')[1]?.length ?? 0;
  const figure = Number(printed);
  const allowed = 0.5 * 10 ** -decimals + Math.abs(figure) * offFraction;
  const off = Math.abs(actual - figure);
  expect(off, `${actual} against ${printed} as printed`).toBeLessThanOrEqual(allowed * (1 + 1e-9));
}
