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
import {
  asShown,
  plainNumber,
  quantity,
  quantityRoundedDown,
  roughQuantity,
} from '../base/quantity-words.js';
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
  /** The inputs as the working prints them: from these a reader comes to the result. */
  readonly printed: (inputs: Inputs, said: Said) => Inputs;
  /** What is spread evenly over the whole, where the amount goes on in passes; the rest is for bare ground. */
  readonly everywhere?: (inputs: Inputs) => number;
  /** What more the reader must know about this amount. */
  readonly remark?: (inputs: Inputs, units: Units) => string | null;
}

/** What a working ends in, and how its numbers are to be said. */
export interface Said {
  readonly result: string;
  /** Of the material: g, mL or L, or loose litres. */
  readonly unit: string;
  readonly units: Units;
  /** Significant digits of what is multiplied. */
  readonly digits: number;
}

const area = (inputs: Inputs, { units, digits }: Said): string =>
  quantity(at(inputs, 'areaM2'), 'm2', units, digits);

const shownArea = (inputs: Inputs, { units, digits }: Said): number =>
  asShown(at(inputs, 'areaM2'), 'm2', units, digits);

/** A layer over an area, with the factor that lets a reader follow it: `84 m² × 4 mm = 336 L (1 mm is 1 L/m²)`. */
function layerWorking(inputs: Inputs, said: Said): string {
  const { result, unit, units, digits } = said;
  const layer = `${area(inputs, said)} × ${quantity(at(inputs, 'depthMm'), 'mm', units, digits)} = ${result}`;
  if (units === 'metric') return `${layer} (1 mm is 1 L/m²)`;
  const perInch = quantity(LITRES_OF_INCH_ON_1000_FT2, unit, units, digits);
  return `${layer} (1 in on 1000 ft² is ${perInch})`;
}

function printedLayer(inputs: Inputs, said: Said): Inputs {
  const { unit, units, digits } = said;
  const factor =
    units === 'metric'
      ? 1
      : asShown(LITRES_OF_INCH_ON_1000_FT2, unit, units, digits) / LITRES_OF_INCH_ON_1000_FT2;
  const depthMm = asShown(at(inputs, 'depthMm'), 'mm', units, digits) * factor;
  return { ...inputs, areaM2: shownArea(inputs, said), depthMm };
}

/** 1 in on 1000 ft², in litres: 1 mm on 1 m² is 1 L. */
const LITRES_OF_INCH_ON_1000_FT2 = (LENGTH_IN_M.in / LENGTH_IN_M.mm) * 1000 * AREA_IN_M2.ft2;

/** So much on each square metre; what is itself an area is so many times the area. */
const rate = (perM2: number, unit: string, { units, digits }: Pick<Said, 'units' | 'digits'>): string =>
  unit === 'm2' ? plainNumber(perM2, '', digits) : quantity(perM2, `${unit}/m2`, units, digits);

const shownRate = (perM2: number, unit: string, { units, digits }: Said): number =>
  unit === 'm2' ? asShown(perM2, '', 'metric', digits) : asShown(perM2, `${unit}/m2`, units, digits);

const shownPercent = (fraction: number, { digits }: Said): number =>
  asShown(fraction * 100, '', 'metric', digits) / 100;

