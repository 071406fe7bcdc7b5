/** Reads plain numbers: `1,5`, `1 234`, `2 1/2`, `½`, `about 100`. */

import { parse } from './readings.js';
import { type Parsed, type Reading, unclear } from './result.js';
import { tokens } from './tokens.js';

/**
 * A plain number. A point or a comma may be the decimal sign; `1,234` is asked about.
 *
 * @param typed as typed
 */
export function parseNumber(typed: string): Parsed<'number'> {
  return parse(typed, 'number', readNumber, '');
}

/** One number and nothing else, perhaps with a sign before it. */
export function readNumber(text: string): Reading {
  const list = tokens(text) ?? [];
  const minus = list[0]?.kind === 'sign' && list[0].text === '-';
  const plus = list[0]?.kind === 'sign' && list[0].text === '+';
  const [number, ...rest] = minus || plus ? list.slice(1) : list;
  if (number?.kind !== 'number' || rest.length > 0) {
    return unclear('That is not a plain number. Type it like 12, 12.5 or 1/2.');
  }
  const echo = `${minus ? '-' : ''}${number.text}`;
  return { ok: true, value: minus ? -number.value : number.value, echo };
}
