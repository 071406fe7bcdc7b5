/** Explanations of a plan as text: the command's `--explain`, and the questions that may be asked after a session. */
import { nearest } from '../base/nearest.js';
import type { PlanInput } from '../planner/assemble-plan.js';
import { type Explainer, explainerFor, type Target } from '../planner/explain.js';
import type { Asker } from '../terminal/asker.js';
import { wrapText } from '../terminal/wrap-text.js';
import { CliStop, EXIT } from './io.js';

/** @throws {CliStop} exit code 2 for a name that nothing in the plan or the rules has */
export function explained(typed: string, input: PlanInput, width: number): string {
  const explainer = explainerFor(input);
  const lines = linesFor(typed, explainer);
  if (lines === undefined) {
    const ids = explainer.targets.map(({ id }) => id);
    throw new CliStop(EXIT.usage, `${notKnown(typed, ids)}\nWhat can be explained: ${ids.join(', ')}.`);
  }
  return `${lines.flatMap((line) => wrapText(line, width, line.startsWith('- ') ? '  ' : '')).join('\n')}\n`;
}

const ASK_ABOUT =
  'To ask about the plan, type how or why not and a step, such as: why not core. Enter alone ends.';

/** Answers how and why not until nothing more is asked; silent once the input has ended. */
export async function talkAboutPlan(input: PlanInput, asker: Asker): Promise<void> {
  let explainer: Explainer | undefined;
  for (;;) {
    const typed = await asker.line(ASK_ABOUT, '');
    if (typed === undefined || typed.trim() === '') return;
    explainer ??= explainerFor(input);
    const wanted = typed.trim().replace(/^(?:how|why not|why)\s+/i, '');
    const ids = explainer.targets.map(({ id }) => id);
    asker.say((linesFor(wanted, explainer) ?? [notKnown(wanted, ids)]).join('\n'));
  }
}

function linesFor(typed: string, { explain, targets }: Explainer): readonly string[] | undefined {
  const target = targetOf(typed, targets);
  return target === undefined ? undefined : explain(target)?.lines;
}

/** By id, with or without its hyphens, or by a title that begins so and is the only one. */
function targetOf(typed: string, targets: readonly Target[]): string | undefined {
  const words = typed.trim().toLowerCase();
  const id = words.replace(/\s+/g, '-');
  if (targets.some((target) => target.id === id)) return id;
  const titled = targets.filter(({ title }) => title.toLowerCase().startsWith(words));
  const exact = titled.find(({ title }) => title.toLowerCase() === words);
  return (exact ?? (titled.length === 1 ? titled[0] : undefined))?.id;
}

function notKnown(typed: string, ids: readonly string[]): string {
  const near = nearest(typed, ids);
  return `Nothing here is called "${typed}".${near === undefined ? '' : ` Did you mean "${near}"?`}`;
}
