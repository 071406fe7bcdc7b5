/** Evenness and cover, counted in the field: cans under a sprinkler, points under a pin. */
import { pointCover } from '../agronomy/cover.js';
import { christiansenUniformity, lowQuarterUniformity } from '../agronomy/sprinkler.js';
import { out, put, sum } from './figure-text.js';
import { key, list, numbers, plain, type Reckoner, several } from './reckoner.js';

const sprinkler: Reckoner = {
  name: 'sprinkler',
  says: 'how evenly a sprinkler waters, from like cans set out under it',
  keys: [
    key(
      'catchesMl',
      ['number', 'mL'],
      'what each can caught',
      'four or more cans, each 0 or more, not all 0',
      several,
    ),
  ],
  equation:
    'low-quarter uniformity = mean of the lowest quarter of the cans, rounded up ÷ mean of all; coefficient = 1 − sum of |catch − mean| ÷ (cans × mean)',
  sources: [
    { id: 'spreval-manual', at: 'distribution uniformity, low quarter, and Christiansen coefficient' },
  ],
  compute: (given) => {
    const catches = list(given, 'catchesMl');
    const value = lowQuarterUniformity(catches);
    const sorted = [...catches].sort((a, b) => a - b);
    const lowest = sorted.slice(0, Math.ceil(sorted.length / 4)).map(put);
    const mean = put(catches.reduce((total, each) => total + each, 0) / catches.length);
    return {
      value,
      unit: 'fraction',
      working: `(${sum(lowest)}) ÷ ${lowest.length} ÷ ${mean} = ${out(value, 'fraction')}`,
      more: { coefficient: { value: christiansenUniformity(catches), unit: 'fraction' } },
    };
  },
};

const plugCover: Reckoner = {
  name: 'plug-cover',
  says: 'share of cover from points looked at one by one: hits out of points',
  keys: [
    key('hits', plain('count'), 'points at which it was met', 'a whole number from 0 to points'),
    key('points', plain('count'), 'points in all', 'a whole number, 1 or more'),
  ],
  equation:
    'cover p = hits ÷ points n; 95 % interval by Wilson: (p + z² ÷ 2n ± z × √(p × (1 − p) ÷ n + z² ÷ 4n²)) ÷ (1 + z² ÷ n), z = 1.96',
  sources: [{ id: 'idaho-cover-points', at: 'cover from points; the interval by its definition' }],
  compute: (given) => {
    const counts = numbers(given, 'hits', 'points');
    const { fraction, lowFraction, highFraction } = pointCover(counts);
    const [low, high] = [lowFraction, highFraction].map((end) => out(end, 'fraction'));
    return {
      value: fraction,
      unit: 'fraction',
      working: `${counts.hits} ÷ ${counts.points} = ${out(fraction, 'fraction')}, ${low} to ${high}`,
      more: {
        low: { value: lowFraction, unit: 'fraction' },
        high: { value: highFraction, unit: 'fraction' },
      },
      notes: [
        'In 95 of 100 such counts the true share lies between low and high, if the points are well apart.',
      ],
    };
  },
};

export const COVER_RECKONERS: readonly Reckoner[] = [sprinkler, plugCover];
