/** What a sprayer puts on, and how many loads an area takes. */
import { sprayVolumeLPerHa } from '../agronomy/spray.js';
import { tankLoads } from '../agronomy/tank-loads.js';
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
  says: 'sprayer loads for an area, the last one apart',
  keys: [
    key('areaM2', AREA, 'area to treat', ABOVE_0),
    key('waterLPerM2', ['water-rate', 'L/m2'], 'water on the label', ABOVE_0),
    key('tankL', ['volume', 'L'], 'water in one fill', ABOVE_0),
    key('rateMlPerM2', ['product-rate', 'mL/m2'], 'product on the label', FROM_0),
  ],
  equation:
    'water = area × water rate; full loads = whole part of water ÷ tank; last load = the rest; product in a load = its water ÷ water rate × product rate',
  sources: [{ id: 'hse-garden-home', at: 'follow the label' }],
  compute: (given) => {
    const job = numbers(given, 'areaM2', 'waterLPerM2', 'tankL', 'rateMlPerM2');
    const { loadCount, fullCount, full, last, total } = tankLoads(job);
    const part = last ?? { waterL: 0, productMl: 0 };
    const [water, rate] = [put(job.waterLPerM2), put(job.rateMlPerM2)];
    const product = (waterL: number, productMl: number): string =>
      `${put(waterL)} L ÷ ${water} L/m2 × ${rate} mL/m2 = ${out(productMl, 'mL')}`;
    return {
      value: loadCount,
      unit: 'loads',
      working: [
        `${put(job.areaM2)} m2 × ${water} L/m2 = ${out(total.waterL, 'L')}`,
        `${put(total.waterL)} L ÷ ${put(job.tankL)} L: ${fullCount} full`,
        ...(fullCount > 0 ? [`a full load: ${product(full.waterL, full.productMl)}`] : []),
        ...(last === null
          ? ['and no last load']
          : [`the last load: ${product(last.waterL, last.productMl)}`]),
      ].join('; '),
      more: {
        fullLoads: { value: fullCount, unit: 'loads' },
        fullWater: { value: full.waterL, unit: 'L' },
        fullProduct: { value: full.productMl, unit: 'mL' },
        lastWater: { value: part.waterL, unit: 'L' },
        lastProduct: { value: part.productMl, unit: 'mL' },
        totalWater: { value: total.waterL, unit: 'L' },
        totalProduct: { value: total.productMl, unit: 'mL' },
      },
      notes: [
        "Both rates come off the product's own label, and the label decides.",
        ...(last === null
          ? ['The full loads come out even: there is no part-filled last one.']
          : ['Mix the last load for its own water, so that nothing is left to get rid of.']),
      ],
    };
  },
};

export const SPRAY_RECKONERS: readonly Reckoner[] = [sprayVolume, loads];
