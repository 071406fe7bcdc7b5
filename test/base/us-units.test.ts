/** US words for metric quantities. Factors are exact by definition: NIST Handbook 44 (2024), appendix C. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asShown, doseDown, doseQuantity, quantity, quantityRange } from '../../src/base/quantity-words.js';
import { inSentence } from '../../src/base/sentence-units.js';
import { LOOSE_L, usScale } from '../../src/base/us-units.js';

describe('a quantity in US units', () => {
  // NIST Handbook 44, appendix C: 453.592 37 g, 28.349 523 125 g, 0.092 903 04 m2, 3.785 411 784 L,
  // 29.573 529 562 5 mL, 28.316 846 592 L, 0.3048 m, 25.4 mm.
  it.each([
    [907.18474, 'g', '2 lb'],
    [226.796185, 'g', '8 oz'],
    [92.90304, 'm2', '1000 ft²'],
    [7.570823568, 'L', '2 gal'],
    [0.946352946, 'L', '0.25 gal'],
    [29.5735295625, 'mL', '1 fl oz'],
    [3785.411784, 'mL', '1 gal'],
    [28.316846592, LOOSE_L, '1 ft³'],
    [25.4, 'mm', '1 in'],
    [30.48, 'cm', '12 in'],
    [3.048, 'm', '10 ft'],
    [16.09344, 'km', '10 miles'],
    [100, 'C', '212 °F'],
    [-40, 'C', '-40 °F'],
    [16.09344, 'km/h', '10 mph'],
    // 1 lb on 1,000 ft2 is 4.88 g on 1 m2: the same two factors, divided.
    [453.59237 / 92.90304, 'g/m2', '1 lb/1000 ft²'],
    [29.5735295625 / 92.90304, 'mL/m2', '1 fl oz/1000 ft²'],
    [3.785411784 / 92.90304, 'L/m2', '1 gal/1000 ft²'],
    [10.7639104167, 'count/m2', '1 count/ft²'],
    [3, 'h', '3 h'],
    [12, '%', '12 %'],
  ])('%d %s is %s', (value, unit, words) => {
    expect(quantity(value, unit, 'us')).toBe(words);
  });

  it('takes the unit of the larger end for both ends of a range', () => {
    expect(quantityRange({ min: 226.796185, max: 907.18474 }, 'g', 'us')).toBe('0.5 to 2 lb');
    expect(quantityRange({ min: 0, max: 10 }, 'C', 'us')).toBe('32 to 50 °F');
  });

  it('has no US word for an hour, a share or a day, nor for a name that every object has', () => {
    for (const unit of ['h', 'd', 'fraction', 'percent', '', 'constructor', '__proto__'])
      expect(usScale(1, unit)).toBeUndefined();
  });
});

describe('a dose that a label allows', () => {
  const unit = fc.constantFrom('g', 'mL', 'L', LOOSE_L, 'm2');
  const units = fc.constantFrom('metric' as const, 'us' as const);
  /** What the words come to in the metric base unit, read back without our own code. */
  const IN_BASE: Readonly<Record<string, number>> = {
    g: 1,
    kg: 1000,
    oz: 28.349523125,
    lb: 453.59237,
    'mL of mL': 1,
    'L of mL': 1000,
    'fl oz of mL': 29.5735295625,
    'gal of mL': 3785.411784,
    L: 1,
    gal: 3.785411784,
    'ft³': 28.316846592,
    'm²': 1,
    'ft²': 0.09290304,
  };

  it('is never told as more than it is, and never a thousandth less, in either system', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 1e6, noNaN: true }), unit, units, (dose, of, system) => {
        const words = doseQuantity(dose, of, system);
        const [, figure = '', said = ''] = /^([\d.\u00a0]+) (.+)$/.exec(words) ?? [];
        const factor = IN_BASE[of === 'mL' ? `${said} of mL` : said];
        expect(factor, words).toBeDefined();
        const told = Number(figure.replace(/\u00a0/g, '')) * (factor as number);
        expect(told).toBeLessThanOrEqual(dose * (1 + 1e-9));
        expect(told).toBeGreaterThanOrEqual(dose * 0.9989);
      }),
    );
  });

  // By hand: cut off after the fourth digit.
  it.each([
    [1327.5, 1327],
    [839.8999, 839.8],
    [1.89, 1.89],
    [0, 0],
    [0.1 + 0.2, 0.3],
    [12, 12],
    [11.9999999999999, 12],
    [123_456, 123_400],
  ])('%d is cut down to %d', (value, down) => {
    expect(doseDown(value)).toBe(down);
  });
});

