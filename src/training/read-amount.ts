/** Reads an amount as a trainee types it, in the unit of the right one; other units of the same kind are converted. */
import { parseMass, parseVolume } from '../base/quantity/amount.js';
import { parseArea } from '../base/quantity/area.js';
import { inReaders } from '../base/quantity/in-readers.js';
import { parseDepth } from '../base/quantity/length.js';
import { parseNumber } from '../base/quantity/number.js';
import { numberWords } from '../base/quantity/number-words.js';
import type { Parsed } from '../base/quantity/result.js';
import { type LengthUnit, type MassUnit, VOLUME_IN_L, type VolumeUnit } from '../base/units.js';
import type { Units } from '../base/us-units.js';
import { AREA_DEFAULTS } from '../interview/read-parts-shape.js';
import { amountWords, bareUnit, type RightAmount } from './right-amount.js';

const DAYS_PER_WEEK = 7;
const ML_PER_L = 1000;
const MINUTES_PER_HOUR = 60;

export type ReadAmount =
  | { readonly ok: true; readonly value: number; readonly understood: string }
  | { readonly ok: false; readonly says: string };

/**
 * @param right its unit is m2, g, mL, L, mm, d, min, loads or each
 * @param units in which a number without a unit is meant
 */
export function readAmount(typed: string, right: RightAmount, units: Units): ReadAmount {
  const text = numberWords(typed.trim());
  const bare = bareUnit(right, units);
  const inUnits = (parsed: Parsed<string>, factor = 1): ReadAmount =>
    read(inReaders(parsed, units), factor, (value, echo) => heard(value, echo, right, units));
  switch (right.unit) {
    case 'm2':
      return inUnits(parseArea(text, AREA_DEFAULTS[units]));
    case 'g':
      return inUnits(parseMass(text, bare as MassUnit));
    case 'mL':
      return inUnits(parseVolume(text, volumeUnit(bare)), ML_PER_L);
    case 'L':
      return inUnits(parseVolume(text, volumeUnit(bare)));
    case 'mm':
      return inUnits(parseDepth(text, bare as LengthUnit));
    case 'd':
      return readDays(text);
    case 'min':
      return readMinutes(text);
    default:
      return read(parseNumber(uncounted(text)));
  }
}

/** The unit's name where gallons of two countries are told apart. */
function volumeUnit(bare: string): VolumeUnit {
  const name = bare === 'ft³' ? 'ft3' : bare in VOLUME_IN_L ? bare : `US ${bare}`;
  return name as VolumeUnit;
}

/** In the trainee's units, with what was typed beside it where that was in another unit. */
function heard(value: number, echo: string, right: RightAmount, units: Units): string {
  const [typed = ''] = echo.split(' = ');
  if (units === 'metric') return right.unit === 'mL' ? `${value} mL` : echo;
  const said = amountWords(value, right, units);
  const asTyped = typed.replace('US ', '').replace('ft3', 'ft³');
  const isSame = asTyped.endsWith(` ${bareUnit(right, units)}`) || asTyped === said.replace(/\s/g, ' ');
  return isSame ? said : `${said} (${typed})`;
}

function readDays(text: string): ReadAmount {
  const isWeeks = /\bweeks?\b/i.test(text);
  const count = parseNumber(text.replace(/\b(?:days?|weeks?|d)\b/i, ''));
  return read(count, isWeeks ? DAYS_PER_WEEK : 1, (days) => `${days} days`);
}

function readMinutes(text: string): ReadAmount {
  const [, hours, minutes] = /^(.+?)\s*(?:hours?|h)\b\s*(.*)$/i.exec(text) ?? [undefined, '', text];
  const rest = (minutes ?? '').replace(/\s*\b(?:minutes?|mins?)\b/i, '').trim();
  if (hours === '') return read(parseNumber(rest), 1, inMinutes);
  const whole = parseNumber(hours ?? '');
  if (!whole.ok || rest === '') return read(whole, MINUTES_PER_HOUR, inMinutes);
  const more = parseNumber(rest);
  return more.ok ? asMinutes(whole.value * MINUTES_PER_HOUR + more.value) : read(more);
}

const inMinutes = (value: number): string => `${value} min`;
const asMinutes = (value: number): ReadAmount => ({ ok: true, value, understood: inMinutes(value) });

/** Things that are counted may be named behind the number: `620 grubs`. */
const uncounted = (text: string): string => text.replace(/(?<=\d)\s+[a-z][a-z ]*$/i, '');

function read(
  parsed: Parsed<string>,
  factor = 1,
  says: (value: number, echo: string) => string = (_, echo) => echo,
): ReadAmount {
  if (parsed.ok) {
    const value = parsed.value * factor;
    return { ok: true, value, understood: says(value, parsed.understood) };
  }
  const choices = parsed.choices?.map((choice) => choice.typed).join(' or ');
  return { ok: false, says: choices === undefined ? parsed.reason : `${parsed.reason} Type ${choices}.` };
}
