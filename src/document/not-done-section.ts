/** What this plan leaves out, said openly. */
import type { RootContent } from 'mdast';
import type { Plan } from '../planner/plan.js';
import { bullets, heading } from './nodes.js';
import { sentence } from './words.js';

export function notDoneSection({ notDone }: Plan): RootContent[] {
  if (notDone.length === 0) return [];
  return [heading(2, 'Not in this plan'), bullets(notDone.map(({ says }) => [sentence(says)]))];
}
