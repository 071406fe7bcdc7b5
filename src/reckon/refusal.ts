/** Turns an equation's refusal of an argument into a sentence about what was typed. */
import type { Given, Reckoner } from './reckoner.js';

/** Arguments of equations whose name is not the key's own. */
const KEY_OF_ARGUMENT: Readonly<Record<string, string>> = { passCount: 'passes' };

const REFUSAL = /^(\w+) ((?:must|is|came) .+?), got (.*?)\.(?:$| (?=[A-Z\d]))(.*)$/s;

export interface Asked {
  readonly reckoner: Reckoner;
  readonly typed: Readonly<Record<string, string>>;
  readonly given: Given;
}

/**
 * `"areaM2" is "-3": it must be above 0.` for `areaM2 must be above 0, got -3.`
 *
 * A refusal of something that was not typed, such as a result too large, stays as it is.
 */
export function wordedForThePerson(message: string, { reckoner, typed, given }: Asked): string {
  const [, argument = '', allowed = '', found = '', hint = ''] = REFUSAL.exec(message) ?? [];
  const name = KEY_OF_ARGUMENT[argument] ?? argument;
  const key = reckoner.keys.find((each) => each.name === name);
  const text = typed[name];
  if (key === undefined || text === undefined) return message;
  const tail = hint === '' ? '' : ` ${hint}`;
  return `"${name}" is "${text}"${understood(found, text, given[name], key.unit)}: it ${shortened(allowed)}.${tail}`;
}

const DIGITS = 4;

/** A limit that was worked out, such as the length of a day, without its long tail. */
const shortened = (text: string): string =>
  text.replace(/\d+\.\d{5,}/g, (limit) => String(Number(Number(limit).toPrecision(DIGITS))));

/** What the equation found, where that is not what stands on the screen: another unit, or one of a list. */
function understood(found: string, text: string, value: Given[string] | undefined, unit: string): string {
  if (found === text) return '';
  if (value === Number(found)) return ` (${found}${unit === 'fraction' ? '' : ` ${unit}`})`;
  const isCount = Array.isArray(value) && value.length === Number(found);
  return isCount ? ` (${found} of them)` : ` (${found})`;
}
