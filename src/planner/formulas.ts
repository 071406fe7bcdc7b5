/**
 * The formulas that rules may name for amounts and hours: inputs in, one number out, and the line that shows it.
 * The equations are agronomy's; here they get their name, their unit and their words.
 */
import { nitrogenProductG } from '../agronomy/feed.js';
import { machineHours, workRateHaPerH } from '../agronomy/labour.js';
import { limeProductG } from '../agronomy/lime.js';
import { patchySeedMassG } from '../agronomy/seed.js';
import { splitUnderCap } from '../agronomy/split.js';
import { layerL, layersNeeded } from '../agronomy/top-dressing.js';
import { bothUnits, plainNumber, quantity, roughQuantity } from '../base/quantity-words.js';
import { AREA_IN_M2, LENGTH_IN_M } from '../base/units.js';
import type { Units } from '../base/us-units.js';

export type Inputs = Readonly<Record<string, number>>;

export interface Formula {
  /** Without these there is no amount. */
  readonly needs: readonly string[];
  /** Given where they are known. */
  readonly takes?: readonly string[];
  readonly unit: 'material' | 'h';
  /** The amount stands on the product's label and is never computed. */
  readonly onLabelOnly?: boolean;
  readonly compute: (inputs: Inputs) => number;
  readonly working: (inputs: Inputs, said: Said) => string;
  /** What more the reader must know about this amount. */
  readonly remark?: (inputs: Inputs, units: Units) => string | null;
}

/** What a working ends in, and how its numbers are to be said. */
export interface Said {
  readonly result: string;
  /** Of the material: g, mL or L, or loose litres. */
  readonly unit: string;
  readonly units: Units;
}

const area = (inputs: Inputs, units: Units): string => quantity(at(inputs, 'areaM2'), 'm2', units);

/** A layer over an area, with the factor that lets a reader follow it: `84 m² × 4 mm = 336 L (1 mm is 1 L/m²)`. */
function layerWorking(inputs: Inputs, { result, unit, units }: Said): string {
  const layer = `${area(inputs, units)} × ${quantity(at(inputs, 'depthMm'), 'mm', units)} = ${result}`;
  if (units === 'metric') return `${layer} (1 mm is 1 L/m²)`;
  const perInch = quantity(LITRES_OF_INCH_ON_1000_FT2, unit, units);
  return `${layer} (1 in on 1000 ft² is ${perInch})`;
}

/** 1 in on 1000 ft², in litres: 1 mm on 1 m² is 1 L. */
const LITRES_OF_INCH_ON_1000_FT2 = (LENGTH_IN_M.in / LENGTH_IN_M.mm) * 1000 * AREA_IN_M2.ft2;

/** So much on each square metre; what is itself an area is so many times the area. */
const rate = (perM2: number, unit: string, units: Units): string =>
  unit === 'm2' ? plainNumber(perM2) : quantity(perM2, `${unit}/m2`, units);

function at(inputs: Inputs, name: string): number {
  const value = inputs[name];
  if (value === undefined) throw new RangeError(`the formula was not given ${name}`);
  return value;
}

