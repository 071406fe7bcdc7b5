/** Reads an amount as a trainee types it, in the unit of the right one; other units of the same kind are converted. */
import { parseMass, parseVolume } from '../base/quantity/amount.js';
import { parseArea } from '../base/quantity/area.js';
import { parseNumber } from '../base/quantity/number.js';
import { numberWords } from '../base/quantity/number-words.js';
import type { Parsed } from '../base/quantity/result.js';

const DAYS_PER_WEEK = 7;
const ML_PER_L = 1000;

export type ReadAmount =
  | { readonly ok: true; readonly value: number; readonly understood: string }
  | { readonly ok: false; readonly says: string };

/** @param unit m2, g, mL, L, d or loads: what a number without a unit stands for */
export function readAmount(typed: string, unit: string): ReadAmount {
  const text = numberWords(typed.trim());
  switch (unit) {
    case 'm2':
      return read(parseArea(text));
    case 'g':
      return read(parseMass(text, 'g'));
    case 'mL':
      return read(parseVolume(text, 'mL'), ML_PER_L, 'mL');
    case 'L':
      return read(parseVolume(text, 'L'));
    case 'd':
      return readDays(text);
    default:
      return read(parseNumber(text.replace(/\b(?:loads?|tanks?|fills?)\b/i, '')));
  }
}

function readDays(text: string): ReadAmount {
  const isWeeks = /\bweeks?\b/i.test(text);
  const count = parseNumber(text.replace(/\b(?:days?|weeks?|d)\b/i, ''));
  return read(count, isWeeks ? DAYS_PER_WEEK : 1, 'days');
}

function read(parsed: Parsed<string>, factor = 1, unit?: string): ReadAmount {
  if (parsed.ok) {
    const value = parsed.value * factor;
    return { ok: true, value, understood: unit === undefined ? parsed.understood : `${value} ${unit}` };
  }
  const choices = parsed.choices?.map((choice) => choice.typed).join(' or ');
  return { ok: false, says: choices === undefined ? parsed.reason : `${parsed.reason} Type ${choices}.` };
}
