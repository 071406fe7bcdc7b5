import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseMass, parseVolume } from '../../../src/base/quantity/amount.js';
import { parseArea } from '../../../src/base/quantity/area.js';
import { parseFraction } from '../../../src/base/quantity/fraction.js';
import { parseDepth, parseLength } from '../../../src/base/quantity/length.js';
import { parseNumber } from '../../../src/base/quantity/number.js';
import { parseMassRate, parseVolumeRate } from '../../../src/base/quantity/rate.js';
import type { Parsed } from '../../../src/base/quantity/result.js';
import { parseTemperature } from '../../../src/base/quantity/temperature.js';

type Reader = (typed: string) => Parsed<string>;
const MAY_BE_BELOW_0 = new Set<Reader>([parseNumber, parseTemperature]);
const READERS: readonly (readonly [string, Reader])[] = [
  ['parseNumber', parseNumber],
  ['parseLength', parseLength],
  ['parseDepth', parseDepth],
  ['parseArea', parseArea],
  ['parseMass', parseMass],
  ['parseVolume', parseVolume],
  ['parseMassRate', parseMassRate],
  ['parseVolumeRate', parseVolumeRate],
  ['parseFraction', parseFraction],
  ['parseTemperature', parseTemperature],
];

const PIECES = [
  '1',
  '12',
  '1,234',
  '0.5',
  '1/2',
  '½',
  '-',
  ' ',
  ' ',
  'x',
  '/',
  '%',
  "'",
  '"',
  '.',
  ',',
  'm',
  'm2',
  'sq ft',
  'ft',
  'in',
  'yd',
  'acre',
  'g',
  'kg',
  'lb',
  'oz',
  'fl oz',
  'gal',
  'US gal',
  'pint',
  'l',
  'ml',
  'half',
  'a third',
  'about',
  'per',
  '1000',
  '1,000',
  'C',
  '°F',
  'constructor',
  '__proto__',
  'toString',
];
const text = fc.oneof(
  fc.string({ maxLength: 40 }),
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 8 }).map((pieces) => pieces.join('')),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 8 }).map((pieces) => pieces.join(' ')),
);

describe.each(READERS)('%s, whatever is typed', (_, read) => {
  it('gives a real value with its reading, or a reason', () => {
    fc.assert(
      fc.property(text, (typed) => {
        const result = read(typed);
        if (result.ok) {
          expect(Number.isFinite(result.value)).toBe(true);
          if (!MAY_BE_BELOW_0.has(read)) expect(result.value).toBeGreaterThanOrEqual(0);
          expect(result.understood).not.toBe('');
        } else {
          expect(result.reason).toMatch(/[.?]$/);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('offers only choices that say the same when they are typed', () => {
    fc.assert(
      fc.property(text, (typed) => {
        const result = read(typed);
        if (result.ok) return;
        for (const choice of result.choices ?? []) {
          expect(read(choice.typed)).toMatchObject({ ok: true, value: choice.value });
        }
        if (result.choices !== undefined) expect(result.choices.length).toBeGreaterThan(1);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a number typed with a unit', () => {
  it('comes back as it went in', () => {
    const value = fc.integer({ min: 1, max: 9_999_999 }).map((tenThousandths) => tenThousandths / 10_000);
    fc.assert(
      fc.property(value, (amount) => {
        const decimal = amount.toFixed(4);
        expect(parseLength(`${decimal} m`)).toMatchObject({ ok: true, value: amount });
        expect(parseArea(`${decimal.replace('.', ',')} m2`)).toMatchObject({ ok: true, value: amount });
        expect(parseMassRate(`${decimal} g/m2`)).toMatchObject({ ok: true, value: amount });
      }),
    );
  });
});
