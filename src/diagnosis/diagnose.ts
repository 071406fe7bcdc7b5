/** Judges every finding by what is known: found, not found or cannot tell, with the signs on both sides. */
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Finding } from '../rules/schema.js';

export type FindingVerdict = 'found' | 'notFound' | 'cannotTell';
export type Strength = 'likely' | 'possible' | 'unlikely';

export interface Judged {
  readonly finding: Finding;
  readonly verdict: FindingVerdict;
  readonly strength: Strength;
  readonly signsFor: readonly string[];
  readonly signsAgainst: readonly string[];
  /** Questions that would settle it. */
  readonly open: readonly string[];
}

/** Weight from which signs that all point one way make a finding likely although it is not proved. */
const LIKELY_WEIGHT = 2;

export function diagnose(pack: Pack, scope: Scope): Judged[] {
  return pack.findings.map((finding) => judgeFinding(finding, scope));
}

export function judgeFinding(finding: Finding, scope: Scope): Judged {
  const outcome = evaluate(finding.when, scope);
  const signs = (finding.evidence ?? []).filter(({ when }) => {
    const sign = evaluate(when, scope);
    return sign.known && sign.value === true;
  });
  const weight = signs.reduce((sum, sign) => sum + sign.weight, 0);
  const verdict = outcome.known ? (outcome.value === true ? 'found' : 'notFound') : 'cannotTell';
  return {
    finding,
    verdict,
    strength: strengthOf(verdict, weight, finding.evidence === undefined),
    signsFor: signs.filter((sign) => sign.weight > 0).map((sign) => sign.says),
    signsAgainst: signs.filter((sign) => sign.weight < 0).map((sign) => sign.says),
    open: outcome.known ? [] : outcome.open,
  };
}

/** A condition without evidence of degree is a plain fact; with it, the balance of signs says how sure. */
function strengthOf(verdict: FindingVerdict, weight: number, isPlainFact: boolean): Strength {
  if (verdict === 'found') return isPlainFact || weight >= LIKELY_WEIGHT ? 'likely' : 'possible';
  if (verdict === 'notFound') return weight >= LIKELY_WEIGHT ? 'possible' : 'unlikely';
  if (weight >= LIKELY_WEIGHT) return 'likely';
  return weight < 0 ? 'unlikely' : 'possible';
}
