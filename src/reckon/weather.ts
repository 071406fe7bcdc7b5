/** Sun and thirst of a day. */
import {
  type DailyEvapotranspiration,
  type DailyWeather,
  type Fallback,
  referenceEvapotranspiration,
} from '../agronomy/reference-evapotranspiration-daily.js';
import {
  dayLengthH,
  evaporationEquivalentMm,
  extraterrestrialRadiationMJPerM2,
  isLowWinterSun,
  type LatitudeAndDay,
} from '../agronomy/sun.js';
import { dayOfYear, parseIsoDate } from '../base/dates.js';
import { out, put } from './figure-text.js';
import {
  A_DATE,
  A_LATITUDE,
  A_SHARE,
  DATE,
  FROM_0,
  type Given,
  key,
  LENGTH,
  maybe,
  number,
  optional,
  plain,
  type Reckoner,
  SHARE,
  TEMPERATURE,
} from './reckoner.js';

/** FAO-56, note to equations 21 to 34: not valid beyond this latitude in the winter months. */
const LOW_SUN_LIMIT_DEG = 55;

const PLACE_KEYS = [
  key('latitudeDeg', plain('deg'), 'latitude', A_LATITUDE),
  key('date', DATE, 'day', A_DATE),
] as const;

const placeAndDay = (given: Given): LatitudeAndDay => ({
  latitudeDeg: number(given, 'latitudeDeg'),
  dayOfYear: dayOfYear(parseIsoDate(String(given.date))),
});

const lowSunNotes = (place: LatitudeAndDay): string[] =>
  isLowWinterSun({ ...place, limitDeg: LOW_SUN_LIMIT_DEG })
    ? [
        `Take this with caution: the equations of the sun do not hold beyond ${LOW_SUN_LIMIT_DEG} degrees in winter.`,
      ]
    : [];

const sun: Reckoner = {
  name: 'sun',
  says: 'sun that reaches the top of the air in a day, and day length',
  keys: PLACE_KEYS,
  equation:
    'Ra = 24 × 60 ÷ π × 0.0820 × dr × (ws × sin φ × sin d + cos φ × cos d × sin ws); day length = 24 × ws ÷ π; ws = acos(−tan φ × tan d)',
  sources: [{ id: 'fao-56', at: 'equations 21 to 25 and 34' }],
  compute: (given) => {
    const place = placeAndDay(given);
    const value = extraterrestrialRadiationMJPerM2(place);
    const hours = dayLengthH(place);
    return {
      value,
      unit: 'MJ/m2/day',
      working: `φ = ${put(place.latitudeDeg)}°, day ${place.dayOfYear} of the year: Ra = ${out(value, 'MJ/m2/day')}, day length = ${out(hours, 'h')}`,
      more: { dayLength: { value: hours, unit: 'h' } },
      notes: lowSunNotes(place),
    };
  },
};

const WEATHER_KEYS = [
  key('altitudeM', LENGTH, 'height above the sea', '-500 to 9000', optional),
  key('rhMaxFraction', SHARE, 'highest humidity', A_SHARE, optional),
  key('rhMinFraction', SHARE, 'lowest humidity', `${A_SHARE}, not above rhMaxFraction`, {
    ...optional,
    needs: 'rhMaxFraction',
  }),
  key('windMPerS', ['speed', 'm/s'], 'mean wind', FROM_0, optional),
  key('windHeightM', LENGTH, 'height at which the wind is measured', 'above 0.1', {
    ...optional,
    needs: 'windMPerS',
  }),
  key('sunshineH', plain('h'), 'hours of bright sunshine', '0 to the day length', optional),
] as const;

const FALLBACK_WORDS: Readonly<Record<Fallback, string>> = {
  'altitude-sea-level': 'height: taken as sea level',
  'dew-point-is-minimum': 'humidity: the lowest temperature taken as dew point',
  'humidity-from-maximum-only': 'lowest humidity: worked from the highest alone',
  'wind-2-m-per-s': 'wind: taken as 2 m/s',
  'wind-height-2-m': 'height of the wind: taken as 2 m',
  'sunshine-from-temperatures': 'sunshine: from the range of temperature, inland',
};

const waterUse: Reckoner = {
  name: 'water-use',
  says: 'water that short, well-watered grass gives off in a day',
  keys: [
    ...PLACE_KEYS,
    key('tMinC', TEMPERATURE, 'lowest of the day', 'any, not above tMaxC'),
    key('tMaxC', TEMPERATURE, 'highest of the day', 'any, not below tMinC'),
    ...WEATHER_KEYS,
  ],
  equation:
    'from temperatures alone, Hargreaves: ET0 = 0.0023 × (Tmean + 17.8) × √(Tmax − Tmin) × 0.408 × Ra; otherwise Penman-Monteith: ET0 = (0.408 × slope × (Rn − G) + γ × 900 ÷ (T + 273) × u2 × (es − ea)) ÷ (slope + γ × (1 + 0.34 × u2))',
  sources: [{ id: 'fao-56', at: 'equations 6, 47, 48, 50 and 52' }],
  compute: (given) => {
    const extra = WEATHER_KEYS.flatMap(({ name }) =>
      maybe(given, name) === undefined ? [] : [[name, number(given, name)]],
    );
    const weather: DailyWeather = {
      ...placeAndDay(given),
      tMinC: number(given, 'tMinC'),
      tMaxC: number(given, 'tMaxC'),
      ...Object.fromEntries(extra),
    };
    const reckoned = referenceEvapotranspiration(weather);
    const stoodIn = reckoned.fallbacks.map((fallback) => FALLBACK_WORDS[fallback]).join('; ');
    return {
      value: reckoned.et0Mm,
      unit: 'mm/day',
      working: waterUseWorking(weather, reckoned),
      notes: [
        ...(reckoned.method === 'hargreaves'
          ? ['Only temperatures were given: Hargreaves, a rough guide.']
          : []),
        ...(stoodIn === '' ? [] : [`Stood in for what was not given: ${stoodIn}.`]),
        ...lowSunNotes(weather),
      ],
    };
  },
};

function waterUseWorking(weather: DailyWeather, { et0Mm, method }: DailyEvapotranspiration): string {
  const { tMinC, tMaxC } = weather;
  const raMJPerM2 = extraterrestrialRadiationMJPerM2(weather);
  const result = out(et0Mm, 'mm/day');
  const mean = put((tMinC + tMaxC) / 2);
  if (method === 'penman-monteith') {
    return `Penman-Monteith with T = ${mean} C, Ra = ${out(raMJPerM2, 'MJ/m2/day')}, G = 0: ET0 = ${result}`;
  }
  const factors = `0.0023 × (${mean} + 17.8) × √(${put(tMaxC)} − ${put(tMinC)})`;
  return `0.408 × Ra = ${out(evaporationEquivalentMm(raMJPerM2), 'mm')}; ${factors} × ${put(evaporationEquivalentMm(raMJPerM2))} = ${result}`;
}

export const WEATHER_RECKONERS: readonly Reckoner[] = [sun, waterUse];
