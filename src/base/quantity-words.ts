/**
 * Numbers as a reader wants them: three significant digits, kg and L once they read better, spaced units,
 * metric or US. Rounding for the eye only, and last; the exact number stays in the Plan.
 */
import { requireFinite } from './refuse.js';
import { LOOSE_L, type Scale, type Units, usScale } from './us-units.js';

interface Range {
  readonly min: number;
  readonly max: number;
}

const LARGER: Readonly<Record<string, { readonly unit: string; readonly perUnit: number }>> = {
  g: { unit: 'kg', perUnit: 1000 },
  mL: { unit: 'L', perUnit: 1000 },
};
const SPELLED: Readonly<Record<string, string>> = {
  m2: 'm²',
  ft2: 'ft²',
  C: '°C',
  F: '°F',
  each: '',
  [LOOSE_L]: 'L',
  [`${LOOSE_L}/m2`]: 'L/m²',
};
const NO_BREAK_SPACE = '\u00a0';
const MINUTES_PER_HOUR = 60;
const DIGITS = 3;
const DOSE_DIGITS = 4;
export const ROUGH_DIGITS = 2;

/** `840 mL`, `1.79 kg`, `84 m²`, `3` for things that are counted; in US units `28.4 fl oz`, `904 ft²`. */
export function quantity(
  value: number,
  unit: string,
  units: Units = 'metric',
  digits: number = DIGITS,
): string {
  const { of, unit: said } = scaleFor(value, unit, units);
  return withUnit(plainNumber(of(value), countedAs(unit), digits), said);
}

/** What {@link quantity} shows, as a number in the unit that went in. */
export function asShown(
  value: number,
  unit: string,
  units: Units = 'metric',
  digits: number = DIGITS,
): number {
  const { of } = scaleFor(value, unit, units);
  const perUnit = of(1);
  return withoutDust(shownNumber(of(value), countedAs(unit), digits) / perUnit);
}

/** A dose that a label allows: never rounded up, and with a digit more, so that the sum still comes out. */
export function doseQuantity(value: number, unit: string, units: Units = 'metric'): string {
  const { of, unit: said } = scaleFor(value, unit, units);
  return withUnit(plainNumber(doseDown(of(value)), '', DOSE_DIGITS), said);
}

/** A limit as it may be told: three digits, and never more than it is. */
export function quantityRoundedDown(value: number, unit: string, units: Units = 'metric'): string {
  const { of, unit: said } = scaleFor(value, unit, units);
  return withUnit(plainNumber(roundedDown(of(value), DIGITS)), said);
}

/** Down to four digits; what is that already, binary dust apart, stays. */
export const doseDown = (value: number): number => roundedDown(value, DOSE_DIGITS);

function roundedDown(value: number, digits: number): number {
  if (value <= 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(value)) - (digits - 1));
  return withoutDust(Math.floor(withoutDust(value / step)) * step);
}

/** For what is only roughly so: two digits. */
export function roughQuantity(value: number, unit: string, units: Units = 'metric'): string {
  const { of, unit: said } = scaleFor(value, unit, units);
  return withUnit(plainNumber(Number(of(value).toPrecision(2)), countedAs(unit)), said);
}

/** An area to the whole metre or foot, two digits under ten: the ends of what was paced are known no better. */
export const roughArea = (areaM2: number, units: Units = 'metric'): string =>
  quantity(areaM2, 'm2', units, ROUGH_DIGITS);

/** `24 km`, `15 miles`: whole, for what lies a way off. */
export function distance(km: number, units: Units = 'metric'): string {
  const { of, unit: said } = scaleFor(km, 'km', units);
  return withUnit(plainNumber(Math.round(of(km))), said);
}

/** `780 to 900 mL`, in the unit that suits the larger end; one value when both ends read the same. */
export function quantityRange(
  { min, max }: Range,
  unit: string,
  units: Units = 'metric',
  digits: number = DIGITS,
): string {
  const { of, unit: said } = scaleFor(max, unit, units);
  const [low, high] = [min, max].map((end) => plainNumber(of(end), countedAs(unit), digits));
  return withUnit(low === high ? `${high}` : `${low} to ${high}`, said);
}

/**
 * The range with two figures, the least rounded down and the most up: more would promise what nobody measured.
 * A range that is narrower than that is left as it is.
 */
