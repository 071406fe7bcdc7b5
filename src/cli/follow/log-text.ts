import type { Plan } from '../../planner/plan.js';
import type { Followed } from '../../planner/progress.js';
import type { Pack } from '../../rules/pack.js';

/** The log as Markdown; what writes it is loaded only now. */
export async function logText(plan: Plan, followed: Followed, pack: Pack): Promise<string> {
  const [{ logOf }, { markdownOf }] = await Promise.all([
    import('../../document/follow-log.js'),
    import('../../document/markdown.js'),
  ]);
  const troubleTitle = (id: string): string => pack.troubles.find((each) => each.id === id)?.sees ?? id;
  return markdownOf(logOf({ plan, followed, troubleTitle }));
}
