import { describe, expect, it } from 'vitest';
import { parseMassRate, parseVolumeRate } from '../../../src/base/quantity/rate.js';
import { notUnderstood, offered, understood } from './results.js';

// By hand from the exact definitions: 1 lb/1,000 ft² is 4.88243 g/m², 1 oz/yd² 33.906 g/m²,
// 1 US fl oz/1,000 ft² 0.31833 mL/m², 1 US gal/1,000 ft² 40.746 mL/m².
const near = (value: number, byHand: number) => expect(Math.abs(value / byHand - 1)).toBeLessThan(2e-5);

describe('parseMassRate', () => {
  it.each([
    ['35', 35],
    ['35 g/m2', 35],
    ['35g per m²', 35],
    ['35 g / sq m', 35],
    ['35 grams per square metre', 35],
    ['0.75 lb/1000 ft2', 0.75 * 4.88243],
    ['3/4 lb per 1,000 sq ft', 0.75 * 4.88243],
    ['1 oz/sq yd', 33.906],
    ['1 ounce per square yard', 33.906],
    ['16 oz/1000 ft2', 4.88243],
    ['3 kg/100 m2', 30],
    ['20 kg/ha', 2],
    ['100 lb/acre', 11.2085],
  ])('reads "%s" as %d g/m²', (typed, byHand) => near(understood(parseMassRate(typed)).value, byHand));

  it('shows how it was read', () => {
    expect(understood(parseMassRate('3/4 lb per 1,000 sq ft')).understood).toBe(
      '3/4 lb/1000 ft2 = 3.66 g/m2',
    );
    expect(understood(parseMassRate('35')).understood).toBe('35 g/m2');
  });

  it('takes a bare number in the unit it is told', () => {
    near(understood(parseMassRate('2', 'lb/1000 ft2')).value, 2 * 4.88243);
  });

  it.each([
    ['6 fl oz/1000 ft2', 'That is a volume'],
    ['35 ml/m2', 'That is a volume'],
    ['35 g', 'not a rate over an area'],
    ['35 g/m2/week', 'not a rate over an area'],
    ['10 lb/1000', 'Per 1000 of what?'],
    ['35 g/m', 'That is a length'],
    ['35 g/0 m2', 'no area at all'],
    ['35/m2', 'needs a unit'],
    ['-5 g/m2', 'below 0'],
  ])('refuses "%s"', (typed, reason) => {
    expect(notUnderstood(parseMassRate(typed)).reason).toContain(reason);
  });
});

describe('parseVolumeRate', () => {
  it.each([
    ['2', 2],
    ['2 ml/m2', 2],
    ['10 L/100 m2', 100],
    ['1 l per 10 m²', 100],
    ['200 l/ha', 20],
    ['6 fl oz/1000 ft2', 6 * 0.31833],
    ['6 US fl oz per 1,000 sq ft', 6 * 0.31833],
    ['2 gal/1000 ft2', 2 * 40.746],
  ])('reads "%s" as %d mL/m²', (typed, byHand) => near(understood(parseVolumeRate(typed)).value, byHand));

  it('asks which gallon for a rate by the acre, which both countries use', () => {
    expect(offered(parseVolumeRate('20 gal/acre'))).toEqual(['20 US gal/acre', '20 UK gal/acre']);
  });

  it('does not take an ounce of weight for a fluid ounce', () => {
    expect(notUnderstood(parseVolumeRate('6 oz/1000 ft2')).reason).toContain('type fl oz');
  });
});
