/** What is wrong with the lawn, and how sure: every finding judged by what was answered, never by an assumption. */
import { diagnose, type Judged } from '../diagnosis/diagnose.js';
import { reasonsFor, sentenceOf } from '../interview/reasons.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { PlanFinding } from './plan.js';
import type { Ledger } from './provenance.js';
import { holds } from './steps.js';
import type { Say } from './texts.js';

/** @param scopes what was answered, and what the plan goes by */
export function findingsOf(
  pack: Pack,
  scopes: { readonly known: Scope; readonly assumed: Scope },
  say: Say,
  ledger: Ledger,
): PlanFinding[] {
  const planFinding = ({ finding, verdict, strength, signsFor, signsAgainst, open }: Judged): PlanFinding => {
    const missing = open.map((id) => pack.questionById.get(id)?.label ?? id);
    return {
      id: finding.id,
      title: finding.title,
      verdict,
      strength,
      because:
        verdict === 'cannotTell'
          ? `Not answered: ${missing.join(', ')}.`
          : sentenceOf(reasonsFor(finding.when, pack, scopes.known)),
      why: say(finding.why),
      signsFor: signsFor.map(say),
      signsAgainst: signsAgainst.map(say),
      tellsApart: say(finding.tellsApart),
      open,
      assumedSo: verdict === 'cannotTell' && holds(finding.when, scopes.assumed),
      sources: verdict === 'found' ? ledger.cite(finding.sources) : finding.sources,
    };
  };
  return diagnose(pack, scopes.known).map(planFinding);
}
