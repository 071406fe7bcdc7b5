/** Whether a finding is there, ruled out, or cannot be told yet, by what is known. */
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Finding } from '../rules/schema.js';

export type FindingState = 'there' | 'ruledOut' | 'cannotTell';

/** A sign of this weight against a finding rules it out by itself, whatever lighter signs say. */
const DECISIVE_AGAINST = -2;

/**
 * A finding whose condition fails is ruled out only where its own evidence counts against it. A test that was void,
 * such as a screwdriver in dry ground, makes the condition fail and proves nothing. A finding without evidence of
 * degree is a plain fact: there it is one or the other.
 */
export function stateOf({ when, evidence }: Finding, scope: Scope): FindingState {
  const outcome = evaluate(when, scope);
  if (!outcome.known) return 'cannotTell';
  if (outcome.value === true) return 'there';
  if (evidence === undefined) return 'ruledOut';
  const weights = evidence
    .filter((sign) => {
      const seen = evaluate(sign.when, scope);
      return seen.known && seen.value === true;
    })
    .map(({ weight }) => weight);
  const balance = weights.reduce((sum, weight) => sum + weight, 0);
  return balance < 0 || weights.some((weight) => weight <= DECISIVE_AGAINST) ? 'ruledOut' : 'cannotTell';
}

/** Its condition fails by what is known, and yet nothing known counts against it. */
export function isLeftOpen(finding: Finding, scope: Scope): boolean {
  return evaluate(finding.when, scope).known && stateOf(finding, scope) === 'cannotTell';
}
