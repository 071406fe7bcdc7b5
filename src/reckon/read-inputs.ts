/** Reads what was typed for each key, and tells every problem of names before any problem of values. */
import { isIsoDate } from '../base/dates.js';
import { nearest } from '../base/nearest.js';
import type { Units } from '../base/us-units.js';
import { isPlainNumber, type ReadNumber, readNumberOf } from './read-number.js';
import type { Given, Key, Reckoner } from './reckoner.js';

export type ReadInputs =
  | { readonly ok: true; readonly given: Given }
  | { readonly ok: false; readonly kind: 'usage' | 'values'; readonly problems: readonly string[] };

type Typed = Readonly<Record<string, string>>;

export function readInputs(reckoner: Reckoner, typed: Typed, units: Units): ReadInputs {
  const usage = [...unknownKeys(reckoner, typed), ...missingKeys(reckoner, typed)];
  if (usage.length > 0) return { ok: false, kind: 'usage', problems: usage };
  const problems: string[] = [];
  const given: Record<string, Given[string]> = {};
  for (const key of reckoner.keys) {
    if (!Object.hasOwn(typed, key.name)) continue;
    const text = typed[key.name] as string;
    const read = readKey(key, text.trim(), units);
    if (isReason(read)) problems.push(`"${key.name}" is "${text}". ${read.reason}`);
    else given[key.name] = read;
  }
  return problems.length > 0 ? { ok: false, kind: 'values', problems } : { ok: true, given };
}

function unknownKeys({ name, keys }: Reckoner, typed: Typed): string[] {
  const names = keys.map((key) => key.name);
  return Object.keys(typed)
    .filter((each) => !names.includes(each))
    .map((each) => {
      const near = nearest(each, names);
      const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
      return `"${name}" has no key "${each}".${hint} Its keys: ${names.join(', ')}.`;
    });
}

function missingKeys({ keys, exactlyOneOf = [] }: Reckoner, typed: Typed): string[] {
  const isGiven = (name: string): boolean => Object.hasOwn(typed, name);
  const missing = keys.filter(({ name, isOptional }) => isOptional !== true && !isGiven(name));
  const alone = keys.filter(({ name, needs }) => needs !== undefined && isGiven(name) && !isGiven(needs));
  const chosen = exactlyOneOf.filter(isGiven).length;
  return [
    ...missing.map((key) => `"${key.name}" is missing: ${describeKey(key)}.`),
    ...alone.map(({ name, needs }) => `"${name}" means nothing without "${needs}", which is missing.`),
    ...(exactlyOneOf.length > 0 && chosen !== 1
      ? [`Give ${chosen === 0 ? 'one' : 'only one'} of these: ${exactlyOneOf.join(', ')}.`]
      : []),
  ];
}

/** `area to sow, in m2, above 0`. */
export function describeKey({ says, unit, range }: Key): string {
  const measured = unit === '' || unit === 'fraction' || unit === 'count' ? '' : `, in ${unit}`;
  return `${says}${measured}; ${range}`;
}

type ReadKey = Given[string] | { readonly reason: string };

const isReason = (read: ReadKey): read is { readonly reason: string } =>
  typeof read === 'object' && 'reason' in read;

function readKey(key: Key, text: string, units: Units): ReadKey {
  if (key.kind === 'word') return readWord(text, key.words ?? []);
  if (key.kind === 'date') {
    return isIsoDate(text) ? text : { reason: 'Give a date that exists, such as 2027-03-13.' };
  }
  if (key.kind === 'points') return readPoints(text);
  return key.isList === true ? readList(key, text, units) : readNumberOf(key, text, units);
}

function readWord(text: string, words: readonly string[]): ReadKey {
  const word = words.find((each) => each === text.toLowerCase());
  if (word !== undefined) return word;
  const near = nearest(text, words);
  const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
  return { reason: `Allowed: ${words.join(', ')}.${hint}` };
}

/** A comma separates; where there are semicolons they do, and a comma may be the decimal sign. */
function readList(key: Key, text: string, units: Units): ReadKey {
  const items = text.split(text.includes(';') ? ';' : ',').map((item) => item.trim());
  const values: number[] = [];
  for (const item of items) {
    if (item === '') return { reason: 'Give numbers with commas between them, and none left out.' };
    const value: ReadNumber = readNumberOf(key, item, units);
    if (typeof value !== 'number') return { reason: `At "${item}": ${value.reason}` };
    values.push(value);
  }
  return values;
}

function readPoints(text: string): ReadKey {
  const points = text.split(/\s+/).map((pair) => pair.split(','));
  if (!points.every((point) => point.length === 2 && point.every(isPlainNumber))) {
    return { reason: 'Give corners as "0,0 12,0 12,7": x,y in metres with a blank between corners.' };
  }
  return points.map(([x, y]) => [Number(x), Number(y)] as const);
}
