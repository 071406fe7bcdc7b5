import { describe, expect, it } from 'vitest';
import { parseMass, parseVolume } from '../../../src/base/quantity/amount.js';
import { notUnderstood, offered, understood } from './results.js';

// US gallon 3.785411784 L, UK gallon 4.54609 L, pound 453.59237 g, exact by definition; values by hand.
describe('parseVolume', () => {
  it.each([
    ['5', 5],
    ['5 l', 5],
    ['5 litres', 5],
    ['500 ml', 0.5],
    ['500 mL', 0.5],
    ['0.5 m3', 500],
    ['2 US gal', 7.570823568],
    ['2 u.s. gallons', 7.570823568],
    ['2 gallons (US)', 7.570823568],
    ['2 UK gal', 9.09218],
    ['2 imperial gallons', 9.09218],
    ['2 imp. gal.', 9.09218],
    ['1 cubic yard', 764.554857984],
  ])('reads "%s" as %d L', (typed, value) => {
    expect(understood(parseVolume(typed)).value).toBeCloseTo(value, 8);
  });

  it('asks which gallon, pint, quart or fluid ounce', () => {
    expect(offered(parseVolume('2 gal'))).toEqual(['2 US gal', '2 UK gal']);
    expect(offered(parseVolume('2 pints'))).toEqual(['2 US pint', '2 UK pint']);
    expect(offered(parseVolume('1 quart'))).toEqual(['1 US quart', '1 UK quart']);
    expect(offered(parseVolume('6 fl oz'))).toEqual(['6 US fl oz', '6 UK fl oz']);
    expect(notUnderstood(parseVolume('2 gal')).choices?.map(({ understood: line }) => line)).toEqual([
      '2 US gal = 7.57 L',
      '2 UK gal = 9.09 L',
    ]);
  });

  it('does not take an ounce of weight for a fluid ounce', () => {
    expect(notUnderstood(parseVolume('6 oz')).reason).toContain('An ounce alone is a weight');
    expect(notUnderstood(parseVolume('3 kg')).reason).toContain('"kg" is a weight');
    expect(notUnderstood(parseVolume('3 buckets')).reason).toContain('"buckets" is not a volume');
  });

  it('takes a bare number in the unit it is told', () => {
    expect(understood(parseVolume('2', 'US gal')).value).toBeCloseTo(7.570823568, 9);
  });

  it.each(['', 'two buckets', '5 l 3 ml', '-5 l'])('refuses "%s"', (typed) => {
    notUnderstood(parseVolume(typed));
  });
});

describe('parseMass', () => {
  it.each([
    ['25', 25_000],
    ['25 kg', 25_000],
    ['500 g', 500],
    ['1 lb', 453.59237],
    ['16 oz', 453.59237],
  ])('reads "%s" as %d g', (typed, value) => {
    expect(understood(parseMass(typed)).value).toBeCloseTo(value, 8);
  });
  it('does not take a volume', () => {
    expect(notUnderstood(parseMass('2 US fl oz')).reason).toContain('That is a volume');
    expect(notUnderstood(parseMass('2 l')).reason).toContain('That is a volume');
    expect(notUnderstood(parseMass('2 sacks')).reason).toContain('"sacks" is not a weight');
  });
});
