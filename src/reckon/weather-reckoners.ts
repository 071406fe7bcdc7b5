import { degreeDays } from '../agronomy/degree-days.js';
import { fieldEmergenceDays, germinationDays } from '../agronomy/germination.js';
import {
  type DailyWeather,
  referenceEvapotranspiration,
} from '../agronomy/reference-evapotranspiration-daily.js';
import { soilTemperatureC } from '../agronomy/soil-temperature.js';
import { christiansenUniformity, lowQuarterUniformity } from '../agronomy/sprinkler.js';
import { dayLengthH, extraterrestrialRadiationMJPerM2 } from '../agronomy/sun.js';
import { dayOfYear, parseIsoDate } from '../base/dates.js';
import { plainNumber } from '../base/quantity-words.js';
import { type Given, key, list, maybe, number, optional, type Reckoner } from './reckoner.js';

const placeAndDay = (given: Given) => ({
  latitudeDeg: number(given, 'latitudeDeg'),
  dayOfYear: dayOfYear(parseIsoDate(String(given.date))),
});

/** Optional keys of the weather, as far as they are given. */
const WEATHER = [
  'altitudeM',
  'rhMaxFraction',
  'rhMinFraction',
  'windMPerS',
  'windHeightM',
  'sunshineH',
] as const;

