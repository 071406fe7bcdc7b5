/** Tiny scopes for tests: some names known, the rest open. */
import type { Known, Outcome, Scope, Value } from '../../src/rules/evaluate.js';

export const known = (value: Value, used: readonly string[] = []): Known => ({
  known: true,
  value,
  used,
  from: used,
});

/** Every value known under its name; a name that is absent is open, to be settled by itself. */
export function scopeOf(values: Readonly<Record<string, Value>>): Scope {
  return (name): Outcome =>
    Object.hasOwn(values, name) ? known(values[name] as Value, [name]) : { known: false, open: [name] };
}
