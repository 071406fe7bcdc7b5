import { describe, expect, it } from 'vitest';
import { elementFraction, molarMassGPerMol } from '../../src/agronomy/atomic-weights.js';
import { ironFraction, ironProductGPerM2 } from '../../src/agronomy/iron.js';
import { convert, MASS_RATE_IN_G_PER_M2 } from '../../src/base/units.js';
import { expectPrinted } from './printed.js';

// Source: IUPAC abridged standard atomic weights (Fe 55.845, S 32.06, O 15.999, H 1.008), added up by hand.
describe('iron(II) sulphate from atomic weights', () => {
  it.each([
    ['FeSO₄·7H₂O', { Fe: 1, S: 1, O: 11, H: 14 }, '278.006'],
    ['FeSO₄·H₂O', { Fe: 1, S: 1, O: 5, H: 2 }, '169.916'],
    ['FeSO₄', { Fe: 1, S: 1, O: 4 }, '151.901'],
  ] as const)('%s weighs %3$s g/mol', (_, formula, printed) => {
    expectPrinted(molarMassGPerMol(formula), printed);
  });
  it.each([
    ['heptahydrate', '20.088'],
    ['monohydrate', '32.866'],
    ['anhydrous', '36.764'],
  ] as const)('%s is %s %% iron', (salt, percent) => {
    expectPrinted(100 * ironFraction(salt), percent);
  });
  it('the heptahydrate is 11.53 % sulphur', () => {
    expectPrinted(100 * elementFraction({ Fe: 1, S: 1, O: 11, H: 14 }, 'S'), '11.53');
  });
  it('a gram of the monohydrate holds as much iron as 1.636 g of the heptahydrate', () => {
    expectPrinted(ironFraction('monohydrate') / ironFraction('heptahydrate'), '1.636');
  });
});

// Source of the dose: Oregon State trials (Cook et al.), as quoted by a putting-green page: 0.2 lb of iron
// per 1,000 ft². The products are that dose divided by the shares above, by hand.
describe('0.2 lb of iron per 1,000 ft²', () => {
  const ironGPerM2 = convert(MASS_RATE_IN_G_PER_M2, 0.2, { from: 'lb/1000 ft2', to: 'g/m2' });
  it.each([
    ['heptahydrate', '0.9956', '4.86'],
    ['monohydrate', '0.6085', '2.97'],
  ] as const)('is %2$s lb of the %1$s, %3$s g/m²', (salt, pounds, grams) => {
    const productGPerM2 = ironProductGPerM2({ ironGPerM2, salt });
    expectPrinted(productGPerM2, grams);
    expectPrinted(convert(MASS_RATE_IN_G_PER_M2, productGPerM2, { from: 'g/m2', to: 'lb/1000 ft2' }), pounds);
  });
  it('is 15.93 oz of the heptahydrate', () => {
    const productGPerM2 = ironProductGPerM2({ ironGPerM2, salt: 'heptahydrate' });
    expectPrinted(
      convert(MASS_RATE_IN_G_PER_M2, productGPerM2, { from: 'g/m2', to: 'oz/1000 ft2' }),
      '15.93',
    );
  });
});

// Sources: Michigan State 1998 (2 to 5 oz) and a 2003 garden column (4 lb), both per 1,000 ft² of iron salt.
describe('ounces and pounds of iron salt per 1,000 ft²', () => {
  it('4 oz and 4 lb are 1.22 and 19.53 g/m²: a slip from one to the other is sixteenfold', () => {
    const ounces = convert(MASS_RATE_IN_G_PER_M2, 4, { from: 'oz/1000 ft2', to: 'g/m2' });
    const pounds = convert(MASS_RATE_IN_G_PER_M2, 4, { from: 'lb/1000 ft2', to: 'g/m2' });
    expectPrinted(ounces, '1.22');
    expectPrinted(pounds, '19.53');
    expect(pounds / ounces).toBeCloseTo(16, 9);
  });
});
