import { labelNutrients, nitrogenProductG } from '../agronomy/feed.js';
import { IRON_SALTS, type IronSalt, ironFraction, ironProductGPerM2 } from '../agronomy/iron.js';
import { limeProductG, limeProductGPerM2 } from '../agronomy/lime.js';
import { pureLiveFraction, seedMassG } from '../agronomy/seed.js';
import { plainNumber } from '../base/quantity-words.js';
import { key, maybe, number, optional, type Reckoner } from './reckoner.js';

export const SEED_AND_FEED_RECKONERS: readonly Reckoner[] = [
  {
    name: 'pure-live-seed',
    says: 'share of a bag that is seed and will grow',
    keys: [
      key('purityFraction', 'fraction', 'fraction', 'purity on the label'),
      key('germinationFraction', 'fraction', 'fraction', 'germination on the label'),
    ],
    equation: 'pure live share = purity × germination',
    sources: [{ id: 'lsu-pure-live-seed', at: 'calculation, steps' }],
    compute: (given) => {
      const quality = {
        purityFraction: number(given, 'purityFraction'),
        germinationFraction: number(given, 'germinationFraction'),
      };
      const value = pureLiveFraction(quality);
      return {
        value,
        unit: 'fraction',
        working: `${quality.purityFraction} × ${quality.germinationFraction} = ${plainNumber(value)}`,
      };
    },
  },
  {
    name: 'seed',
    says: 'seed for an area',
    keys: [
      key('areaM2', 'area', 'm2', 'area to sow'),
      key('rateGPerM2', 'mass-rate', 'g/m2', 'seed to the square metre'),
      key('pureLiveFraction', 'fraction', 'fraction', 'when the rate is of pure live seed', optional),
    ],
    equation: 'mass = area × rate ÷ pure live share',
    sources: [{ id: 'cornell-seeding-rates', at: 'pure live seed and rates' }],
    compute: (given) => {
      const [areaM2, rateGPerM2] = [number(given, 'areaM2'), number(given, 'rateGPerM2')];
      const live = maybe(given, 'pureLiveFraction');
      const value = seedMassG({ areaM2, rateGPerM2, pureLiveFraction: live });
      const divided = live === undefined ? '' : ` ÷ ${live}`;
      return {
        value,
        unit: 'g',
        working: `${plainNumber(areaM2)} m2 × ${plainNumber(rateGPerM2)} g/m2${divided} = ${plainNumber(value)} g`,
      };
    },
  },
  {
    name: 'nitrogen-product',
    says: 'feed that carries a wanted dose of nitrogen',
    keys: [
      key('areaM2', 'area', 'm2', 'area to feed'),
      key('nitrogenGPerM2', 'mass-rate', 'g/m2', 'nitrogen wanted'),
      key('nitrogenFraction', 'fraction', 'fraction', 'first number on the bag ÷ 100'),
    ],
    equation: 'product = area × nitrogen wanted ÷ nitrogen in the product',
    sources: [{ id: 'purdue-ay22', at: 'label numbers are percent by weight' }],
    compute: (given) => {
      const [areaM2, nitrogenGPerM2, nitrogenFraction] = ['areaM2', 'nitrogenGPerM2', 'nitrogenFraction'].map(
        (name) => number(given, name),
      ) as [number, number, number];
      const value = nitrogenProductG({ areaM2, nitrogenGPerM2, nitrogenFraction });
      return {
        value,
        unit: 'g',
        working: `${plainNumber(areaM2)} m2 × ${plainNumber(nitrogenGPerM2)} g/m2 ÷ ${nitrogenFraction} = ${plainNumber(value)} g`,
      };
    },
  },
  {
    name: 'label-nutrients',
    says: 'what a mass of feed holds, from its three label numbers',
    keys: [
      key('massG', 'mass', 'g', 'mass of feed'),
      key('n', 'number', 'percent', 'first number: nitrogen'),
      key('p2o5', 'number', 'percent', 'second number: phosphate as P2O5'),
      key('k2o', 'number', 'percent', 'third number: potash as K2O'),
    ],
    equation: 'nutrient = mass × number ÷ 100; P = 0.436 × P2O5; K = 0.830 × K2O',
    sources: [{ id: 'purdue-ay22', at: 'label numbers are percent by weight' }],
    compute: (given) => {
      const massG = number(given, 'massG');
      const label = { n: number(given, 'n'), p2o5: number(given, 'p2o5'), k2o: number(given, 'k2o') };
      const { nG, p2o5G, k2oG, pG, kG } = labelNutrients({ massG, label });
      const grams = (value: number) => ({ value, unit: 'g' });
      return {
        value: nG,
        unit: 'g',
        working: `${plainNumber(massG)} g × ${label.n} % = ${plainNumber(nG)} g nitrogen`,
        more: { n: grams(nG), p2o5: grams(p2o5G), k2o: grams(k2oG), p: grams(pG), k: grams(kG) },
      };
    },
  },
  {
    name: 'lime',
    says: 'lime, corrected for its neutralising value',
    keys: [
      key('limeGPerM2', 'mass-rate', 'g/m2', 'lime recommended, as pure calcium carbonate'),
      key('neutralisingFraction', 'fraction', 'fraction', 'neutralising value on the bag ÷ 100'),
      key('areaM2', 'area', 'm2', 'area to lime', optional),
    ],
    equation: 'product = recommended ÷ neutralising share (× area)',
    sources: [{ id: 'penn-state-lawn-maintain', at: 'amount × 100 ÷ calcium carbonate equivalent' }],
    compute: (given) => {
      const lime = {
        limeGPerM2: number(given, 'limeGPerM2'),
        neutralisingFraction: number(given, 'neutralisingFraction'),
      };
      const areaM2 = maybe(given, 'areaM2');
      const rate = limeProductGPerM2(lime);
      const perM2 = `${plainNumber(lime.limeGPerM2)} g/m2 ÷ ${lime.neutralisingFraction}`;
      if (areaM2 === undefined)
        return { value: rate, unit: 'g/m2', working: `${perM2} = ${plainNumber(rate)} g/m2` };
      const value = limeProductG({ areaM2, ...lime });
      return {
        value,
        unit: 'g',
        working: `${plainNumber(areaM2)} m2 × ${perM2} = ${plainNumber(value)} g`,
        more: { rate: { value: rate, unit: 'g/m2' } },
      };
    },
  },
  {
    name: 'iron-product',
    says: 'iron salt that holds an amount of iron: arithmetic, never a dose',
    keys: [
      key('ironGPerM2', 'mass-rate', 'g/m2', 'iron itself'),
      key('salt', 'word', '', 'which iron sulphate', { words: IRON_SALTS }),
    ],
    equation: 'salt = iron ÷ share of iron in the salt, from atomic weights',
    sources: [{ id: 'gma-iron', at: 'sulphate of iron' }],
    compute: (given) => {
      const salt = given.salt as IronSalt;
      const ironGPerM2 = number(given, 'ironGPerM2');
      const value = ironProductGPerM2({ ironGPerM2, salt });
      const share = ironFraction(salt);
      return {
        value,
        unit: 'g/m2',
        working: `${plainNumber(ironGPerM2)} g/m2 ÷ ${plainNumber(share)} = ${plainNumber(value)} g/m2`,
        more: { ironShare: { value: share, unit: 'fraction' } },
        notes: [
          'This is arithmetic to read print with, and no instruction to dose. What goes on a lawn against moss, and how much, is on the label of an authorised product.',
        ],
      };
    },
  },
];
