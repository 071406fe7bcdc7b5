/** A plan in each of the forms that it can be had in; what a form needs is loaded only for it. */

import { jsonText } from '../base/clean-text.js';
import type { Plan } from '../planner/plan.js';

export const FORMATS = ['md', 'json', 'ics', 'html', 'svg', 'csv'] as const;
export type Format = (typeof FORMATS)[number];

const RENDERERS: Readonly<Record<Format, (plan: Plan) => Promise<string>>> = {
  md: async (plan) => {
    const [{ documentOf }, { markdownOf }] = await Promise.all([
      import('../document/from-plan.js'),
      import('../document/markdown.js'),
    ]);
    return markdownOf(documentOf(plan));
  },
  json: async (plan) => `${jsonText(withSurenessIn(plan), 2)}\n`,
  ics: async (plan) => (await import('../document/calendar.js')).calendarOf(plan),
  html: async (plan) => (await import('../document/html.js')).htmlOf(plan),
  svg: async (plan) => (await import('../document/drawing.js')).drawingOf(plan),
  csv: async (plan) => (await import('../document/csv.js')).csvOf(plan),
};

/** What is only worked out when it is read, read: a plan as data says how sure it is. */
function withSurenessIn(plan: Plan): Plan {
  const told = (verdict: Plan['verdict']): Plan['verdict'] => {
    const { sure, wouldChange, sureness } = verdict;
    return { ...verdict, sure, wouldChange, sureness };
  };
  return {
    ...plan,
    verdict: told(plan.verdict),
    areas: plan.areas.map((area) => ({ ...area, verdict: told(area.verdict) })),
  };
}

export const rendered = (plan: Plan, format: Format): Promise<string> => RENDERERS[format](plan);
