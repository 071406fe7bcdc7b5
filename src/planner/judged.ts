/** The judgement of a dated plan: the verdict and how sure it is, the findings, and what accounts for every symptom. */
import { firstSowingIn } from './dating.js';
import { findingsOf, verdictOf } from './judgement.js';
import type { Plan } from './plan.js';
import type { Ledger } from './provenance.js';
import { signsOf } from './signs.js';
import { activeSteps } from './steps.js';
import type { Asked } from './sureness.js';
import { withSureness } from './sureness-words.js';
import type { Say } from './texts.js';
import { scopeFor } from './working-scope.js';

export function judgementOf(
  asked: Asked,
  { say, ledger }: { readonly say: Say; readonly ledger: Ledger },
): Pick<Plan, 'verdict' | 'findings' | 'signs'> {
  const { pack, today, progress, units = 'metric' } = asked.input;
  const { choice, timing, scope, season } = asked.base;
  const knownScope = scopeFor({ ...choice, assume: 'nothing', timing });
  const view = { pack, scope, units };
  const sowOn = firstSowingIn(asked.base, activeSteps(pack, scope, progress?.leftOut));
  const datesKnownTo = season.climate === undefined ? 'month' : 'day';
  const verdict = verdictOf(view, knownScope, { ledger, say, sowOn, datesKnownTo });
  const findings = findingsOf(view, knownScope, say, ledger);
  const signs = signsOf({ ...view, scope: knownScope }, findings, { today, season, say, ledger });
  return { verdict: withSureness(verdict, { ...asked, signs }), findings, signs };
}
