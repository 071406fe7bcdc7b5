/** What may go wrong by now: the troubles of the weeks after sowing that can be met on this day on this lawn. */
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Trouble } from '../rules/schema-pack.js';

/** @param days whole days since sowing; what cannot be told is shown, never hidden */
export function troublesOn(pack: Pack, scope: Scope, days: number): Trouble[] {
  return pack.troubles.filter(({ fromDay, toDay, when }) => {
    if (days < fromDay || days > toDay) return false;
    const outcome = when === undefined ? undefined : evaluate(when, scope);
    return outcome === undefined || !outcome.known || outcome.value === true;
  });
}