export function outward(range: Range): Range {
  const [min, max] = [roundTo(range.min, Math.floor), roundTo(range.max, Math.ceil)];
  const isNarrow = max - min > 2 * (range.max - range.min);
  return isNarrow ? range : { min, max };
}

/** The range with two figures and no wider than it is, for limits that must still hold. */
export function inward({ min, max }: Range): Range {
  return { min: roundTo(min, Math.ceil), max: roundTo(max, Math.floor) };
}

function roundTo(value: number, round: (value: number) => number): number {
  if (value <= 0) return value;
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  // Division by a small step leaves a hair of the binary fraction behind.
  return Number((round(Number((value / step).toPrecision(10))) * step).toPrecision(10));
}

/** The range as a rough guide, {@link outward} in the unit it is said in. */
export function roughRange({ min, max }: Range, unit: string, units: Units = 'metric'): string {
  const { of, unit: said } = scaleFor(max, unit, units);
  const ends = outward({ min: of(min), max: of(max) });
  const [low, high] = [ends.min, ends.max].map((end) => plainNumber(end, countedAs(unit)));
  return withUnit(low === high ? `${high}` : `${low} to ${high}`, said);
}

/** The range, or nothing where it would only repeat the value. */
export function rangeUnlessSame(
  value: number,
  range: Range | null,
  unit: string,
  units: Units = 'metric',
): string {
  if (range === null) return '';
  const words = roughRange(range, unit, units);
  return words === quantity(value, unit, units) ? '' : words;
}

/** Metric as printed, and in US units beside it where those are read: for a label, or a limit set in law. */
export function bothUnits(metric: string, value: number, unit: string, units: Units): string {
  return units === 'metric' ? metric : `${quantity(value, unit, units)} (${metric})`;
}

/** `45 min`, `1 h 30 min`, `12 h`; to five minutes when short, to half hours from 8 h on. */
export function hours(value: number): string {
  requireFinite('hours', value);
  if (value <= 0) return 'no work';
  const stepMin = value < 8 ? 5 : 30;
  const totalMin = Math.max(stepMin, Math.round((value * MINUTES_PER_HOUR) / stepMin) * stepMin);
  const [whole, rest] = [Math.floor(totalMin / MINUTES_PER_HOUR), totalMin % MINUTES_PER_HOUR];
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}

/** `about 1 h 30 min`. */
export function aboutHours(value: number): string {
  return value <= 0 ? hours(value) : `about ${hours(value)}`;
}

/** `3.36`, `84`, `1230`, `12 300`: three significant digits; an area from 1000 on and what is counted whole. */
export function plainNumber(value: number, unit = '', digits: number = DIGITS): string {
  requireFinite('value', value);
  const rounded = shownNumber(value, unit, digits);
  const [whole = '0', decimals] = String(rounded).split('.');
  const grouped = Math.abs(rounded) < 10_000 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, NO_BREAK_SPACE);
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}

function shownNumber(value: number, unit: string, digits: number): number {
  const isWhole = unit === 'each' || (unit === 'm2' && Math.abs(value) >= 10 ** digits);
  return isWhole ? Math.round(value) : Number(value.toPrecision(digits));
}

/** Binary arithmetic leaves dust after the twelfth digit, which must not buy a pack more. */
const withoutDust = (value: number): number => Number(value.toPrecision(12));

export function scaleFor(largest: number, unit: string, units: Units = 'metric'): Scale {
  if (units === 'us') {
    const us = usScale(largest, unit);
    if (us !== undefined) return { of: us.of, unit: unitSign(us.unit) };
  }
  const larger = LARGER[unit];
  if (larger !== undefined && Math.abs(largest) >= larger.perUnit)
    return { unit: larger.unit, of: (value) => value / larger.perUnit };
  return { unit: unitSign(unit), of: (value) => value };
}

/** A unit as it is written: `°C`, `g/m²`, `lb/1000 ft²`. */
export const unitSign = (unit: string): string => SPELLED[unit] ?? unit.replace(/(m|ft)2\b/g, '$1²');

/** What has a rule of its own for its digits, in either unit. */
const countedAs = (unit: string): string => (unit === 'm2' || unit === 'each' ? unit : '');

export function withUnit(number: string, unit: string): string {
  return unit === '' ? number : `${number} ${unit}`;
}

/** `1 day`, `14 days`. */
export const daysWords = (days: number): string => `${days} ${Math.abs(days) === 1 ? 'day' : 'days'}`;