describe('what is shown, as a number', () => {
  it('is what the words come to, read back', () => {
    const units = fc.constantFrom('metric' as const, 'us' as const);
    const amount = fc.double({ min: 0.5, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(amount, fc.constantFrom('g', 'mL', 'L', 'm2', 'mm'), units, (value, unit, system) => {
        expect(quantity(asShown(value, unit, system), unit, system)).toBe(quantity(value, unit, system));
      }),
    );
  });
  // By hand: three digits under a thousand, whole from there on; 4000 ft2 is 371.6 m2 and stays 4000 ft2.
  it.each([
    [83.4336, 'metric', '83.4 m²'],
    [10.5, 'metric', '10.5 m²'],
    [84, 'metric', '84 m²'],
    [1234.5678, 'metric', '1235 m²'],
    [371.612, 'us', '4000 ft²'],
    [9.755, 'us', '105 ft²'],
  ] as const)('an area of %d m2 in %s units is %s', (areaM2, system, words) => {
    expect(quantity(areaM2, 'm2', system)).toBe(words);
  });
});

describe('a measure in a sentence', () => {
  // 25.4 mm to the inch, read off a tape: 1.5875 mm is 1/16 in, 3.175 mm is 1/8 in, 19.05 mm is 3/4 in.
  it.each<[number[], string, string[], string]>([
    [[1.6, 3.2], 'mm', ['1/16', '1/8'], 'in'],
    [[19], 'mm', ['3/4'], 'in'],
    [[25.4], 'mm', ['1'], 'in'],
    [[60], 'mm', ['2 3/8'], 'in'],
    [[100, 150], 'mm', ['4', '6'], 'in'],
    [[35], 'cm', ['14'], 'in'],
    [[0.01], 'mm', ['1/16'], 'in'],
    [[0], 'mm', ['0'], 'in'],
    // 5.906 ft and 6.562 ft, in halves; 15.24 m is 50 ft.
    [[1.8], 'm', ['6'], 'ft'],
    [[2], 'm', ['6 1/2'], 'ft'],
    [[15.24], 'm', ['50'], 'ft'],
    [[25], 'kg', ['55'], 'lb'],
    [[10], 'C', ['50'], '°F'],
    [[10], 'L', ['2.6'], 'gal'],
  ])('of %j %s is %j %s', (ends, metric, numbers, unit) => {
    expect(inSentence(ends, metric)).toEqual({ numbers, unit });
  });

  it('is left alone where the unit is the same everywhere', () => {
    expect(inSentence([3], 'd')).toBeUndefined();
  });

  it('in inches is never further off than half the finest part told', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 900, noNaN: true }), (mm) => {
        const words = inSentence([mm], 'mm')?.numbers[0] as string;
        const inches = words
          .split(' ')
          .map((part) => {
            const [over = '0', under = '1'] = part.split('/');
            return Number(over) / Number(under);
          })
          .reduce((sum, part) => sum + part, 0);
        const finest = mm / 25.4 < 1 ? 1 / 16 : mm / 25.4 < 3 ? 1 / 8 : mm / 25.4 < 12 ? 1 / 4 : 1;
        expect(Math.abs(inches - mm / 25.4)).toBeLessThanOrEqual(finest / 2 + 1e-9);
      }),
    );
  });
});
