/** What a sprayer puts on, and how many loads an area takes. */
import { sprayVolumeLPerHa } from '../agronomy/spray.js';
import { groupsOf, type TankLoad, tankLoads } from '../agronomy/tank-loads.js';
import { out, put } from './figure-text.js';
import { ABOVE_0, AREA, FROM_0, key, LENGTH, numbers, plain, type Reckoner, SPEED } from './reckoner.js';

const sprayVolume: Reckoner = {
  name: 'spray-volume',
  says: 'water that a sprayer puts on',
  keys: [
    key('flowLPerMin', plain('L/min'), 'caught from all nozzles in a minute', ABOVE_0),
    key('speedKmPerH', SPEED, 'walking speed while spraying', ABOVE_0),
    key('swathM', LENGTH, 'width wetted in one pass', ABOVE_0),
  ],
  equation: 'volume = 600 × flow ÷ (speed × swath); 600 = 60 min/h × 10 000 m2/ha ÷ 1000 m/km',
  sources: [{ id: 'hand-sprayer-volume', at: 'sprayer volume' }],
  compute: (given) => {
    const run = numbers(given, 'flowLPerMin', 'speedKmPerH', 'swathM');
    const value = sprayVolumeLPerHa(run);
    return {
      value,
      unit: 'L/ha',
      working: `600 × ${put(run.flowLPerMin)} ÷ (${put(run.speedKmPerH)} × ${put(run.swathM)}) = ${out(value, 'L/ha')}`,
      notes: ['Measure the flow and the pace with plain water in the tank.'],
    };
  },
};

const loads: Reckoner = {
  name: 'tank-loads',
  says: 'sprayer loads that fit the tank, each for a piece of the area',
  keys: [
    key('areaM2', AREA, 'area to treat', ABOVE_0),
    key('waterLPerM2', ['water-rate', 'L/m2'], 'water on the label', ABOVE_0),
    key('tankL', ['volume', 'L'], 'what the tank holds to its top mark, product included', ABOVE_0),
    key('rateMlPerM2', ['product-rate', 'mL/m2'], 'product on the label', FROM_0),
  ],
  equation:
    'water = area × water rate; product = area × product rate; loads = (water + product) ÷ tank, rounded up; a load = the whole ÷ loads, alike to 0.1 L, what is left over in the last',
  sources: [{ id: 'hse-garden-home', at: 'follow the label' }],
  compute: (given) => {
    const job = numbers(given, 'areaM2', 'waterLPerM2', 'tankL', 'rateMlPerM2');
    const { loads, total } = tankLoads(job);
    const [first, last] = [loads[0], loads.at(-1)] as [TankLoad, TankLoad];
    const count = loads.length;
    const mixL = total.waterL + total.productMl / ML_PER_L;
    const share = (load: TankLoad): string =>
      `${put(load.waterL)} L and ${put(load.productMl)} mL for ${put(load.areaM2)} m2`;
    return {
      value: count,
      unit: 'loads',
      working: [
        `${put(job.areaM2)} m2 × ${put(job.waterLPerM2)} L/m2 = ${put(total.waterL)} L of water`,
        `${put(job.areaM2)} m2 × ${put(job.rateMlPerM2)} mL/m2 = ${put(total.productMl)} mL of product`,
        `${put(mixL)} L in all in a tank of ${put(job.tankL)} L: ${count === 1 ? '1 load' : `${count} loads`}`,
        ...groupsOf(loads).map(
          ({ from, to, load }) =>
            `${from === to ? `load ${from}` : `loads ${from} to ${to}`}: ${share(load)}`,
        ),
      ].join('; '),
      more: {
        firstWater: { value: first.waterL, unit: 'L' },
        firstProduct: { value: first.productMl, unit: 'mL' },
        firstArea: { value: first.areaM2, unit: 'm2' },
        lastWater: { value: last.waterL, unit: 'L' },
        lastProduct: { value: last.productMl, unit: 'mL' },
        lastArea: { value: last.areaM2, unit: 'm2' },
        totalWater: { value: total.waterL, unit: 'L' },
        totalProduct: { value: total.productMl, unit: 'mL' },
      },
      notes: [
        "Both rates come off the product's own label, and the label decides.",
        'Mark out the ground of each load first: then it ends where its load does, and nothing is left to get rid of.',
      ],
    };
  },
};

const ML_PER_L = 1000;

export const SPRAY_RECKONERS: readonly Reckoner[] = [sprayVolume, loads];
