/**
 * Puts figures into sentences: `{figures.fork-depth-mm}` becomes the typical value with its unit,
 * `{figures.fork-depth-mm range}` the range, `{facts.x}` a worked-out number. What was used is noted.
 */
import { plainNumber } from '../base/quantity-words.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { SLOT } from '../rules/slots.js';

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
  'g/m2': 'g/m²',
  'L/m2': 'L/m²',
  percent: '%',
  pH: '',
};

export type Say = (text: string) => string;

/** A function that fills the slots of a text and hands every figure it used to `note`. */
export function sayer(pack: Pack, scope: Scope, note: (figureId: string) => void): Say {
  return (text) =>
    text.replace(SLOT, (slot, name: string, wantsRange: string | undefined) => {
      const outcome = scope(name);
      if (!outcome.known || typeof outcome.value !== 'number') return slot;
      for (const used of outcome.from) if (used.startsWith('figures.')) note(used.slice('figures.'.length));
      const unit = unitOf(pack, name);
      const { least, most } = outcome;
      if (wantsRange !== undefined && least !== undefined && most !== undefined && least !== most) {
        // A range in a sentence is a rough guide: two figures, not what a conversion left behind.
        const [from, until] = [least, most].map((end) => plainNumber(Number(end.toPrecision(2))));
        return withUnit(`${from} to ${until}`, unit);
      }
      return withUnit(plainNumber(outcome.value), unit);
    });
}

function unitOf(pack: Pack, name: string): string {
  const [kind, id] = name.split('.') as [string, string];
  return (kind === 'figures' ? pack.figureById.get(id)?.unit : pack.factById.get(id)?.unit) ?? '';
}

function withUnit(number: string, unit: string): string {
  const said = SAID[unit] ?? unit;
  return said === '' ? number : said === '°' ? `${number}°` : `${number} ${said}`;
}
