/** What was assumed, what each assumption would change, and how to find out. */
import type { RootContent } from 'mdast';
import type { Plan, PlanAssumption } from '../planner/plan.js';
import { bullets, heading, type Part, paragraph, strong } from './nodes.js';
import { clause, said, sentence } from './words.js';

export function assumptionsSection({ assumptions }: Plan): RootContent[] {
  if (assumptions.length === 0) return [];
  return [
    heading(2, 'What was assumed'),
    paragraph('Find these out if you can, and have the plan made again: it may change.'),
    ...listUnder(
      'You did not know:',
      assumptions.filter(({ saidUnknown }) => saidUnknown),
    ),
    ...listUnder(
      'Not answered:',
      assumptions.filter(({ saidUnknown }) => !saidUnknown),
    ),
  ];
}

function listUnder(lead: string, assumptions: readonly PlanAssumption[]): RootContent[] {
  return assumptions.length === 0 ? [] : [paragraph(lead), bullets(assumptions.map(assumptionItem))];
}

function assumptionItem(assumption: PlanAssumption): Part[] {
  return [
    strong(sentence(assumption.says ?? `${said(assumption.label)}: ${said(assumption.assumed)}`)),
    sentence(assumption.effect),
    said(assumption.handTest ?? '') === '' ? '' : `To find out: ${clause(assumption.handTest ?? '')}`,
  ];
}
