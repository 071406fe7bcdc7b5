/** The plan in a few plain lines for the terminal, where the whole document would scroll away. */
import { formatKnown, yearOf } from '../base/dates.js';
import type { Plan } from '../planner/plan.js';
import { NOT_KNOWN } from '../planner/plan-judgement.js';
import { dayWords, MONTHS_ONLY } from './date-words.js';
import { totalWork } from './glance-section.js';
import { oneLine } from './one-line.js';
import { needWords } from './shopping-section.js';
import { titleOf } from './title-section.js';
import { counted, midSentence, said, sentence } from './words.js';

/**
 * Verdict, first day, length of the job, what to buy first and how much was assumed, a line each.
 *
 * @returns text without control sequences, a line to each, for whoever shows it to wrap; no newline at the end
 */
export function summaryOf(plan: Plan): string {
  const lines = [
    sentence(`${titleOf(plan)}: ${verdictWords(plan)}`),
    ...looksFirst(plan),
    ...workLines(plan),
    plan.datesKnownTo === 'month' ? MONTHS_ONLY : '',
    firstToBuy(plan),
    assumedLine(plan),
  ];
  return lines.filter((line) => line !== '').join('\n');
}

function verdictWords({ verdict, areas }: Plan): string {
  if (areas.length === 0) return midSentence(verdict.title);
  return areas.map((area) => `${oneLine(area.name)}, ${midSentence(area.verdict.title)}`).join('; ');
}

/** Where too little is known for a verdict, the looks that decide are the first thing to do. */
function looksFirst({ verdict }: Plan): string[] {
  if (verdict.id !== NOT_KNOWN) return [];
  const { lead, looks } = verdict.sureness;
  return [sentence(lead), ...looks.map((look) => `- ${said(look)}`)];
}

function workLines({ steps, datesKnownTo }: Plan): string[] {
  const [first] = steps;
  if (first === undefined) return [];
  const year = yearOf(first.startOn);
  const lastDay =
    steps
      .map(({ endOn }) => endOn)
      .toSorted()
      .at(-1) ?? first.endOn;
  return [
    `First: ${midSentence(first.title)}, ${withStop(formatKnown(first.startOn, datesKnownTo))}`,
    `${counted(steps.length, 'step')} until ${dayWords(lastDay, { year, datesKnownTo })}, ${totalWork(steps)} in all.`,
  ];
}

const withStop = (words: string): string => (words.endsWith('?') ? words : `${words}.`);

/** The thing to buy that the earliest step needs; ties go by the order of the list. */
function firstToBuy({ shopping, steps, units }: Plan): string {
  const lines = shopping.filter(({ kind }) => kind === 'buy');
  const first =
    steps.map(({ id }) => lines.find(({ forSteps }) => forSteps.includes(id))).find(Boolean) ?? lines[0];
  return first === undefined ? '' : `Buy first: ${midSentence(first.title)}, ${needWords(first, units)}.`;
}

function assumedLine({ assumptions }: Plan): string {
  if (assumptions.length === 0) return 'Nothing had to be assumed.';
  const things = counted(assumptions.length, 'thing was', 'things were');
  return `${things} assumed; the plan says what each would change.`;
}