export const WEATHER_RECKONERS: readonly Reckoner[] = [
  {
    name: 'sun',
    says: 'sun above the air, and day length',
    keys: [key('latitudeDeg', 'number', 'deg', 'latitude, south negative'), key('date', 'date', '', 'day')],
    equation: 'Ra by FAO-56 equation 21, day length by equation 34',
    sources: [{ id: 'fao-56', at: 'equations 21 to 25 and 34' }],
    compute: (given) => {
      const place = placeAndDay(given);
      const value = extraterrestrialRadiationMJPerM2(place);
      return {
        value,
        unit: 'MJ/m2/day',
        working: `latitude ${place.latitudeDeg}°, day ${place.dayOfYear} of the year = ${plainNumber(value)} MJ/m2/day`,
        more: { dayLength: { value: dayLengthH(place), unit: 'h' } },
      };
    },
  },
  {
    name: 'water-use',
    says: 'water that short grass gives off in a day',
    keys: [
      key('latitudeDeg', 'number', 'deg', 'latitude, south negative'),
      key('date', 'date', '', 'day'),
      key('tMinC', 'temperature', 'C', 'lowest of the day'),
      key('tMaxC', 'temperature', 'C', 'highest of the day'),
      key('altitudeM', 'length', 'm', 'height above the sea', optional),
      key('rhMaxFraction', 'fraction', 'fraction', 'highest humidity', optional),
      key('rhMinFraction', 'fraction', 'fraction', 'lowest humidity', optional),
      key('windMPerS', 'number', 'm/s', 'wind', optional),
      key('windHeightM', 'length', 'm', 'height at which the wind is measured', optional),
      key('sunshineH', 'number', 'h', 'hours of sunshine', optional),
    ],
    equation: 'Hargreaves (FAO-56 equation 52) from temperatures alone, else Penman-Monteith (equation 6)',
    sources: [{ id: 'fao-56', at: 'equations 6 and 52' }],
    compute: (given) => {
      const extra = Object.fromEntries(
        WEATHER.flatMap((name) => (maybe(given, name) === undefined ? [] : [[name, number(given, name)]])),
      );
      const weather: DailyWeather = {
        ...placeAndDay(given),
        tMinC: number(given, 'tMinC'),
        tMaxC: number(given, 'tMaxC'),
        ...extra,
      };
      const { et0Mm, method, fallbacks } = referenceEvapotranspiration(weather);
      const isHigh = Math.abs(weather.latitudeDeg) > FAR_NORTH_DEG;
      return {
        value: et0Mm,
        unit: 'mm/day',
        working: `${method === 'hargreaves' ? 'Hargreaves' : 'Penman-Monteith'} = ${plainNumber(et0Mm)} mm/day`,
        notes: [
          ...(fallbacks.length === 0 ? [] : [`Stood in for what was not given: ${fallbacks.join(', ')}.`]),
          ...(isHigh ? ['Beyond 55 degrees the sun equations lose accuracy in winter.'] : []),
        ],
      };
    },
  },
  {
    name: 'degree-days',
    says: 'warmth above a base, added up over days',
    keys: [
      key('tMinC', 'temperature', 'C', 'lowest of each day', { isList: true }),
      key('tMaxC', 'temperature', 'C', 'highest of each day', { isList: true }),
      key('baseC', 'temperature', 'C', 'base'),
    ],
    equation: 'sum of max(0, (Tmax + Tmin) ÷ 2 − base)',
    sources: [{ id: 'msu-growing-degree-days', at: 'definition' }],
    compute: (given) => {
      const [tMinC, tMaxC, baseC] = [list(given, 'tMinC'), list(given, 'tMaxC'), number(given, 'baseC')];
      const value = degreeDays({ tMinC, tMaxC, baseC });
      return {
        value,
        unit: 'C day',
        working: `${tMinC.length} days above ${baseC} C = ${plainNumber(value)} C day`,
      };
    },
  },
  {
    name: 'soil-temperature',
    says: 'soil temperature by the yearly wave',
    keys: [
      key('meanC', 'temperature', 'C', 'mean of the year'),
      key('amplitudeC', 'number', 'C', 'half the range over the year, at the surface'),
      key('depthM', 'length', 'm', 'depth'),
      key('diffusivityM2PerS', 'number', 'm2/s', 'thermal diffusivity, such as 5e-7'),
      key('dayOfYear', 'number', 'd', 'day of the year, 1 January is 1'),
      key('coldestDay', 'number', 'd', 'coldest day at the surface'),
    ],
    equation: 'T = mean + A × e^(−z/d) × sin(2π (t − t0)/365 − z/d − π/2); d = √(2 D ÷ ω)',
    sources: [{ id: 'oklahoma-soil-temperature', at: 'model, after Hillel 1982' }],
    compute: (given) => {
      const wave = Object.fromEntries(
        ['meanC', 'amplitudeC', 'depthM', 'diffusivityM2PerS', 'dayOfYear', 'coldestDay'].map((name) => [
          name,
          number(given, name),
        ]),
      );
      const value = soilTemperatureC(wave as unknown as Parameters<typeof soilTemperatureC>[0]);
      return {
        value,
        unit: 'C',
        working: `at ${plainNumber(wave.depthM as number)} m on day ${wave.dayOfYear} = ${plainNumber(value)} C`,
      };
    },
  },
  {
    name: 'germination',
    says: 'days until half the seed has germinated',
    keys: [
      key('species', 'word', '', 'kind of grass', { words: ['ryegrass', 'fescue', 'meadow-grass'] }),
      key('soilC', 'temperature', 'C', 'soil temperature, steady'),
    ],
    equation: 'days = thermal time ÷ (soil temperature − base)',
    sources: [{ id: 'larsen-bibby-2005', at: 'abstract: base temperatures and thermal times' }],
    compute: (given, figures) => {
      const species = String(given.species);
      const soilC = number(given, 'soilC');
      const [baseC, thermalTimeCDays] = [
        figures(`germination-base-c-${species}`),
        figures(`germination-thermal-${species}`),
      ];
      const dishDays = germinationDays({ baseC, thermalTimeCDays, soilC });
      if (dishDays === undefined)
        throw new RangeError(`soilC must be above ${baseC} for ${species} to germinate at all, got ${soilC}`);
      const stretch = figures('germination-field-stretch');
      return {
        value: dishDays,
        unit: 'd',
        working: `${thermalTimeCDays} C day ÷ (${soilC} − ${baseC}) C = ${plainNumber(dishDays)} d`,
        more: {
          dish: { value: dishDays, unit: 'd' },
          field: { value: fieldEmergenceDays({ dishDays, stretch }), unit: 'd' },
        },
        notes: [
          `In a dish. In the field it takes longer; "field" is ${stretch} times the dish, an assumption.`,
        ],
      };
    },
  },
  {
    name: 'sprinkler',
    says: 'how evenly a sprinkler waters, from cans set out under it',
    keys: [key('catchesMl', 'number', 'mL', 'what each can caught', { isList: true })],
    equation:
      'low-quarter uniformity = mean of the lowest quarter ÷ mean of all; coefficient = 1 − sum of |x − mean| ÷ (n × mean)',
    sources: [{ id: 'spreval-manual', at: 'distribution uniformity, low quarter' }],
    compute: (given) => {
      const catches = list(given, 'catchesMl');
      const value = lowQuarterUniformity(catches);
      return {
        value,
        unit: 'fraction',
        working: `${catches.length} cans = ${plainNumber(value)}`,
        more: { coefficient: { value: christiansenUniformity(catches), unit: 'fraction' } },
      };
    },
  },
];

/** FAO-56 says that its radiation equations lose validity beyond this in winter. */
const FAR_NORTH_DEG = 55;