export const FORMULAS: Readonly<Record<string, Formula>> = {
  rate: {
    needs: ['areaM2', 'ratePerM2'],
    unit: 'material',
    compute: (inputs) => at(inputs, 'areaM2') * at(inputs, 'ratePerM2'),
    working: (inputs, { result, unit, units }) =>
      `${area(inputs, units)} × ${rate(at(inputs, 'ratePerM2'), unit, units)} = ${result}`,
  },
  depth: {
    needs: ['areaM2', 'depthMm'],
    unit: 'material',
    compute: (inputs) => layerL({ areaM2: at(inputs, 'areaM2'), depthMm: at(inputs, 'depthMm') }),
    working: layerWorking,
  },
  'top-dressing': {
    needs: ['areaM2', 'depthMm', 'bulkDensityTPerM3', 'capMm'],
    unit: 'material',
    compute: (inputs) => layerL({ areaM2: at(inputs, 'areaM2'), depthMm: at(inputs, 'depthMm') }),
    working: layerWorking,
    remark: (inputs, units) => {
      const litres = at(inputs, 'areaM2') * at(inputs, 'depthMm');
      const layers = layersNeeded({ depthMm: at(inputs, 'depthMm'), limitMm: at(inputs, 'capMm') }).count;
      const kg = litres * at(inputs, 'bulkDensityTPerM3');
      return `That weighs about ${roughQuantity(kg * 1000, 'g', units)}.${layers > 1 ? ` In ${layers} layers, weeks apart.` : ''}`;
    },
  },
  'seed-two-rates': {
    needs: ['areaM2', 'overRateGPerM2', 'newRateGPerM2', 'bareFraction'],
    unit: 'material',
    compute: (inputs) =>
      patchySeedMassG({
        areaM2: at(inputs, 'areaM2'),
        overseedRateGPerM2: overRateOf(inputs),
        newRateGPerM2: at(inputs, 'newRateGPerM2'),
        bareFraction: at(inputs, 'bareFraction'),
      }),
    working: (inputs, { result, units }) => {
      const [over, fresh, bare] = [
        overRateOf(inputs),
        at(inputs, 'newRateGPerM2'),
        at(inputs, 'bareFraction'),
      ];
      if (bare === 1) return `${area(inputs, units)} × ${rate(fresh, 'g', units)} = ${result}`;
      const percent = `${Math.round(bare * 100)} %`;
      return `${area(inputs, units)} × (${rate(over, 'g', units)} everywhere + ${percent} × ${rate(fresh - over, 'g', units)} more where no grass stands) = ${result}`;
    },
  },
  'nitrogen-product': {
    needs: ['areaM2', 'nitrogenGPerM2', 'bagPercent', 'capGPerM2'],
    unit: 'material',
    compute: (inputs) =>
      nitrogenProductG({
        areaM2: at(inputs, 'areaM2'),
        nitrogenGPerM2: cappedNitrogen(inputs),
        nitrogenFraction: at(inputs, 'bagPercent') / 100,
      }),
    working: (inputs, { result, units }) =>
      `${area(inputs, units)} × ${rate(cappedNitrogen(inputs), 'g', units)} of nitrogen ÷ ${plainNumber(at(inputs, 'bagPercent'))} % nitrogen in the bag = ${result}`,
    remark: (inputs, units) =>
      `Never more than ${rate(at(inputs, 'capGPerM2'), 'g', units)} of nitrogen at one time.`,
  },
  lime: {
    needs: ['areaM2', 'limeGPerM2', 'neutralisingFraction', 'capGPerM2'],
    unit: 'material',
    compute: (inputs) =>
      limeProductG({
        areaM2: at(inputs, 'areaM2'),
        limeGPerM2: at(inputs, 'limeGPerM2'),
        neutralisingFraction: at(inputs, 'neutralisingFraction'),
      }),
    working: (inputs, { result, units }) =>
      `${area(inputs, units)} × ${rate(at(inputs, 'limeGPerM2'), 'g', units)} ÷ ${plainNumber(at(inputs, 'neutralisingFraction') * 100)} % neutralising value = ${result}`,
    remark: (inputs) => {
      const { count } = splitUnderCap({ total: at(inputs, 'limeGPerM2'), cap: at(inputs, 'capGPerM2') });
      return count > 1 ? `In ${count} dressings, months apart.` : null;
    },
  },
  'label-dose': {
    needs: ['areaM2', 'ratePerM2'],
    takes: ['waterLPerM2', 'tankL', 'budgetPerM2'],
    unit: 'material',
    compute: (inputs) => at(inputs, 'areaM2') * at(inputs, 'ratePerM2'),
    working: (inputs, { result, unit, units }) => {
      const perM2 = at(inputs, 'ratePerM2');
      return `${area(inputs, units)} × ${bothUnits(rate(perM2, unit, 'metric'), perM2, `${unit}/m2`, units)} by your label = ${result}`;
    },
  },
  'label-only': {
    needs: ['areaM2'],
    takes: ['budgetPerM2'],
    unit: 'material',
    onLabelOnly: true,
    compute: () => 0,
    working: () => '',
  },
  'hand-hours': {
    needs: ['areaM2', 'm2PerH'],
    unit: 'h',
    compute: (inputs) => at(inputs, 'areaM2') / at(inputs, 'm2PerH'),
    working: (inputs, { result, units }) =>
      `${area(inputs, units)} ÷ ${quantity(at(inputs, 'm2PerH'), 'm2/h', units)} = ${result}`,
  },
  'machine-or-hand-hours': {
    needs: ['areaM2', 'widthM', 'speedKmPerH', 'efficiencyFraction', 'passes', 'byHand', 'm2PerH'],
    unit: 'h',
    compute: (inputs) =>
      at(inputs, 'byHand') === 1 ? at(inputs, 'areaM2') / at(inputs, 'm2PerH') : hoursByMachine(inputs),
    working: (inputs, { result, units }) => `${area(inputs, units)} = ${result}`,
  },
};

/** Standing grass is never sown thicker than bare ground. */
const overRateOf = (inputs: Inputs): number =>
  Math.min(at(inputs, 'overRateGPerM2'), at(inputs, 'newRateGPerM2'));

const cappedNitrogen = (inputs: Inputs): number =>
  Math.min(at(inputs, 'nitrogenGPerM2'), at(inputs, 'capGPerM2'));

function hoursByMachine(inputs: Inputs): number {
  return machineHours({
    areaM2: at(inputs, 'areaM2'),
    capacityHaPerH: workRateHaPerH({
      widthM: at(inputs, 'widthM'),
      speedKmPerH: at(inputs, 'speedKmPerH'),
      efficiencyFraction: at(inputs, 'efficiencyFraction'),
    }),
    passCount: Math.max(1, Math.round(at(inputs, 'passes'))),
  });
}
