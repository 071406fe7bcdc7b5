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
import { plainNumber, quantity } from '../base/quantity-words.js';

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
  readonly working: (inputs: Inputs, result: string, unit: string) => string;
  /** What more the reader must know about this amount. */
  readonly remark?: (inputs: Inputs) => string | null;
}

const area = (inputs: Inputs): string => quantity(at(inputs, 'areaM2'), 'm2');

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
    working: (inputs, result, unit) =>
      `${area(inputs)} × ${plainNumber(at(inputs, 'ratePerM2'))} ${unit}/m² = ${result}`,
  },
  depth: {
    needs: ['areaM2', 'depthMm'],
    unit: 'material',
    compute: (inputs) => layerL({ areaM2: at(inputs, 'areaM2'), depthMm: at(inputs, 'depthMm') }),
    working: (inputs, result) =>
      `${area(inputs)} × ${plainNumber(at(inputs, 'depthMm'))} mm = ${result} (1 mm is 1 L/m²)`,
  },
  'top-dressing': {
    needs: ['areaM2', 'depthMm', 'bulkDensityTPerM3', 'capMm'],
    unit: 'material',
    compute: (inputs) => layerL({ areaM2: at(inputs, 'areaM2'), depthMm: at(inputs, 'depthMm') }),
    working: (inputs, result) =>
      `${area(inputs)} × ${plainNumber(at(inputs, 'depthMm'))} mm = ${result} (1 mm is 1 L/m²)`,
    remark: (inputs) => {
      const litres = at(inputs, 'areaM2') * at(inputs, 'depthMm');
      const layers = layersNeeded({ depthMm: at(inputs, 'depthMm'), limitMm: at(inputs, 'capMm') }).count;
      const kg = litres * at(inputs, 'bulkDensityTPerM3');
      return `That weighs about ${quantity(Number((kg * 1000).toPrecision(2)), 'g')}.${layers > 1 ? ` In ${layers} layers, weeks apart.` : ''}`;
    },
  },
  'seed-two-rates': {
    needs: ['areaM2', 'overRateGPerM2', 'newRateGPerM2', 'bareFraction'],
    unit: 'material',
    compute: (inputs) =>
      patchySeedMassG({
        areaM2: at(inputs, 'areaM2'),
        overseedRateGPerM2: Math.min(at(inputs, 'overRateGPerM2'), at(inputs, 'newRateGPerM2')),
        newRateGPerM2: at(inputs, 'newRateGPerM2'),
        bareFraction: at(inputs, 'bareFraction'),
      }),
    working: (inputs, result) => {
      const [over, fresh, bare] = ['overRateGPerM2', 'newRateGPerM2', 'bareFraction'].map((name) =>
        at(inputs, name),
      );
      if (bare === 1) return `${area(inputs)} × ${plainNumber(fresh as number)} g/m² = ${result}`;
      const percent = `${Math.round((bare as number) * 100)} %`;
      return `${area(inputs)} × (${plainNumber(over as number)} g/m² everywhere + ${percent} × ${plainNumber((fresh as number) - (over as number))} g/m² more where no grass stands) = ${result}`;
    },
  },
  'nitrogen-product': {
    needs: ['areaM2', 'nitrogenGPerM2', 'bagPercent', 'capGPerM2'],
    unit: 'material',
    compute: (inputs) =>
      nitrogenProductG({
        areaM2: at(inputs, 'areaM2'),
        nitrogenGPerM2: Math.min(at(inputs, 'nitrogenGPerM2'), at(inputs, 'capGPerM2')),
        nitrogenFraction: at(inputs, 'bagPercent') / 100,
      }),
    working: (inputs, result) =>
      `${area(inputs)} × ${plainNumber(at(inputs, 'nitrogenGPerM2'))} g nitrogen/m² ÷ ${plainNumber(at(inputs, 'bagPercent'))} % nitrogen in the bag = ${result}`,
    remark: (inputs) =>
      `Never more than ${plainNumber(at(inputs, 'capGPerM2'))} g of nitrogen/m² at one time.`,
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
    working: (inputs, result) =>
      `${area(inputs)} × ${plainNumber(at(inputs, 'limeGPerM2'))} g/m² ÷ ${plainNumber(at(inputs, 'neutralisingFraction') * 100)} % neutralising value = ${result}`,
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
    working: (inputs, result, unit) =>
      `${area(inputs)} × ${plainNumber(at(inputs, 'ratePerM2'))} ${unit}/m² by your label = ${result}`,
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
    working: (inputs, result) => `${area(inputs)} ÷ ${plainNumber(at(inputs, 'm2PerH'))} m²/h = ${result}`,
  },
  'machine-or-hand-hours': {
    needs: ['areaM2', 'widthM', 'speedKmPerH', 'efficiencyFraction', 'passes', 'byHand', 'm2PerH'],
    unit: 'h',
    compute: (inputs) =>
      at(inputs, 'byHand') === 1 ? at(inputs, 'areaM2') / at(inputs, 'm2PerH') : hoursByMachine(inputs),
    working: (inputs, result) => `${area(inputs)} = ${result}`,
  },
};

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
