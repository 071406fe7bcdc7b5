/** One typed number in the unit of its key: other units understood, doubt refused with every reading. */
import { parseMass, parseVolume } from '../base/quantity/amount.js';
import { parseArea } from '../base/quantity/area.js';
import { parseFraction } from '../base/quantity/fraction.js';
import { inReaders } from '../base/quantity/in-readers.js';
import { parseDepth, parseLength } from '../base/quantity/length.js';
import { parseNumber } from '../base/quantity/number.js';
import { parseMassRate, parseVolumeRate } from '../base/quantity/rate.js';
import type { Parsed } from '../base/quantity/result.js';
import { parseTemperature } from '../base/quantity/temperature.js';
import { convert, SPEED_IN_KM_PER_H } from '../base/units.js';
import type { Units } from '../base/us-units.js';
import type { Key, KeyKind } from './reckoner.js';

export type ReadNumber = number | { readonly reason: string };

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const ML_PER_L = 1000;

export const isPlainNumber = (text: string): boolean => PLAIN.test(text);

export function readNumberOf(key: Key, typed: string, units: Units): ReadNumber {
  const text = withoutOwnUnit(typed, key);
  // A plain number is in the key's own unit, whatever it looks like: 1 for a share is the whole.
  if (isPlainNumber(text)) return finite(Number(text));
  if (key.kind === 'speed') return readSpeed(key, text);
  const parsed = inReaders(PARSERS[key.kind]?.(text) ?? parseNumber(text), units);
  if (parsed.ok) return key.kind === 'water-rate' ? parsed.value / ML_PER_L : parsed.value;
  const readings = parsed.choices?.map(({ typed: said, understood }) => `${said} (${understood})`);
  return { reason: `${parsed.reason}${readings === undefined ? '' : ` Type ${readings.join(' or ')}.`}` };
}

const finite = (value: number): ReadNumber =>
  Number.isFinite(value) ? value : { reason: 'That is more than can be reckoned with. Type it again.' };

/** `5 m/s2`, `0.6 L/min` or `15 %` where the plain number is wanted in just that unit. */
function withoutOwnUnit(text: string, { kind, unit }: Key): string {
  const units = kind === 'percent' ? ['%', 'percent'] : kind === 'number' ? [unit] : [];
  const own = units.find((each) => each !== '' && text.toLowerCase().endsWith(each.toLowerCase()));
  if (own === undefined) return text;
  const rest = text.slice(0, -own.length).trim();
  return rest === '' ? text : rest;
}

function readSpeed({ unit }: Key, text: string): ReadNumber {
  const [, figure = text, typedUnit] = /^(.*\d)\s*(km\/h|m\/s|mph)$/i.exec(text) ?? [];
  const parsed = parseNumber(figure);
  if (!parsed.ok) return { reason: `${parsed.reason} For a speed: km/h, m/s or mph.` };
  const to = unit as keyof typeof SPEED_IN_KM_PER_H;
  const from = (typedUnit?.toLowerCase() ?? unit) as keyof typeof SPEED_IN_KM_PER_H;
  return convert(SPEED_IN_KM_PER_H, parsed.value, { from, to });
}

const PARSERS: Readonly<Partial<Record<KeyKind, (text: string) => Parsed<string>>>> = {
  area: (text) => parseArea(text),
  length: (text) => parseLength(text),
  depth: (text) => parseDepth(text),
  mass: (text) => parseMass(text, 'g'),
  volume: (text) => parseVolume(text),
  'mass-rate': (text) => parseMassRate(text),
  'water-rate': (text) => parseVolumeRate(text, 'L/m2'),
  'product-rate': (text) => parseVolumeRate(text),
  fraction: (text) => parseFraction(text),
  temperature: (text) => parseTemperature(text),
};
