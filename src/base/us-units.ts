/**
 * The same quantity in US customary units, worked out exactly from the metric one; nothing is rounded here.
 * A gallon and a fluid ounce are the US ones. Factors: units.ts.
 */
import {
  AREA_IN_M2,
  convert,
  fahrenheitFromCelsius,
  LENGTH_IN_M,
  MASS_IN_G,
  MASS_RATE_IN_G_PER_M2,
  SPEED_IN_KM_PER_H,
  VOLUME_IN_L,
  VOLUME_RATE_IN_ML_PER_M2,
} from './units.js';

/** In which units a person reads. Data stays metric whatever is chosen. */
export type Units = 'metric' | 'us';
export const UNITS: readonly Units[] = ['metric', 'us'];

/** Loose soil and debris, which are sold by the litre here and by the cubic foot in the US; water is not. */
export const LOOSE_L = 'L loose';

/** The unit to say an amount in: loose soil is no liquid. */
export const measureOf = ({ unit, loose }: { readonly unit: string; readonly loose: boolean }): string =>
  loose && unit === 'L' ? LOOSE_L : unit;

/** A way to say a quantity: in which unit, and how its number is had from the metric one. */
export interface Scale {
  readonly unit: string;
  readonly of: (metric: number) => number;
}

const scale = (unit: string, of: Scale['of']): Scale => ({ unit, of });

const POUNDS = scale('lb', (g) => convert(MASS_IN_G, g, { from: 'g', to: 'lb' }));
const OUNCES = scale('oz', (g) => convert(MASS_IN_G, g, { from: 'g', to: 'oz' }));
const GALLONS = scale('gal', (litres) => convert(VOLUME_IN_L, litres, { from: 'L', to: 'US gal' }));
const FLUID_OUNCES = scale('fl oz', (litres) => convert(VOLUME_IN_L, litres, { from: 'L', to: 'US fl oz' }));

/** Under a pound, ounces say it better. */
const weight = (g: number): Scale => (Math.abs(POUNDS.of(g)) < 1 ? OUNCES : POUNDS);
/** Under a gallon, fluid ounces are what a measuring jug is marked in. */
const measure = (litres: number): Scale => (Math.abs(GALLONS.of(litres)) < 1 ? FLUID_OUNCES : GALLONS);

/** The scale fed with another metric unit: so many of its own to one of the scale's. */
const per = (perUnit: number, { unit, of }: Scale): Scale => scale(unit, (value) => of(value * perUnit));

const INCHES = (from: 'mm' | 'cm' | 'm') => scale('in', (v) => convert(LENGTH_IN_M, v, { from, to: 'in' }));

const US: Readonly<Record<string, (largest: number) => Scale>> = {
  g: weight,
  kg: (kg) => per(MASS_IN_G.kg, weight(kg * MASS_IN_G.kg)),
  mL: (mL) => per(VOLUME_IN_L.mL, measure(mL * VOLUME_IN_L.mL)),
  L: () => GALLONS,
  [LOOSE_L]: () => scale('ft³', (litres) => convert(VOLUME_IN_L, litres, { from: 'L', to: 'ft3' })),
  [`${LOOSE_L}/m2`]: () =>
    scale(
      'ft³/1000 ft2',
      (rate) => convert(VOLUME_IN_L, rate, { from: 'L', to: 'ft3' }) * 1000 * AREA_IN_M2.ft2,
    ),
  mm: () => INCHES('mm'),
  cm: () => INCHES('cm'),
  m: () => scale('ft', (m) => convert(LENGTH_IN_M, m, { from: 'm', to: 'ft' })),
  km: () => scale('miles', (km) => convert(LENGTH_IN_M, km, { from: 'km', to: 'mile' })),
  m2: () => scale('ft2', (m2) => convert(AREA_IN_M2, m2, { from: 'm2', to: 'ft2' })),
  C: () => scale('F', fahrenheitFromCelsius),
  'g/m2': () =>
    scale('lb/1000 ft2', (rate) => convert(MASS_RATE_IN_G_PER_M2, rate, { from: 'g/m2', to: 'lb/1000 ft2' })),
  'mL/m2': () =>
    scale('fl oz/1000 ft2', (rate) =>
      convert(VOLUME_RATE_IN_ML_PER_M2, rate, { from: 'mL/m2', to: 'US fl oz/1000 ft2' }),
    ),
  'L/m2': () =>
    scale('gal/1000 ft2', (rate) =>
      convert(VOLUME_RATE_IN_ML_PER_M2, rate, { from: 'L/m2', to: 'US gal/1000 ft2' }),
    ),
  'L/ha': () =>
    scale('gal/acre', (rate) => convert(VOLUME_RATE_IN_ML_PER_M2, rate, { from: 'L/ha', to: 'US gal/acre' })),
  'm2/h': () => scale('ft2/h', (rate) => convert(AREA_IN_M2, rate, { from: 'm2', to: 'ft2' })),
  'ha/h': () => scale('acres/h', (rate) => convert(AREA_IN_M2, rate, { from: 'ha', to: 'acre' })),
  'km/h': () => scale('mph', (speed) => convert(SPEED_IN_KM_PER_H, speed, { from: 'km/h', to: 'mph' })),
  'L/min': () => scale('gal/min', GALLONS.of),
  'mm/day': () => scale('in/day', INCHES('mm').of),
  'count/m2': () => scale('count/ft2', (density) => density * AREA_IN_M2.ft2),
};

/**
 * How a quantity is said in US units; undefined where the unit is the same everywhere (h, %, days).
 *
 * @param largest the quantity, or the larger end of a range, which settles whether ounces or pounds suit
 */
export function usScale(largest: number, metricUnit: string): Scale | undefined {
  return Object.hasOwn(US, metricUnit) ? US[metricUnit]?.(largest) : undefined;
}
