/** Seed, by the label. */
import { pureLiveFraction, seedMassG } from '../agronomy/seed.js';
import { out, put } from './figure-text.js';
import {
  A_SHARE,
  A_SHARE_ABOVE_0,
  ABOVE_0,
  AREA,
  FROM_0,
  key,
  maybe,
  numbers,
  optional,
  RATE,
  type Reckoner,
  SHARE,
} from './reckoner.js';

const pureLiveSeed: Reckoner = {
  name: 'pure-live-seed',
  says: 'share of a bag that is wanted seed and will grow',
  keys: [
    key('purityFraction', SHARE, 'purity on the label', A_SHARE),
    key('germinationFraction', SHARE, 'germination on the label', A_SHARE),
  ],
  equation: 'pure live share = purity × germination',
  sources: [{ id: 'lsu-pure-live-seed', at: 'calculation, steps' }],
  compute: (given) => {
    const quality = numbers(given, 'purityFraction', 'germinationFraction');
    const value = pureLiveFraction(quality);
    const working = `${put(quality.purityFraction)} × ${put(quality.germinationFraction)} = ${out(value, 'fraction')}`;
    return { value, unit: 'fraction', working };
  },
};

const seed: Reckoner = {
  name: 'seed',
  says: 'seed for an area',
  keys: [
    key('areaM2', AREA, 'area to sow', ABOVE_0),
    key('rateGPerM2', RATE, 'seed to the square metre', FROM_0),
    key('pureLiveFraction', SHARE, 'when the rate is of pure live seed', A_SHARE_ABOVE_0, optional),
  ],
  equation: 'mass = area × rate ÷ pure live share',
  sources: [
    { id: 'cornell-seeding-rates', at: 'pure live seed and rates' },
    { id: 'lsu-pure-live-seed', at: 'calculation, steps' },
  ],
  compute: (given) => {
    const { areaM2, rateGPerM2 } = numbers(given, 'areaM2', 'rateGPerM2');
    const live = maybe(given, 'pureLiveFraction');
    const value = seedMassG({ areaM2, rateGPerM2, pureLiveFraction: live });
    const divided = live === undefined ? '' : ` ÷ ${put(live)}`;
    const working = `${put(areaM2)} m2 × ${put(rateGPerM2)} g/m2${divided} = ${out(value, 'g')}`;
    return { value, unit: 'g', working };
  },
};

export const SEED_RECKONERS: readonly Reckoner[] = [pureLiveSeed, seed];
