/** Warmth of air and soil, and what seed makes of it. */
import { degreeDays } from '../agronomy/degree-days.js';
import { fieldEmergenceDays, germinationDays } from '../agronomy/germination.js';
import { dampingDepthM, soilTemperatureC } from '../agronomy/soil-temperature.js';
import { out, put, sum } from './figure-text.js';
import {
  ABOVE_0,
  FROM_0,
  key,
  LENGTH,
  list,
  number,
  numbers,
  plain,
  type Reckoner,
  several,
  TEMPERATURE,
  WORD,
} from './reckoner.js';

const degreeDaysSum: Reckoner = {
  name: 'degree-days',
  says: 'warmth above a base, added up over days',
  keys: [
    key('tMinC', TEMPERATURE, 'lowest of each day', 'one a day, none above the highest', several),
    key('tMaxC', TEMPERATURE, 'highest of each day', 'one a day, none below the lowest', several),
    key('baseC', TEMPERATURE, 'base', 'any temperature'),
  ],
  equation: 'sum over the days of max(0, (Tmax + Tmin) ÷ 2 − base)',
  sources: [{ id: 'msu-growing-degree-days', at: 'definition' }],
  compute: (given) => {
    const [tMinC, tMaxC, baseC] = [list(given, 'tMinC'), list(given, 'tMaxC'), number(given, 'baseC')];
    const value = degreeDays({ tMinC, tMaxC, baseC });
    const terms = tMinC.map((low, day) => put(Math.max(0, (low + (tMaxC[day] as number)) / 2 - baseC)));
    return { value, unit: 'C day', working: `${sum(terms)} = ${out(value, 'C day')}` };
  },
};

const DAYS_PER_YEAR = 365;

const soilTemperature: Reckoner = {
  name: 'soil-temperature',
  says: 'soil temperature by the yearly wave, mean of the day',
  keys: [
    key('meanC', TEMPERATURE, 'mean of the year', 'any temperature'),
    key('amplitudeC', plain('C'), 'half the range of daily means over the year, at the surface', FROM_0),
    key('depthM', LENGTH, 'depth', FROM_0),
    key('diffusivityM2PerS', plain('m2/s'), 'how fast warmth spreads, such as 5e-7', ABOVE_0),
    key('dayOfYear', plain('d'), 'day of the year, 1 January is 1', '1 to 366'),
    key('coldestDay', plain('d'), 'coldest day of the year at the surface', '1 to 366'),
  ],
  equation:
    'T = mean + A × e^(−z ÷ d) × sin(2π × (t − t0) ÷ 365 − z ÷ d − π ÷ 2); d = √(2 × D ÷ w), w = 2π ÷ (365 × 86 400 s)',
  sources: [{ id: 'oklahoma-soil-temperature', at: 'model, after Hillel 1982' }],
  compute: (given) => {
    const wave = numbers(
      given,
      'meanC',
      'amplitudeC',
      'depthM',
      'diffusivityM2PerS',
      'dayOfYear',
      'coldestDay',
    );
    const value = soilTemperatureC(wave);
    const d = put(dampingDepthM({ diffusivityM2PerS: wave.diffusivityM2PerS, periodDays: DAYS_PER_YEAR }));
    const z = put(wave.depthM);
    const angle = `2π × (${put(wave.dayOfYear)} − ${put(wave.coldestDay)}) ÷ 365 − ${z} ÷ ${d} − π ÷ 2`;
    return {
      value,
      unit: 'C',
      working: `d = ${d} m; ${put(wave.meanC)} + ${put(wave.amplitudeC)} × e^(−${z} ÷ ${d}) × sin(${angle}) = ${out(value, 'C')}`,
      notes: ['The swing from day to night is left out.'],
    };
  },
};

/** Grasses whose thermal time is in print. */
const SPECIES = ['ryegrass', 'fescue', 'meadow-grass'] as const;
/** Larsen and Bibby, 2005: the temperatures that were tested. */
const TESTED_C = { min: 8, max: 24 } as const;

const germination: Reckoner = {
  name: 'germination',
  says: 'days until half the seed has germinated, in a dish and in the field',
  keys: [
    key('species', WORD, 'kind of grass', SPECIES.join(', '), { words: SPECIES }),
    key('soilC', TEMPERATURE, 'steady soil temperature', 'above the base of the species'),
  ],
  equation: 'dish days = thermal time ÷ (soil temperature − base); field days = dish days × stretch',
  sources: [
    { id: 'larsen-bibby-2005', at: 'abstract: base temperatures and thermal times, tested at 8 to 24 C' },
    { id: 'lincoln-field-emergence-1996', at: '50 % emergence of perennial ryegrass in autumn' },
    { id: 'moot-2000', at: 'abstract: germination in the laboratory tells little about the field' },
  ],
  compute: (given, figures) => {
    const species = String(given.species);
    const soilC = number(given, 'soilC');
    const baseC = figures(`germination-base-c-${species}`);
    const thermalTimeCDays = figures(`germination-thermal-${species}`);
    const dishDays = germinationDays({ baseC, thermalTimeCDays, soilC });
    if (dishDays === undefined) {
      throw new RangeError(
        `soilC must be above ${baseC}, got ${soilC}. At and below that, seed of ${species} waits.`,
      );
    }
    const stretch = figures('germination-field-stretch');
    const fieldDays = fieldEmergenceDays({ dishDays, stretch });
    return {
      value: dishDays,
      unit: 'd',
      working: `${put(thermalTimeCDays)} C day ÷ (${put(soilC)} − ${put(baseC)}) C = ${out(dishDays, 'd')}; ${put(dishDays)} × ${put(stretch)} = ${out(fieldDays, 'd')}`,
      more: { dish: { value: dishDays, unit: 'd' }, field: { value: fieldDays, unit: 'd' } },
      notes: [
        fieldNote(species, stretch, figures('field-emergence-days-ryegrass')),
        ...(soilC < TESTED_C.min || soilC > TESTED_C.max
          ? [`Beyond what was tested, ${TESTED_C.min} to ${TESTED_C.max} C: take it with caution.`]
          : []),
      ],
    };
  },
};

function fieldNote(species: string, stretch: number, ryegrassDays: number): string {
  const trial = `ryegrass took ${put(ryegrassDays)} days in autumn field trials`;
  const whose = species === 'ryegrass' ? '' : `; that ${species} stretches alike is assumed too`;
  return `The headline is for a dish. "field" is ${put(stretch)} times that, an assumption: ${trial}, whose soil temperature is not in print${whose}.`;
}

export const WARMTH_RECKONERS: readonly Reckoner[] = [degreeDaysSum, soilTemperature, germination];
