/** What was said of a lawn against what is so: the verdict, the findings, and whether it holds. */
import type { DrillCase } from '../rules/schema-case.js';
import { type Attempt, lookIds } from './attempt.js';
import { isLeftOpen } from './finding-state.js';
import { scopeOfSeen, type WorkedCase } from './worked-case.js';

export interface Diagnosed {
  readonly isVerdictRight: boolean;
  readonly right: readonly string[];
  readonly missed: readonly string[];
  readonly wrong: readonly string[];
  /** Named with due doubt, where by what was seen it cannot be told yet. */
  readonly doubted: readonly string[];
  /** Of the wrong ones those that could not be told by what was seen, and were named as good as certain. */
  readonly tooSoon: readonly string[];
  /** True of the lawn, though not what decides. */
  readonly besides: readonly string[];
}

/** Why a diagnosis does not hold: a wrong verdict, too few of the key findings, or a list in place of an answer. */
export type GateFault = 'verdict' | 'findings' | 'listed';

/** The verdict of the case, or one that holds as well. */
export const isRightVerdict = ({ expected }: DrillCase, verdict: string | undefined): boolean =>
  verdict === expected.verdict || (expected.alsoRight ?? []).some((also) => also.verdict === verdict);

export function diagnosisOf(worked: WorkedCase, attempt: Attempt): Diagnosed {
  const { lesson, found, pack, marking } = worked;
  const claims = attempt.commitment?.findings ?? [];
  const named = claims.map(({ id }) => id);
  const key = lesson.expected.findings;
  const absent = claims.filter(({ id }) => !found.has(id));
  const scope = scopeOfSeen(worked, lookIds(attempt));
  const isOpen = (id: string): boolean => {
    const finding = pack.findingById.get(id);
    return finding !== undefined && isLeftOpen(finding, scope);
  };
  const isDoubted = (claim: (typeof claims)[number]): boolean =>
    claim.sure <= marking.gate.doubtUpTo && isOpen(claim.id);
  const wrong = absent.filter((claim) => !isDoubted(claim)).map(({ id }) => id);
  return {
    isVerdictRight: isRightVerdict(lesson, attempt.commitment?.verdict),
    right: key.filter((id) => named.includes(id)),
    missed: key.filter((id) => !named.includes(id)),
    wrong,
    doubted: absent.filter(isDoubted).map(({ id }) => id),
    tooSoon: wrong.filter(isOpen),
    besides: named.filter((id) => found.has(id) && !key.includes(id)),
  };
}

/** Half for the verdict, half for the findings: those named and there, less those named and not there. */
export function diagnosisMark({ lesson }: WorkedCase, { isVerdictRight, right, wrong }: Diagnosed): number {
  const count = lesson.expected.findings.length;
  const findings =
    count === 0 ? (wrong.length === 0 ? 1 : 0) : Math.max(0, (right.length - wrong.length) / count);
  return ((isVerdictRight ? 1 : 0) + findings) / 2;
}

/**
 * What fails the case whatever the rest. One wrong finding is a slip; more wrong ones than true ones are a list read
 * out, and a list that holds the answer is no answer.
 */
export function gateFaults({ lesson, marking }: WorkedCase, diagnosis: Diagnosed): GateFault[] {
  const { isVerdictRight, right, wrong, besides } = diagnosis;
  const key = lesson.expected.findings.length;
  const isListed = wrong.length > Math.max(1, right.length + besides.length);
  return [
    ...(isVerdictRight ? [] : (['verdict'] as const)),
    ...(right.length < marking.gate.keyFindings * key ? (['findings'] as const) : []),
    ...(isListed ? (['listed'] as const) : []),
  ];
}
