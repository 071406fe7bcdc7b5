/** Carrying, machine work and what it does to the hands. */
import { machineHours, workRateHaPerH } from '../agronomy/labour.js';
import { layerKg, layerL } from '../agronomy/top-dressing.js';
import { dailyVibrationMPerS2, vibrationPoints } from '../agronomy/vibration.js';
import { out, put } from './figure-text.js';
import {
  A_SHARE_ABOVE_0,
  ABOVE_0,
  AREA,
  FROM_0,
  key,
  LENGTH,
  maybe,
  numbers,
  optional,
  plain,
  type Reckoner,
  SHARE,
  SPEED,
} from './reckoner.js';

const topDressing: Reckoner = {
  name: 'top-dressing',
  says: 'soil or compost for a layer',
  keys: [
    key('areaM2', AREA, 'area to cover', ABOVE_0),
    key('depthMm', ['depth', 'mm'], 'depth of the layer', FROM_0),
    key('bulkDensityTPerM3', plain('t/m3'), 'weight of the loose stuff', ABOVE_0, optional),
  ],
  loose: true,
  equation: 'volume in L = area in m2 × depth in mm; mass in kg = L × t/m3',
  sources: [{ id: 'cumberland-topdressing', at: 'volume for a depth' }],
  compute: (given) => {
    const layer = numbers(given, 'areaM2', 'depthMm');
    const value = layerL(layer);
    const density = maybe(given, 'bulkDensityTPerM3');
    const working = `${put(layer.areaM2)} m2 × ${put(layer.depthMm)} mm = ${out(value, 'L')}`;
    if (density === undefined) return { value, unit: 'L', working };
    const massKg = layerKg({ volumeL: value, bulkDensityTPerM3: density });
    return {
      value,
      unit: 'L',
      working: `${working}; ${put(value)} L × ${put(density)} t/m3 = ${out(massKg, 'kg')}`,
      more: { mass: { value: massKg, unit: 'kg' } },
      notes: ['A damp load weighs more than a dry one.'],
    };
  },
};

const workRate: Reckoner = {
  name: 'work-rate',
  says: 'ground that a machine covers in an hour, and the hours for an area',
  keys: [
    key('speedKmPerH', SPEED, 'walking speed at work', ABOVE_0),
    key('widthM', LENGTH, 'working width', ABOVE_0),
    key('efficiencyFraction', SHARE, 'share of the time spent working, not turning', A_SHARE_ABOVE_0),
    key('areaM2', AREA, 'area to work', ABOVE_0, optional),
    key('passes', plain('count'), 'times over the whole area', 'a whole number, 1 or more', {
      ...optional,
      needs: 'areaM2',
    }),
  ],
  equation: 'rate = speed × width × efficiency ÷ 10; hours = passes × area ÷ (10 000 × rate)',
  sources: [{ id: 'field-capacity-form', at: 'effective field capacity' }],
  compute: (given) => {
    const run = numbers(given, 'speedKmPerH', 'widthM', 'efficiencyFraction');
    const value = workRateHaPerH(run);
    const areaM2 = maybe(given, 'areaM2');
    const passes = maybe(given, 'passes');
    const working = `${put(run.speedKmPerH)} × ${put(run.widthM)} × ${put(run.efficiencyFraction)} ÷ 10 = ${out(value, 'ha/h')}`;
    if (areaM2 === undefined) return { value, unit: 'ha/h', working };
    const hours = machineHours({ areaM2, capacityHaPerH: value, passCount: passes ?? 1 });
    return {
      value,
      unit: 'ha/h',
      working: `${working}; ${passes ?? 1} × ${put(areaM2)} ÷ (10 000 × ${put(value)}) = ${out(hours, 'h')}`,
      more: { hours: { value: hours, unit: 'h' } },
      notes: passes === undefined ? ['passes was not given: once over.'] : [],
    };
  },
};

const vibration: Reckoner = {
  name: 'vibration',
  says: 'exposure of the hands to a vibrating machine over a day',
  keys: [
    key('vibrationMPerS2', plain('m/s2'), "vibration at the handle, from the machine's handbook", FROM_0),
    key('hours', plain('h'), 'time with the hands on it', '0 to 24'),
  ],
  equation: 'points = 2 × v² × hours; A(8) = v × √(hours ÷ 8)',
  sources: [{ id: 'hse-vibration', at: 'exposure points, action and limit values' }],
  compute: (given, figures) => {
    const spell = numbers(given, 'vibrationMPerS2', 'hours');
    const value = vibrationPoints(spell);
    const a8 = dailyVibrationMPerS2({ spells: [spell] });
    const [v, hours] = [put(spell.vibrationMPerS2), put(spell.hours)];
    const [action, limit] = [figures('vibration-action-points'), figures('vibration-limit-points')];
    return {
      value,
      unit: 'points',
      working: `2 × ${v}² × ${hours} = ${out(value, 'points')}; A(8) = ${v} × √(${hours} ÷ 8) = ${out(a8, 'm/s2')}`,
      more: { a8: { value: a8, unit: 'm/s2' } },
      notes: [
        `${standing(value, action, limit)} (${action} and ${limit} points a day, for employers in Britain; good practice at home).`,
        'Points of several machines on one day add up.',
      ],
    };
  },
};

function standing(points: number, action: number, limit: number): string {
  if (points > limit) return 'Over the limit value: stop earlier, or share the work over days and people';
  if (points === limit) return 'At the limit value: no more today';
  return points >= action
    ? 'At or over the action value, under the limit value: take breaks'
    : 'Under the action value';
}

export const WORK_RECKONERS: readonly Reckoner[] = [topDressing, workRate, vibration];
