/** Reads rates over an area: `35 g/m2`, `0.75 lb/1000 ft2`, `1 oz/sq yd`, `6 fl oz per 1,000 sq ft`. */
import {
  MASS_RATE_IN_G_PER_M2,
  type MassRateUnit,
  VOLUME_RATE_IN_ML_PER_M2,
  type VolumeRateUnit,
} from '../units.js';
import { readAmount } from './amount.js';
import { readArea, splitAt } from './area.js';
import { parse } from './readings.js';
import { type Parsed, type Reading, unclear } from './result.js';
import { failed, positiveTokens } from './terms.js';
import type { Token } from './tokens.js';
import { MASSES, VOLUMES, type Vocabulary } from './words.js';

/**
 * A weight per area in g/m². An ounce here is a weight.
 *
 * @param typed as typed
 * @param defaultUnit unit of a number that has none
 */
export function parseMassRate(typed: string, defaultUnit: MassRateUnit = 'g/m2'): Parsed<'g/m2'> {
  return parse(typed, 'g/m2', (text) =>
    readRate(text, {
      vocabulary: MASSES,
      basePerShown: 1,
      example: '35 g/m2',
      defaultUnit,
      defaultSize: MASS_RATE_IN_G_PER_M2[defaultUnit],
    }),
  );
}

/**
 * A volume per area in mL/m². Per 1,000 square feet, a gallon or fluid ounce is a US one; otherwise it is asked.
 *
 * @param typed as typed
 * @param defaultUnit unit of a number that has none
 */
export function parseVolumeRate(typed: string, defaultUnit: VolumeRateUnit = 'mL/m2'): Parsed<'mL/m2'> {
  return parse(typed, 'mL/m2', (text) =>
    readRate(text, {
      vocabulary: VOLUMES,
      basePerShown: 1000,
      example: '2 mL/m2',
      defaultUnit,
      defaultSize: VOLUME_RATE_IN_ML_PER_M2[defaultUnit],
    }),
  );
}

interface RateKind<Unit extends string> {
  readonly vocabulary: Vocabulary<Unit>;
  /** How many of the shown unit are in the vocabulary's base unit: 1,000 mL in a litre. */
  readonly basePerShown: number;
  readonly example: string;
  readonly defaultUnit: string;
  readonly defaultSize: number;
}

function readRate<Unit extends string>(text: string, kind: RateKind<Unit>): Reading {
  const list = positiveTokens(text, kind.vocabulary.what);
  if (failed(list)) return list;
  const [number, ...rest] = list;
  if (number?.kind === 'number' && rest.length === 0) {
    return { ok: true, value: number.value * kind.defaultSize, echo: `${number.text} ${kind.defaultUnit}` };
  }
  const parts = splitAt(list, '/');
  const [top, bottom] = parts;
  if (parts.length !== 2 || top === undefined || bottom === undefined) {
    return unclear(`That is not a rate over an area. Type it like ${kind.example}.`);
  }
  return amountOver(top, bottom, kind);
}

function amountOver<Unit extends string>(
  top: readonly Token[],
  bottom: readonly Token[],
  { vocabulary, basePerShown }: RateKind<Unit>,
): Reading {
  const amount = readAmount(top, vocabulary, undefined);
  if (failed(amount)) return amount;
  const [count, ...unit] = bottom;
  if (count?.kind === 'number' && unit.length === 0) {
    return unclear(`Per ${count.text} of what? Type the unit too, such as ${count.text} sq ft.`);
  }
  const counted =
    count?.kind === 'number' ? bottom : [{ kind: 'number', value: 1, text: '1' } as const, ...bottom];
  const area = readArea(counted, 'm2');
  if (failed(area)) return area;
  if (area.areaM2 === 0) return unclear('A rate cannot be over no area at all.');
  const echo = `${amount.echo}/${area.echo.replace(/^1 /, '')}`;
  return { ok: true, value: (amount.value * basePerShown) / area.areaM2, echo };
}
