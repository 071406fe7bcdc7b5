/** The cautions of a plan: those that its steps name and that this lawn calls for, dangers first. */
import type { Pack } from '../rules/pack.js';
import type { PlanCaution, PlanStep } from './plan.js';
import type { Ledger } from './provenance.js';
import type { Say } from './texts.js';

const DANGER_FIRST = ['danger', 'warning', 'note'];

export function cautionsOf(steps: readonly PlanStep[], pack: Pack, say: Say, ledger: Ledger): PlanCaution[] {
  return pack.cautions
    .map((caution) => ({
      caution,
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
    .sort((a, b) => DANGER_FIRST.indexOf(a.severity) - DANGER_FIRST.indexOf(b.severity));
}
