/**
 * Numbers as a reader wants them: three significant digits, kg and L once they read better, spaced units.
 * Rounding for the eye only; the exact number stays in the Plan.
 */
import { requireFinite } from './refuse.js';

interface Scale {
  readonly unit: string;
  readonly perUnit: number;
}

const LARGER: Readonly<Record<string, Scale>> = {
  g: { unit: 'kg', perUnit: 1000 },
  mL: { unit: 'L', perUnit: 1000 },
};
const SPELLED: Readonly<Record<string, string>> = { m2: 'm²', each: '' };
const NO_BREAK_SPACE = '\u00a0';
const MINUTES_PER_HOUR = 60;

/** `840 mL`, `1.79 kg`, `84 m²`, `3` for things that are counted. */
export function quantity(value: number, unit: string): string {
  return withUnit(plainNumber(value / scaleFor(value, unit).perUnit, unit), scaleFor(value, unit).unit);
}

/** `780 to 900 mL`, in the unit that suits the larger end; one value when both ends read the same. */
export function quantityRange(
  { min, max }: { readonly min: number; readonly max: number },
  unit: string,
): string {
  const scale = scaleFor(max, unit);
  const [low, high] = [min, max].map((end) => plainNumber(end / scale.perUnit, unit));
  return withUnit(low === high ? `${high}` : `${low} to ${high}`, scale.unit);
}

/** The range, or nothing where it would only repeat the value. */
export function rangeUnlessSame(
  value: number,
  range: { readonly min: number; readonly max: number } | null,
  unit: string,
): string {
  if (range === null) return '';
  const words = quantityRange(range, unit);
  return words === quantity(value, unit) ? '' : words;
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

/** `3.36`, `84`, `1230`, `12 300`: three significant digits, counted things and areas to the whole number. */
export function plainNumber(value: number, unit = ''): string {
  requireFinite('value', value);
  const isCount = unit === 'each' || (unit === 'm2' && Math.abs(value) >= 10);
  const rounded = isCount ? Math.round(value) : Number(value.toPrecision(3));
  const [whole = '0', decimals] = String(rounded).split('.');
  const grouped = Math.abs(rounded) < 10_000 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, NO_BREAK_SPACE);
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}

function scaleFor(value: number, unit: string): Scale {
  const larger = LARGER[unit];
  if (larger !== undefined && Math.abs(value) >= larger.perUnit) return larger;
  return { unit: SPELLED[unit] ?? unit, perUnit: 1 };
}

function withUnit(number: string, unit: string): string {
  return unit === '' ? number : `${number} ${unit}`;
}
