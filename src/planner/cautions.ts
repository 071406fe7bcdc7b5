/** The cautions of a plan: those that its steps name and that this lawn calls for, dangers first. */
import type { Units } from '../base/us-units.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import type { PlanCaution, PlanStep } from './plan.js';
import type { Ledger } from './provenance.js';
import { isNotRuledOut } from './steps.js';
import type { Say } from './texts.js';
import { wordedIn } from './worded-rule.js';

const WORST_FIRST = ['danger', 'warning', 'caution', 'notice', 'note'];

/** Whether the caution goes with the step on this lawn; left out only where an answer settles it. */
export const goesWith = (id: string, { cautionWhen }: Step, pack: Pack, scope: Scope): boolean =>
  [pack.cautionById.get(id)?.when, cautionWhen?.[id]].every((when = true) => isNotRuledOut(when, scope));

interface CautionContext {
  readonly pack: Pack;
  readonly say: Say;
  readonly ledger: Ledger;
  readonly units: Units;
}

export function cautionsOf(
  steps: readonly PlanStep[],
  { pack, say, ledger, units }: CautionContext,
): PlanCaution[] {
  return pack.cautions
    .map((caution) => ({
      caution: wordedIn(units, caution),
      forSteps: steps.filter(({ cautions }) => cautions.includes(caution.id)).map(({ id }) => id),
    }))
    .filter(({ forSteps }) => forSteps.length > 0)
    .map(({ caution, forSteps }) => ({
      id: caution.id,
      severity: caution.severity,
      line: say(caution.line),
      detail: say(caution.detail),
      who: caution.who,
      forSteps,
      basis: caution.basis,
      sources: ledger.cite(caution.sources),
    }))
    .sort((a, b) => WORST_FIRST.indexOf(a.severity) - WORST_FIRST.indexOf(b.severity));
}
