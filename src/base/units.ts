/**
 * Exact unit factors and the few conversions the project needs.
 *
 * Each table says how much one of the named unit is in the table's base unit.
 * A weight ounce (`oz`) and a fluid ounce (`US fl oz`, `UK fl oz`) are different units here,
 * and so are the US and the UK gallon, because an amount of a product depends on it.
 *
 * @source the inch (25.4 mm), the pound (0.45359237 kg), the US gallon (231 in³) and the UK gallon
 *   (4.54609 L) are exact by definition: NIST Handbook 44, appendix C; UK Units of Measurement Regulations 1995
 */

export const LENGTH_IN_M = {
  mm: 0.001,
  cm: 0.01,
  m: 1,
  km: 1000,
  in: 0.0254,
  ft: 0.3048,
  yd: 0.9144,
  mile: 1609.344,
} as const;

export const AREA_IN_M2 = {
  cm2: 0.0001,
  m2: 1,
  ha: 10_000,
  in2: 0.00064516,
  ft2: 0.09290304,
  yd2: 0.83612736,
  acre: 4046.8564224,
} as const;

export const MASS_IN_G = {
  g: 1,
  kg: 1000,
  t: 1_000_000,
  oz: 28.349523125,
  lb: 453.59237,
} as const;

export const VOLUME_IN_L = {
  mL: 0.001,
  L: 1,
  m3: 1000,
  ft3: 28.316846592,
  yd3: 764.554857984,
  'US fl oz': 0.0295735295625,
  'US pint': 0.473176473,
  'US quart': 0.946352946,
  'US gal': 3.785411784,
  'UK fl oz': 0.0284130625,
  'UK pint': 0.56826125,
  'UK quart': 1.1365225,
  'UK gal': 4.54609,
} as const;

export const SPEED_IN_KM_PER_H = {
  'km/h': 1,
  'm/s': 3.6,
  mph: 1.609344,
} as const;

const M2_PER_1000_FT2 = 1000 * AREA_IN_M2.ft2;

export const MASS_RATE_IN_G_PER_M2 = {
  'g/m2': 1,
  'kg/m2': 1000,
  'kg/ha': 0.1,
  'oz/yd2': MASS_IN_G.oz / AREA_IN_M2.yd2,
  'oz/1000 ft2': MASS_IN_G.oz / M2_PER_1000_FT2,
  'lb/1000 ft2': MASS_IN_G.lb / M2_PER_1000_FT2,
  'lb/acre': MASS_IN_G.lb / AREA_IN_M2.acre,
} as const;

export const VOLUME_RATE_IN_ML_PER_M2 = {
  'mL/m2': 1,
  'L/m2': 1000,
  'mL/100 m2': 0.01,
  'L/100 m2': 10,
  'L/ha': 0.1,
  'US fl oz/1000 ft2': (1000 * VOLUME_IN_L['US fl oz']) / M2_PER_1000_FT2,
  'US gal/1000 ft2': (1000 * VOLUME_IN_L['US gal']) / M2_PER_1000_FT2,
  'US gal/acre': (1000 * VOLUME_IN_L['US gal']) / AREA_IN_M2.acre,
} as const;

export type LengthUnit = keyof typeof LENGTH_IN_M;
export type AreaUnit = keyof typeof AREA_IN_M2;
export type MassUnit = keyof typeof MASS_IN_G;
export type VolumeUnit = keyof typeof VOLUME_IN_L;
export type MassRateUnit = keyof typeof MASS_RATE_IN_G_PER_M2;
export type VolumeRateUnit = keyof typeof VOLUME_RATE_IN_ML_PER_M2;

/**
 * The same quantity in another unit of the same table.
 *
 * @param table one of the tables above; `from` and `to` must both be in it, which the compiler checks
 * @example convert(AREA_IN_M2, 1000, { from: 'ft2', to: 'm2' }) // 92.90304
 */
export function convert<Unit extends string>(
  table: Readonly<Record<Unit, number>>,
  value: number,
  { from, to }: { readonly from: NoInfer<Unit>; readonly to: NoInfer<Unit> },
): number {
  return from === to ? value : (value * table[from]) / table[to];
}

/** Degrees Celsius for a reading in degrees Fahrenheit: C = (F − 32) × 5 ÷ 9. */
export function celsiusFromFahrenheit(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/** Degrees Fahrenheit for a reading in degrees Celsius: F = C × 9 ÷ 5 + 32. */
export function fahrenheitFromCelsius(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}
