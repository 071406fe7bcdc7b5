/** Reads what was typed for each key: units understood, lists taken apart, doubt refused with both readings. */
import { isIsoDate } from '../base/dates.js';
import { nearest } from '../base/nearest.js';
import { parseMass, parseVolume } from '../base/quantity/amount.js';
import { parseArea } from '../base/quantity/area.js';
import { parseFraction } from '../base/quantity/fraction.js';
import { parseDepth, parseLength } from '../base/quantity/length.js';
import { parseNumber } from '../base/quantity/number.js';
import { parseMassRate, parseVolumeRate } from '../base/quantity/rate.js';
import type { Parsed } from '../base/quantity/result.js';
import { parseTemperature } from '../base/quantity/temperature.js';
import type { Given, Key } from './reckoner.js';

export type ReadInputs =
  | { readonly ok: true; readonly given: Given }
  | { readonly ok: false; readonly kind: 'usage' | 'values'; readonly problems: readonly string[] };

const PLAIN = /^[+-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i;
const ML_PER_L = 1000;

export function readInputs(keys: readonly Key[], typed: Readonly<Record<string, string>>): ReadInputs {
  const names = keys.map(({ name }) => name);
  const usage = [
    ...Object.keys(typed)
      .filter((name) => !names.includes(name))
      .map((name) => {
        const near = nearest(name, names);
        return `There is no key "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`} Keys: ${names.join(', ')}.`;
      }),
    ...keys
      .filter(({ name, isOptional }) => isOptional !== true && typed[name] === undefined)
      .map(({ name, unit, says }) => `"${name}" is missing: ${says}${unit === '' ? '' : `, ${unit}`}.`),
  ];
  if (usage.length > 0) return { ok: false, kind: 'usage', problems: usage };
  const problems: string[] = [];
  const given: Record<string, Given[string]> = {};
  for (const key of keys) {
    const text = typed[key.name];
    if (text === undefined) continue;
    const read = readKey(key, text.trim());
    if (typeof read === 'object' && 'reason' in read)
      problems.push(`"${key.name}" is "${text}". ${read.reason}`);
    else given[key.name] = read;
  }
  return problems.length > 0 ? { ok: false, kind: 'values', problems } : { ok: true, given };
}

type ReadKey = Given[string] | { readonly reason: string };

function readKey(key: Key, text: string): ReadKey {
  if (key.kind === 'word') {
    if (key.words?.includes(text)) return text;
    const near = nearest(text, key.words ?? []);
    return {
      reason: `Allowed: ${key.words?.join(', ')}.${near === undefined ? '' : ` Did you mean ${near}?`}`,
    };
  }
  if (key.kind === 'date')
    return isIsoDate(text) ? text : { reason: 'Give a date that exists, such as 2027-03-13.' };
  if (key.kind === 'points') return readPoints(text);
  if (key.isList !== true) return readNumber(key, text);
  const values: number[] = [];
  for (const item of text.split(/[,;\s]+/).filter((each) => each !== '')) {
    const value = readNumber(key, item);
    if (typeof value !== 'number') return value;
    values.push(value);
  }
  return values.length > 0 ? values : { reason: 'Give numbers with commas between them.' };
}

function readNumber(key: Key, text: string): number | { readonly reason: string } {
  // A plain number is in the key's own unit, whatever it looks like: 1 for a share is the whole.
  if (PLAIN.test(text)) return Number(text);
  const parsed = parserFor(key)(text);
  if (parsed.ok) return key.kind === 'water-rate' ? parsed.value / ML_PER_L : parsed.value;
  const choices = parsed.choices?.map(({ typed, understood }) => `${typed} (${understood})`).join(' or ');
  return { reason: `${parsed.reason}${choices === undefined ? '' : ` Type ${choices}.`}` };
}

function parserFor(key: Key): (text: string) => Parsed<string> {
  switch (key.kind) {
    case 'area':
      return (text) => parseArea(text);
    case 'length':
      return (text) => parseLength(text);
    case 'depth':
      return (text) => parseDepth(text);
    case 'mass':
      return (text) => parseMass(text, 'g');
    case 'volume':
      return (text) => parseVolume(text);
    case 'mass-rate':
      return (text) => parseMassRate(text);
    case 'water-rate':
      return (text) => parseVolumeRate(text, 'L/m2');
    case 'product-rate':
      return (text) => parseVolumeRate(text);
    case 'fraction':
      return (text) => parseFraction(text);
    case 'temperature':
      return (text) => parseTemperature(text);
    default:
      return (text) => parseNumber(text);
  }
}

function readPoints(text: string): ReadKey {
  const points = text.split(/\s+/).map((pair) => pair.split(',').map(Number));
  const isRight = points.every((point) => point.length === 2 && point.every(Number.isFinite));
  return isRight
    ? (points as [number, number][])
    : { reason: 'Give corners as "0,0 12,0 12,7": x,y with a blank between corners.' };
}
