/** What the examples of a pack bring to life: which findings, verdicts, steps and cautions they fire, and which never. */
import { judgeFinding } from '../diagnosis/diagnose.js';
import { RuleFault } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { assemblePlan, ScheduleClash } from './assemble-plan.js';
import { examplesOf } from './check-examples.js';
import type { Plan } from './plan.js';
import { scopeFor } from './working-scope.js';

export interface Covered {
  readonly kind: string;
  /** Id, and in how many of the examples it fires. */
  readonly counts: readonly { readonly id: string; readonly count: number }[];
}

export interface Coverage {
  readonly examples: number;
  /** Examples from which no plan could be made. */
  readonly failed: number;
  readonly kinds: readonly Covered[];
}

export function coverageOf(pack: Pack): Coverage {
  const examples = examplesOf(pack);
  const plans: Plan[] = [];
  const found: string[] = [];
  for (const { answers, today } of examples) {
    const scope = scopeFor({ pack, answers, today, assume: 'nothing' });
    found.push(
      ...pack.findings.filter((each) => judgeFinding(each, scope).verdict === 'found').map(({ id }) => id),
    );
    const plan = planOrNone({ pack, answers, today, assumeAll: true });
    if (plan !== undefined) plans.push(plan);
  }
  const kind = (
    name: string,
    records: readonly { readonly id: string }[],
    fired: readonly string[],
  ): Covered => ({
    kind: name,
    counts: [...new Set(records.map(({ id }) => id))].map((id) => ({
      id,
      count: fired.filter((each) => each === id).length,
    })),
  });
  const idsIn = (list: (plan: Plan) => readonly { readonly id: string }[]): string[] =>
    plans.flatMap((plan) => list(plan).map(({ id }) => id));
  return {
    examples: examples.length,
    failed: examples.length - plans.length,
    kinds: [
      kind('findings', pack.findings, found),
      kind(
        'verdicts',
        pack.verdicts,
        idsIn(({ verdict }) => [verdict]),
      ),
      kind(
        'steps',
        pack.steps,
        idsIn(({ steps }) => steps),
      ),
      kind(
        'cautions',
        pack.cautions,
        idsIn(({ cautions }) => cautions),
      ),
      kind(
        'notDone',
        pack.notDone,
        idsIn(({ notDone }) => notDone),
      ),
    ],
  };
}

function planOrNone(input: Parameters<typeof assemblePlan>[0]): Plan | undefined {
  try {
    return assemblePlan(input);
  } catch (error) {
    if (error instanceof ScheduleClash || error instanceof RuleFault) return undefined;
    throw error;
  }
}
