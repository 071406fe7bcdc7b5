/**
 * US measures as an instruction gives them: inches in the fractions of a tape, feet and gallons to two digits.
 * A worked-out amount keeps its three digits (quantity-words.ts); a depth of "0.0945 in" helps nobody.
 */
import { plainNumber } from './quantity-words.js';
import { usScale } from './us-units.js';

/** Parts of an inch worth telling, by how long the measure is. */
const FINEST: readonly { readonly belowIn: number; readonly parts: number }[] = [
  { belowIn: 1, parts: 16 },
  { belowIn: 3, parts: 8 },
  { belowIn: 12, parts: 4 },
  { belowIn: Number.POSITIVE_INFINITY, parts: 1 },
];
/** Feet in halves while they can be paced, then whole. */
const HALF_FEET_BELOW = 12;

/**
 * The ends of a measure in US units; undefined where the unit is the same everywhere.
 * Nothing above 0 becomes 0.
 */
export function inSentence(
  ends: readonly number[],
  metricUnit: string,
): { readonly numbers: readonly string[]; readonly unit: string } | undefined {
  const scale = usScale(Math.max(...ends), metricUnit);
  if (scale === undefined) return undefined;
  const said = SAID[scale.unit] ?? twoDigits;
  return { numbers: ends.map((end) => said(scale.of(end))), unit: SIGNS[scale.unit] ?? scale.unit };
}

const SIGNS: Readonly<Record<string, string>> = { F: '°F', ft2: 'ft²' };

const wholeDegrees = (value: number): string => String(Math.round(value));

const twoDigits = (value: number): string =>
  plainNumber(Math.abs(value) < 100 ? Number(value.toPrecision(2)) : value);

/** `1/16`, `2 1/2`, `14`. */
const inFractions = (inches: number): string =>
  mixed(inches, FINEST.find(({ belowIn }) => inches < belowIn)?.parts ?? 1);

const inHalves = (feet: number): string => mixed(feet, feet < HALF_FEET_BELOW ? 2 : 1);

const SAID: Readonly<Record<string, (value: number) => string>> = {
  in: inFractions,
  ft: inHalves,
  F: wholeDegrees,
};

/** A whole and a fraction of so many parts; nothing above 0 becomes 0. */
function mixed(value: number, parts: number): string {
  const counted = value > 0 ? Math.max(1, Math.round(value * parts)) : 0;
  const whole = Math.floor(counted / parts);
  const rest = counted - whole * parts;
  if (rest === 0) return String(whole);
  const shared = greatestCommon(rest, parts);
  const fraction = `${rest / shared}/${parts / shared}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));
