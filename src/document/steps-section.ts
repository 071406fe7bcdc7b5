/** Every step in order: why, before, take care, how, how much, wait, done, and what if it goes wrong. */
import type { RootContent } from 'mdast';
import { aboutHours, hours } from '../base/quantity-words.js';
import type { Plan, PlanStep } from '../planner/plan.js';
import { cautionLines } from './cautions-section.js';
import { type DateStyle, dayWords, onWord, spanWords } from './date-words.js';
import { isByArea, partNames } from './in-areas.js';
import { latestStart } from './latest-start.js';
import { bullets, heading, numbered, type Part, paragraph, strong } from './nodes.js';
import { markOf, markOfWorking, type References } from './references.js';
import { amountNodes } from './step-amounts.js';
import { waitNodes } from './step-waits.js';
import { clause, markedSentence, midSentence, said, sentence } from './words.js';

export function stepsSection(plan: Plan, references: References): RootContent[] {
  if (plan.steps.length === 0) return [];
  return [
    heading(2, 'The work, step by step'),
    ...plan.steps.flatMap((step, index) => stepNodes(step, index + 1, { plan, references })),
  ];
}

/** The step that is nothing but waiting: here it is told what would make it shorter. */
const WAIT = 'wait-for-season';

/** Cautions stand before the work, so that nobody reads them with the sprayer already in hand. */
export function stepNodes(
  step: PlanStep,
  number: number,
  { plan, references }: { readonly plan: Plan; readonly references: References },
): RootContent[] {
  if (step.doneOn !== null)
    return [
      heading(
        3,
        `${number}. ${said(step.title)}, done ${dayWords(step.doneOn, { ...references, datesKnownTo: 'day' })}`,
      ),
      ...labelled('If it goes wrong.', sentence(step.ifNot)),
    ];
  const when = spanWords({ from: step.startOn, until: step.endOn }, references);
  return [
    heading(3, `${number}. ${said(step.title)}, ${byParts(step)}${when}`),
    whyNow(step, plan, references),
    ...(step.id === WAIT && plan.sooner !== null ? [paragraph(plan.sooner.says)] : []),
    ...timeParagraph(step, plan.steps, references),
    ...listAfter('Before.', step.dayChecks.map(checkItem)),
    // Said at every step that has them: nobody turns pages with a machine running.
    ...listAfter('Take care.', cautionLines(step.cautions, plan.cautions)),
    ...toolsParagraph(step),
    ...howNodes(step),
    ...amountNodes(step.amounts, references),
    ...waitNodes(step, plan.steps, references),
    ...labelled('Done when', clause(step.doneWhen)),
    ...labelled('If it goes wrong.', sentence(step.ifNot)),
  ];
}

/** Whether the work goes from part to part, or from area to area. */
function byParts({ parts }: PlanStep): string {
  if (parts.length < 2) return '';
  return isByArea(parts) ? 'area by area, ' : 'part by part, ';
}

/** What a finding or an earlier step has given as its reason is not given again. */
function whyNow(step: PlanStep, { findings, steps }: Plan, references: References): RootContent {
  const mark = markOf('published', step.sources, references);
  const earlier = [
    ...findings.filter(({ verdict }) => verdict === 'found'),
    ...steps.slice(0, Math.max(0, steps.indexOf(step))),
  ];
  const because = earlier.some((each) => each.because === step.because) ? '' : step.because;
  return paragraph(strong('Why now.'), markedSentence(step.purpose, mark), sentence(because));
}

/** Hours with their range, the season, and the last day on which it may begin. */
function timeParagraph(step: PlanStep, steps: readonly PlanStep[], references: References): RootContent[] {
  const { min, max } = step.workHoursRange;
  const range = hours(min) === hours(max) ? '' : ` (${hours(min)} to ${hours(max)})`;
  const latestOn = step.parts.length > 1 ? undefined : latestStart(step, steps);
  const latest = latestOn === undefined ? '' : `Begin by ${dayWords(latestOn, references)} at the latest.`;
  const time = step.workHours > 0 ? `${aboutHours(step.workHours)}${range}` : '';
  const work = markedSentence(time, markOfWorking(step.workHoursFrom, references));
  const parts = [
    work,
    partDays(step, references),
    latest,
    sentence(step.window ?? ''),
    hereWords(step, references),
    ...(step.growth?.says ?? []),
  ].filter((part) => part !== '');
  return parts.length === 0 ? [] : [paragraph(strong('Time.'), ...parts)];
}

/** The season at this place, where its climate narrows the published one. */
function hereWords({ windowHere }: PlanStep, style: DateStyle): string {
  if (windowHere === null) return '';
  const [from, until] = [windowHere.from, windowHere.until].map((date) =>
    dayWords(date, style).replace(/^\w+ /, ''),
  );
  return `Here that is from about ${from} to about ${until}.`;
}

/** The first day of each part, where the step is done part by part. */
function partDays({ parts }: PlanStep, style: DateStyle): string {
  if (parts.length < 2) return '';
  const names = partNames(parts);
  const days = parts.map(
    ({ startOn }, index) => `${names[index]} ${onWord(style)} ${dayWords(startOn, style)}`,
  );
  return `Begin ${days.join(', ')}.`;
}

function checkItem({ check, otherwise, expect }: PlanStep['dayChecks'][number]): Part[] {
  return [
    sentence(check),
    sentence(expect ?? ''),
    said(otherwise) === '' ? '' : `Otherwise: ${clause(otherwise)}`,
  ];
}

function toolsParagraph({ tools }: PlanStep): RootContent[] {
  return tools.length === 0
    ? []
    : [paragraph(strong('Have ready.'), sentence(tools.map(toolName).join('; ')))];
}

function toolName(tool: PlanStep['tools'][number], index: number): string {
  return index === 0 ? said(tool.title) : midSentence(tool.title);
}

function howNodes({ how }: PlanStep): RootContent[] {
  return how.length === 0 ? [] : [paragraph(strong('How.')), numbered(how.map((task) => [sentence(task)]))];
}

function listAfter(lead: string, items: readonly (readonly Part[])[]): RootContent[] {
  return items.length === 0 ? [] : [paragraph(strong(lead)), bullets(items)];
}

function labelled(label: string, words: string): RootContent[] {
  return words === '' ? [] : [paragraph(strong(label), words)];
}
