/** Gallons, pints and fluid ounces without a country: whoever reads US units means those of the US. */
import type { Units } from '../us-units.js';
import type { Parsed } from './result.js';

/** The reading with the doubt about the country settled; any other doubt stays. */
export function inReaders(parsed: Parsed<string>, units: Units): Parsed<string> {
  if (parsed.ok || units === 'metric' || parsed.choices === undefined) return parsed;
  const choices = parsed.choices.filter(({ typed }) => !/\bUK\b/.test(typed));
  const [only, another] = choices;
  if (only === undefined || another !== undefined) return { ...parsed, choices };
  return { ok: true, value: only.value, unit: '', understood: only.understood, approximate: false };
}
