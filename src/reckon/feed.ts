/** Feed, lime and iron, by the label. */
import { K_PER_K2O, labelNutrients, nitrogenProductG, P_PER_P2O5 } from '../agronomy/feed.js';
import { IRON_SALTS, type IronSalt, ironFraction, ironProductGPerM2 } from '../agronomy/iron.js';
import { limeProductG, limeProductGPerM2 } from '../agronomy/lime.js';
import { out, put } from './figure-text.js';
import {
  A_SHARE_ABOVE_0,
  ABOVE_0,
  AREA,
  FROM_0,
  key,
  maybe,
  number,
  numbers,
  optional,
  RATE,
  type Reckoner,
  SHARE,
  WORD,
} from './reckoner.js';

const PERCENT = ['percent', 'percent'] as const;
const A_PERCENT = '0 to 100, the three together at most 100';

const nitrogenProduct: Reckoner = {
  name: 'nitrogen-product',
  says: 'feed that carries a wanted amount of nitrogen',
  keys: [
    key('areaM2', AREA, 'area to feed', ABOVE_0),
    key('nitrogenGPerM2', RATE, 'nitrogen wanted', FROM_0),
    key('nitrogenFraction', SHARE, 'first number on the bag ÷ 100', A_SHARE_ABOVE_0),
  ],
  equation: 'product = area × nitrogen wanted ÷ share of nitrogen in the product',
  sources: [{ id: 'purdue-ay22', at: 'label numbers are percent by weight' }],
  compute: (given) => {
    const feed = numbers(given, 'areaM2', 'nitrogenGPerM2', 'nitrogenFraction');
    const value = nitrogenProductG(feed);
    const wanted = `${put(feed.areaM2)} m2 × ${put(feed.nitrogenGPerM2)} g/m2`;
    return { value, unit: 'g', working: `${wanted} ÷ ${put(feed.nitrogenFraction)} = ${out(value, 'g')}` };
  },
};

const labelNumbers: Reckoner = {
  name: 'label-nutrients',
  says: 'what a mass of feed holds, from its three label numbers; nitrogen is the headline',
  keys: [
    key('massG', ['mass', 'g'], 'mass of feed', FROM_0),
    key('n', PERCENT, 'first number: nitrogen', A_PERCENT),
    key('p2o5', PERCENT, 'second number: phosphate as P2O5', A_PERCENT),
    key('k2o', PERCENT, 'third number: potash as K2O', A_PERCENT),
  ],
  equation: `nutrient = mass × number ÷ 100; P = ${out(P_PER_P2O5, 'fraction')} × P2O5; K = ${out(K_PER_K2O, 'fraction')} × K2O`,
  sources: [
    { id: 'purdue-ay22', at: 'label numbers are percent by weight' },
    { id: 'ifa-conversion-factors', at: 'P2O5 to P and K2O to K' },
  ],
  compute: (given) => {
    const massG = number(given, 'massG');
    const label = numbers(given, 'n', 'p2o5', 'k2o');
    const { nG, p2o5G, k2oG, pG, kG } = labelNutrients({ massG, label });
    const grams = (value: number) => ({ value, unit: 'g' });
    const part = (name: string, percent: number, value: number): string =>
      `${name}: ${put(massG)} g × ${put(percent)} ÷ 100 = ${out(value, 'g')}`;
    return {
      value: nG,
      unit: 'g',
      working: [
        part('N', label.n, nG),
        part('P2O5', label.p2o5, p2o5G),
        part('K2O', label.k2o, k2oG),
        `P: ${out(P_PER_P2O5, 'fraction')} × ${put(p2o5G)} g = ${out(pG, 'g')}`,
        `K: ${out(K_PER_K2O, 'fraction')} × ${put(k2oG)} g = ${out(kG, 'g')}`,
      ].join('; '),
      more: { n: grams(nG), p2o5: grams(p2o5G), k2o: grams(k2oG), p: grams(pG), k: grams(kG) },
    };
  },
};

const lime: Reckoner = {
  name: 'lime',
  says: 'lime, corrected for its neutralising value',
  keys: [
    key('limeGPerM2', RATE, 'lime that the soil test asks for, as pure calcium carbonate', FROM_0),
    key(
      'neutralisingFraction',
      SHARE,
      'neutralising value on the bag ÷ 100',
      'above 0, at most 2 (burnt lime passes 1)',
    ),
    key('areaM2', AREA, 'area to lime', ABOVE_0, optional),
  ],
  equation: 'product = lime asked for ÷ neutralising share (× area)',
  sources: [{ id: 'penn-state-lawn-maintain', at: 'amount × 100 ÷ calcium carbonate equivalent' }],
  compute: (given) => {
    const wanted = numbers(given, 'limeGPerM2', 'neutralisingFraction');
    const areaM2 = maybe(given, 'areaM2');
    const rate = limeProductGPerM2(wanted);
    const perM2 = `${put(wanted.limeGPerM2)} g/m2 ÷ ${put(wanted.neutralisingFraction)}`;
    if (areaM2 === undefined) {
      return { value: rate, unit: 'g/m2', working: `${perM2} = ${out(rate, 'g/m2')}` };
    }
    const value = limeProductG({ areaM2, ...wanted });
    return {
      value,
      unit: 'g',
      working: `${put(areaM2)} m2 × ${perM2} = ${out(value, 'g')}`,
      more: { rate: { value: rate, unit: 'g/m2' } },
    };
  },
};

const ironProduct: Reckoner = {
  name: 'iron-product',
  says: 'iron sulphate that holds an amount of iron: arithmetic, never a dose',
  keys: [
    key('ironGPerM2', RATE, 'iron itself', FROM_0),
    key('salt', WORD, 'which iron sulphate', IRON_SALTS.join(', '), { words: IRON_SALTS }),
  ],
  equation:
    'salt = iron ÷ share of iron in the salt; share = Fe ÷ (FeSO4 + its water), with Fe 55.845, S 32.06, O 15.999, H 1.008 (IUPAC, rounded)',
  sources: [
    { id: 'putting-green-moss-trials', at: 'molar mass 278 of the heptahydrate' },
    { id: 'hse-garden-home', at: 'follow the label' },
  ],
  compute: (given) => {
    const salt = given.salt as IronSalt;
    const ironGPerM2 = number(given, 'ironGPerM2');
    const value = ironProductGPerM2({ ironGPerM2, salt });
    const share = ironFraction(salt);
    return {
      value,
      unit: 'g/m2',
      working: `${put(ironGPerM2)} g/m2 ÷ ${out(share, 'fraction')} = ${out(value, 'g/m2')}`,
      more: { ironShare: { value: share, unit: 'fraction' } },
      notes: [
        'This is arithmetic to read a label with, and no instruction to dose. What goes on a lawn against moss, and how much, is on the label of an authorised product, and the label decides.',
      ],
    };
  },
};

export const FEED_RECKONERS: readonly Reckoner[] = [nitrogenProduct, labelNumbers, lime, ironProduct];
