/** Bounds of results against json-logic-js over every whole number between the bounds of the operands. */
import jsonLogic from 'json-logic-js';
import { describe, expect, it } from 'vitest';
import { boundsOfResult, type Span } from '../../src/rules/interval.js';

const ENDS = [-2, -1, 0, 1, 2];
const spans: Span[] = ENDS.flatMap((least) =>
  ENDS.filter((most) => most >= least).map((most) => ({ least, most })),
);
const numbersIn = ({ least, most }: Span): number[] =>
  Array.from({ length: most - least + 1 }, (_, step) => least + step);

/** All that the operator gives for numbers from these spans. */
function results(operator: string, operands: readonly Span[]): unknown[] {
  const combined = operands.reduce<number[][]>(
    (lists, span) => lists.flatMap((list) => numbersIn(span).map((number) => [...list, number])),
    [[]],
  );
  return combined.map((numbers) => jsonLogic.apply({ [operator]: numbers } as never));
}

const pairs = spans.flatMap((a) => spans.map((b) => [a, b] as const));

describe('the bounds of a result', () => {
  it.each(['<', '<=', '>', '>='])('settle %s exactly where all numbers agree', (operator) => {
    for (const pair of pairs) {
      const given = new Set(results(operator, pair));
      const expected = given.size === 1 ? [...given][0] : undefined;
      expect(boundsOfResult(operator, pair), JSON.stringify(pair)).toBe(expected);
    }
  });

  it('tell two numbers apart only where their spans do not meet', () => {
    for (const pair of pairs) {
      const isApart = !results('===', pair).includes(true);
      expect(boundsOfResult('===', pair)).toBe(isApart ? false : undefined);
      expect(boundsOfResult('!==', pair)).toBe(isApart ? true : undefined);
    }
  });

  it.each(['+', '-', '*', 'min', 'max'])('of %s are the least and the most of all results', (operator) => {
    for (const pair of pairs) {
      const all = results(operator, pair) as number[];
      const bounds = boundsOfResult(operator, pair) as Span;
      // Plus nothing: minus zero is zero here.
      expect([bounds.least + 0, bounds.most + 0]).toEqual([Math.min(...all) + 0, Math.max(...all) + 0]);
    }
  });

  it('of a quotient are the least and the most, and none where the divisor may be zero', () => {
    for (const [a, b] of pairs) {
      const bounds = boundsOfResult('/', [a, b]) as Span;
      if (b.least <= 0 && b.most >= 0) {
        expect(bounds).toEqual({ least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY });
        continue;
      }
      const all = results('/', [a, b]) as number[];
      expect([bounds.least + 0, bounds.most + 0]).toEqual([Math.min(...all) + 0, Math.max(...all) + 0]);
    }
  });

  it('of one or three operands take all of them in', () => {
    const [a, b, c] = [
      { least: 1, most: 2 },
      { least: -3, most: 4 },
      { least: 5, most: 6 },
    ];
    expect(boundsOfResult('-', [b])).toEqual({ least: -4, most: 3 });
    expect(boundsOfResult('+', [a, b, c])).toEqual({ least: 3, most: 12 });
    expect(boundsOfResult('*', [a, b, c])).toEqual({ least: -36, most: 48 });
    expect(boundsOfResult('min', [a, b, c])).toEqual({ least: -3, most: 2 });
    expect(boundsOfResult('max', [a, b, c])).toEqual({ least: 5, most: 6 });
  });

  it('are boundless where zero meets the boundless, and unknown for what is no number', () => {
    const boundless = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };
    expect(boundsOfResult('*', [{ least: 0, most: 1 }, boundless])).toEqual(boundless);
    expect(boundsOfResult('in', [{ least: 0, most: 1 }, boundless])).toBeUndefined();
  });
});