const percent = (fraction: number, { digits }: Said): string =>
  `${plainNumber(fraction * 100, '', digits)} %`;

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
    working: (inputs, said) =>
      `${area(inputs, said)} × ${rate(at(inputs, 'ratePerM2'), said.unit, said)} = ${said.result}`,
    printed: printedRate,
  },
  depth: {
    needs: ['areaM2', 'depthMm'],
    unit: 'material',
    compute: (inputs) => layerL({ areaM2: at(inputs, 'areaM2'), depthMm: at(inputs, 'depthMm') }),
    working: layerWorking,
    printed: printedLayer,
  },
  'top-dressing': {
    needs: ['areaM2', 'depthMm', 'bulkDensityTPerM3', 'capMm'],
    unit: 'material',
    compute: (inputs) => layerL({ areaM2: at(inputs, 'areaM2'), depthMm: at(inputs, 'depthMm') }),
    working: layerWorking,
    printed: printedLayer,
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
    everywhere: (inputs) => {
      const [over, fresh, bare] = seedRates(inputs);
      return at(inputs, 'areaM2') * (bare === 1 ? fresh : over);
    },
    working: (inputs, said) => {
      const [over, fresh, bare] = seedRates(inputs);
      if (bare === 1) return `${area(inputs, said)} × ${rate(fresh, 'g', said)} = ${said.result}`;
      return `${area(inputs, said)} × (${rate(over, 'g', said)} everywhere + ${percent(bare, said)} × ${rate(fresh - over, 'g', said)} more where no grass stands) = ${said.result}`;
    },
    printed: (inputs, said) => {
      const [over, fresh, bare] = seedRates(inputs);
      const overRateGPerM2 = shownRate(over, 'g', said);
      const newRateGPerM2 =
        bare === 1 ? shownRate(fresh, 'g', said) : overRateGPerM2 + shownRate(fresh - over, 'g', said);
      const bareFraction = shownPercent(bare, said);
      return { areaM2: shownArea(inputs, said), overRateGPerM2, newRateGPerM2, bareFraction };
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
    working: (inputs, said) =>
      `${area(inputs, said)} × ${rate(cappedNitrogen(inputs), 'g', said)} of nitrogen ÷ ${plainNumber(at(inputs, 'bagPercent'), '', said.digits)} % nitrogen in the bag = ${said.result}`,
    printed: (inputs, said) => ({
      ...inputs,
      areaM2: shownArea(inputs, said),
      nitrogenGPerM2: shownRate(cappedNitrogen(inputs), 'g', said),
      bagPercent: asShown(at(inputs, 'bagPercent'), '', 'metric', said.digits),
      capGPerM2: Number.POSITIVE_INFINITY,
    }),
    everywhere: (inputs) =>
      nitrogenProductG({
        areaM2: at(inputs, 'areaM2'),
        nitrogenGPerM2: cappedNitrogen(inputs),
        nitrogenFraction: at(inputs, 'bagPercent') / 100,
      }),
    remark: (inputs, units) =>
      `Never more than ${quantityRoundedDown(at(inputs, 'capGPerM2'), 'g/m2', units)} of nitrogen at one time.`,
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
    working: (inputs, said) =>
      `${area(inputs, said)} × ${rate(at(inputs, 'limeGPerM2'), 'g', said)} ÷ ${percent(at(inputs, 'neutralisingFraction'), said)} neutralising value = ${said.result}`,
    printed: (inputs, said) => ({
      ...inputs,
      areaM2: shownArea(inputs, said),
      limeGPerM2: shownRate(at(inputs, 'limeGPerM2'), 'g', said),
      neutralisingFraction: shownPercent(at(inputs, 'neutralisingFraction'), said),
    }),
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
    working: (inputs, said) => {
      const perM2 = at(inputs, 'ratePerM2');
      const onLabel = rate(perM2, said.unit, { ...said, units: 'metric' });
      const read = said.units === 'metric' ? onLabel : `${rate(perM2, said.unit, said)} (${onLabel})`;
      return `${area(inputs, said)} × ${read} by your label = ${said.result}`;
    },
    printed: printedRate,
  },
  'label-only': {
    needs: ['areaM2'],
    takes: ['budgetPerM2'],
    unit: 'material',
    onLabelOnly: true,
    compute: () => 0,
    working: () => '',
    printed: (inputs) => inputs,
  },
  'hand-hours': {
    needs: ['areaM2', 'm2PerH'],
    unit: 'h',
    compute: (inputs) => at(inputs, 'areaM2') / at(inputs, 'm2PerH'),
    working: (inputs, said) =>
      `${area(inputs, said)} ÷ ${quantity(at(inputs, 'm2PerH'), 'm2/h', said.units)} = ${said.result}`,
    printed: (inputs) => inputs,
  },
  'machine-or-hand-hours': {
    needs: ['areaM2', 'widthM', 'speedKmPerH', 'efficiencyFraction', 'passes', 'byHand', 'm2PerH'],
    unit: 'h',
    compute: (inputs) =>
      at(inputs, 'byHand') === 1 ? at(inputs, 'areaM2') / at(inputs, 'm2PerH') : hoursByMachine(inputs),
    working: (inputs, said) => `${area(inputs, said)} = ${said.result}`,
    printed: (inputs) => inputs,
  },
};

function printedRate(inputs: Inputs, said: Said): Inputs {
  const ratePerM2 = shownRate(at(inputs, 'ratePerM2'), said.unit, said);
  return { ...inputs, areaM2: shownArea(inputs, said), ratePerM2 };
}

/** On standing grass, on bare ground, and the share of that. */
const seedRates = (inputs: Inputs): [number, number, number] => [
  overRateOf(inputs),
  at(inputs, 'newRateGPerM2'),
  at(inputs, 'bareFraction'),
];

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
