/** The verdict and the findings of a plan: what was judged, by which reasons, and what it rests on. */
import { diagnose, type Judged } from '../diagnosis/diagnose.js';
import { reasonsFor, sentenceOf, type View } from '../interview/reasons.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Plan, PlanFinding } from './plan.js';
import type { Ledger } from './provenance.js';
import { holds } from './steps.js';
import type { Say } from './texts.js';

export function verdictOf(view: View, knownScope: Scope, say: Say, ledger: Ledger): Plan['verdict'] {
  const { pack, scope } = view;
  const chosen = pack.verdicts.findIndex(({ when }) => holds(when, scope));
  const rule = pack.verdicts[chosen];
  if (rule === undefined)
    throw new Error('no verdict holds: the last one in verdicts.json must always be true');
  const need = { var: 'facts.need' };
  return {
    id: rule.id,
    title: rule.title,
    because: say(rule.because),
    reasons: sentenceOf(reasonsFor(rule.when === true ? need : rule.when, view)),
    restsOn: openBehind(pack.verdicts.slice(0, chosen + 1), knownScope).map(
      (id) => pack.questionById.get(id)?.label ?? id,
    ),
    sources: ledger.cite(rule.sources),
  };
}

/** The open questions that could still have led to another verdict; none when it is certain. */
function openBehind(verdicts: Pack['verdicts'], knownScope: Scope): string[] {
  const open = verdicts.flatMap(({ when }) => {
    const outcome = evaluate(when, knownScope);
    return outcome.known ? [] : outcome.open;
  });
  return [...new Set(open)];
}

export function findingsOf(view: View, knownScope: Scope, say: Say, ledger: Ledger): PlanFinding[] {
  const { pack, scope: assumedScope } = view;
  const known = { ...view, scope: knownScope };
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
          : sentenceOf(reasonsFor(finding.when, known)),
      why: say(finding.why),
      signsFor: signsFor.map(say),
      signsAgainst: signsAgainst.map(say),
      tellsApart: say(finding.tellsApart),
      open,
      assumedSo: verdict === 'cannotTell' && holds(finding.when, assumedScope),
      sources: verdict === 'found' ? ledger.cite(finding.sources) : finding.sources,
    };
  };
  return diagnose(pack, knownScope).map(planFinding);
}
