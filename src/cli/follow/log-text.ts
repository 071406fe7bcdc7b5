import type { PlanInput } from '../../planner/assemble-plan.js';
import type { Plan } from '../../planner/plan.js';
import type { Followed } from '../../planner/progress.js';
import { sayerOf } from '../../planner/rework.js';

/** The log as Markdown; what writes it is loaded only now. */
export async function logText(plan: Plan, followed: Followed, input: PlanInput): Promise<string> {
  const [{ logOf }, { markdownOf }] = await Promise.all([
    import('../../document/follow-log.js'),
    import('../../document/markdown.js'),
  ]);
  const { troubles } = input.pack;
  const troubleTitle = (id: string): string => troubles.find((each) => each.id === id)?.sees ?? id;
  return markdownOf(logOf({ plan, followed, troubleTitle, say: sayerOf(input) }));
}
