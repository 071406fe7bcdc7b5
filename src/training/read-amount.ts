/** Reads an amount as a trainee types it, in the unit of the right one; other units of the same kind are converted. */
import { parseMass, parseVolume } from '../base/quantity/amount.js';
import { parseArea } from '../base/quantity/area.js';
import { parseDepth } from '../base/quantity/length.js';
import { parseNumber } from '../base/quantity/number.js';
import { numberWords } from '../base/quantity/number-words.js';
import type { Parsed } from '../base/quantity/result.js';

const DAYS_PER_WEEK = 7;
const ML_PER_L = 1000;
const MINUTES_PER_HOUR = 60;

export type ReadAmount =
  | { readonly ok: true; readonly value: number; readonly understood: string }
  | { readonly ok: false; readonly says: string };

/** @param unit m2, g, mL, L, mm, d, min, loads or each: what a number without a unit stands for */
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
    case 'mm':
      return read(parseDepth(text));
    case 'd':
      return readDays(text);
    case 'min':
      return readMinutes(text);
    default:
      return read(parseNumber(uncounted(text)));
  }
}

function readDays(text: string): ReadAmount {
  const isWeeks = /\bweeks?\b/i.test(text);
  const count = parseNumber(text.replace(/\b(?:days?|weeks?|d)\b/i, ''));
  return read(count, isWeeks ? DAYS_PER_WEEK : 1, 'days');
}

function readMinutes(text: string): ReadAmount {
  const [, hours, minutes] = /^(.+?)\s*(?:hours?|h)\b\s*(.*)$/i.exec(text) ?? [undefined, '', text];
  const rest = (minutes ?? '').replace(/\s*\b(?:minutes?|mins?)\b/i, '').trim();
  if (hours === '') return read(parseNumber(rest), 1, 'min');
  const whole = parseNumber(hours ?? '');
  if (!whole.ok || rest === '') return read(whole, MINUTES_PER_HOUR, 'min');
  const more = parseNumber(rest);
  return more.ok ? asMinutes(whole.value * MINUTES_PER_HOUR + more.value) : read(more);
}

const asMinutes = (value: number): ReadAmount => ({ ok: true, value, understood: `${value} min` });

/** Things that are counted may be named behind the number: `620 grubs`. */
const uncounted = (text: string): string => text.replace(/(?<=\d)\s+[a-z][a-z ]*$/i, '');

function read(parsed: Parsed<string>, factor = 1, unit?: string): ReadAmount {
  if (parsed.ok) {
    const value = parsed.value * factor;
    return { ok: true, value, understood: unit === undefined ? parsed.understood : `${value} ${unit}` };
  }
  const choices = parsed.choices?.map((choice) => choice.typed).join(' or ');
  return { ok: false, says: choices === undefined ? parsed.reason : `${parsed.reason} Type ${choices}.` };
}
