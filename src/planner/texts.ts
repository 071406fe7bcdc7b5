/**
 * Puts figures into sentences: `{figures.fork-depth-mm}` becomes the typical value with its unit,
 * `{figures.fork-depth-mm range}` the range, `{facts.x}` a worked-out number, `{45 cm}` a measure in the
 * reader's units. What was used is noted.
 */
import { plainNumber, withUnit } from '../base/quantity-words.js';
import { inSentence } from '../base/sentence-units.js';
import type { Units } from '../base/us-units.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { MEASURE, SLOT } from '../rules/slots.js';

/** How a unit is said after a number. */
const SAID: Readonly<Record<string, string>> = {
  d: 'days',
  m2: 'm²',
  C: '°C',
  'h/d': 'hours a day',
  deg: '°',
  count: '',
  times: '',
  'count/m2': 'holes to the square metre',
  'count/ft2': 'holes to the square foot',
  'g/m2': 'g/m²',
  'L/m2': 'L/m²',
  percent: '%',
  pH: '',
};

export type Say = (text: string) => string;

export interface SayInput {
  readonly pack: Pack;
  readonly scope: Scope;
  /** Takes every figure that a sentence used. */
  readonly note: (figureId: string) => void;
  readonly units: Units;
}

/** A function that fills the slots of a text and hands every figure it used to `note`. */
export function sayer({ pack, scope, note, units }: SayInput): Say {
  const inBoth = (ends: readonly number[], unit: string, asPrinted: string | undefined): string => {
    const [said, printed] = [measured(ends, unit, units), measured(ends, unit, 'metric')];
    return asPrinted === undefined || said === printed ? said : `${said} (${printed})`;
  };
  return (text) =>
    text
      .replace(SLOT, (slot, name: string, wantsRange: string | undefined, asPrinted?: string) => {
        const outcome = scope(name);
        if (!outcome.known || typeof outcome.value !== 'number') return slot;
        for (const used of outcome.from) if (used.startsWith('figures.')) note(used.slice('figures.'.length));
        const { value, least, most } = outcome;
        const isRange =
          wantsRange !== undefined && least !== undefined && most !== undefined && least !== most;
        // A range in a sentence is a rough guide: two figures, not what a conversion left behind.
        const ends = isRange ? [least, most].map((end) => Number(end.toPrecision(2))) : [value];
        return inBoth(ends, unitOf(pack, name), asPrinted);
      })
      .replace(MEASURE, (_, low: string, high: string | undefined, unit: string, asPrinted?: string) => {
        const ends = high === undefined ? [Number(low)] : [Number(low), Number(high)];
        return inBoth(ends, unit, asPrinted);
      });
}

function unitOf(pack: Pack, name: string): string {
  const [kind, id] = name.split('.') as [string, string];
  return (kind === 'figures' ? pack.figureById.get(id)?.unit : pack.factById.get(id)?.unit) ?? '';
}

/** One value, or two ends of a range; one where both read the same. */
function measured(ends: readonly number[], metricUnit: string, units: Units): string {
  const us = units === 'us' ? inSentence(ends, metricUnit) : undefined;
  const { numbers, unit } = us ?? { numbers: ends.map((end) => plainNumber(end)), unit: metricUnit };
  const said = SAID[unit] ?? unit;
  const words = [...new Set(numbers)].join(' to ');
  return said === '°' ? `${words}°` : withUnit(words, said);
}
