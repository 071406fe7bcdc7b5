import { machineHours, workRateHaPerH } from '../agronomy/labour.js';
import { sprayVolumeLPerHa } from '../agronomy/spray.js';
import { tankLoads } from '../agronomy/tank-loads.js';
import { layerKg, layerL } from '../agronomy/top-dressing.js';
import { dailyVibrationMPerS2, vibrationPoints } from '../agronomy/vibration.js';
import { plainNumber } from '../base/quantity-words.js';
import { key, maybe, number, optional, type Reckoner } from './reckoner.js';

export const WORK_RECKONERS: readonly Reckoner[] = [
  {
    name: 'spray-volume',
    says: 'water that a sprayer puts on',
    keys: [
      key('flowLPerMin', 'number', 'L/min', 'caught from the nozzle in a minute'),
      key('speedKmPerH', 'number', 'km/h', 'walking speed'),
      key('swathM', 'length', 'm', 'width sprayed'),
    ],
    equation: 'L/ha = 600 × flow ÷ (speed × swath)',
    sources: [{ id: 'hand-sprayer-volume', at: 'sprayer volume' }],
    compute: (given) => {
      const run = {
        flowLPerMin: number(given, 'flowLPerMin'),
        speedKmPerH: number(given, 'speedKmPerH'),
        swathM: number(given, 'swathM'),
      };
      const value = sprayVolumeLPerHa(run);
      return {
        value,
        unit: 'L/ha',
        working: `600 × ${run.flowLPerMin} ÷ (${run.speedKmPerH} × ${run.swathM}) = ${plainNumber(value)} L/ha`,
      };
    },
  },
  {
    name: 'tank-loads',
    says: 'sprayer loads for an area, the last one apart',
    keys: [
      key('areaM2', 'area', 'm2', 'area to treat'),
      key('waterLPerM2', 'water-rate', 'L/m2', 'water on the label'),
      key('tankL', 'volume', 'L', 'water in one fill'),
      key('rateMlPerM2', 'product-rate', 'mL/m2', 'product on the label'),
    ],
    equation:
      'water = area × water rate; full loads = whole part of water ÷ tank; product in a load = its water ÷ water rate × product rate',
    sources: [{ id: 'hse-garden-home', at: 'follow the label' }],
    compute: (given) => {
      const [areaM2, waterLPerM2, tankL, rateMlPerM2] = ['areaM2', 'waterLPerM2', 'tankL', 'rateMlPerM2'].map(
        (name) => number(given, name),
      ) as [number, number, number, number];
      const { loadCount, fullCount, full, last, total } = tankLoads({
        areaM2,
        waterLPerM2,
        tankL,
        rateMlPerM2,
      });
      const part = last ?? full;
      return {
        value: loadCount,
        unit: 'loads',
        working: `${plainNumber(areaM2)} m2 × ${plainNumber(waterLPerM2)} L/m2 = ${plainNumber(total.waterL)} L, in fills of ${plainNumber(tankL)} L`,
        more: {
          fullLoads: { value: fullCount, unit: 'loads' },
          fullWater: { value: full.waterL, unit: 'L' },
          fullProduct: { value: full.productMl, unit: 'mL' },
          lastWater: { value: part.waterL, unit: 'L' },
          lastProduct: { value: part.productMl, unit: 'mL' },
          totalWater: { value: total.waterL, unit: 'L' },
          totalProduct: { value: total.productMl, unit: 'mL' },
        },
        notes: ["Both rates are read off the product's own label, and the label decides."],
      };
    },
  },
  {
    name: 'top-dressing',
    says: 'soil or compost for a layer',
    keys: [
      key('areaM2', 'area', 'm2', 'area to cover'),
      key('depthMm', 'depth', 'mm', 'depth of the layer'),
      key('bulkDensityTPerM3', 'number', 't/m3', 'weight of the stuff, loose', optional),
    ],
    equation: 'L = m2 × mm; kg = L × t/m3',
    sources: [{ id: 'cumberland-topdressing', at: 'volume for a depth' }],
    compute: (given) => {
      const layer = { areaM2: number(given, 'areaM2'), depthMm: number(given, 'depthMm') };
      const value = layerL(layer);
      const bulkDensityTPerM3 = maybe(given, 'bulkDensityTPerM3');
      const working = `${plainNumber(layer.areaM2)} m2 × ${plainNumber(layer.depthMm)} mm = ${plainNumber(value)} L`;
      if (bulkDensityTPerM3 === undefined) return { value, unit: 'L', working };
      return {
        value,
        unit: 'L',
        working,
        more: { mass: { value: layerKg({ volumeL: value, bulkDensityTPerM3 }), unit: 'kg' } },
      };
    },
  },
  {
    name: 'work-rate',
    says: 'ground that a machine covers in an hour',
    keys: [
      key('speedKmPerH', 'number', 'km/h', 'walking speed'),
      key('widthM', 'length', 'm', 'working width'),
      key('efficiencyFraction', 'fraction', 'fraction', 'share of the time spent working'),
      key('areaM2', 'area', 'm2', 'area to work', optional),
      key('passes', 'number', 'count', 'times over', optional),
    ],
    equation: 'ha/h = speed × width × efficiency ÷ 10',
    sources: [{ id: 'field-capacity-form', at: 'effective field capacity' }],
    compute: (given) => {
      const rate = {
        speedKmPerH: number(given, 'speedKmPerH'),
        widthM: number(given, 'widthM'),
        efficiencyFraction: number(given, 'efficiencyFraction'),
      };
      const value = workRateHaPerH(rate);
      const areaM2 = maybe(given, 'areaM2');
      const working = `${rate.speedKmPerH} × ${rate.widthM} × ${rate.efficiencyFraction} ÷ 10 = ${plainNumber(value)} ha/h`;
      if (areaM2 === undefined) return { value, unit: 'ha/h', working };
      const hours = machineHours({ areaM2, capacityHaPerH: value, passCount: maybe(given, 'passes') ?? 1 });
      return { value, unit: 'ha/h', working, more: { hours: { value: hours, unit: 'h' } } };
    },
  },
  {
    name: 'vibration',
    says: 'exposure of hands to a vibrating machine',
    keys: [
      key('vibrationMPerS2', 'number', 'm/s2', 'vibration in the handbook'),
      key('hours', 'number', 'h', 'time with hands on it'),
    ],
    equation: 'points = 2 × v² × h; A(8) = v × √(h ÷ 8)',
    sources: [{ id: 'hse-vibration', at: 'exposure points, action and limit values' }],
    compute: (given, figures) => {
      const spell = { vibrationMPerS2: number(given, 'vibrationMPerS2'), hours: number(given, 'hours') };
      const value = vibrationPoints(spell);
      const [action, limit] = [figures('vibration-action-points'), figures('vibration-limit-points')];
      const standing =
        value >= limit
          ? 'Over the limit value'
          : value >= action
            ? 'Over the action value, under the limit value'
            : 'Under the action value';
      return {
        value,
        unit: 'points',
        working: `2 × ${spell.vibrationMPerS2}² × ${spell.hours} = ${plainNumber(value)} points`,
        more: { a8: { value: dailyVibrationMPerS2({ spells: [spell] }), unit: 'm/s2' } },
        notes: [
          `${standing} (${action} and ${limit} points a day, for employers in Britain; good practice at home).`,
        ],
      };
    },
  },
];
