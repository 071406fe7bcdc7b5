/** Explanations of a plan as text: the command's `--explain`, and the questions that may be asked after a session. */
import { nearest } from '../base/nearest.js';
import { answersOn } from '../interview/areas.js';
import { type Explainer, explainerFor, type Target } from '../planner/explain.js';
import type { LawnInput } from '../planner/plan-lawn.js';
import type { Asker } from '../terminal/asker.js';
import { wrapText } from '../terminal/wrap-text.js';
import { CliStop, EXIT } from './io.js';

/** @throws {CliStop} exit code 2 for a name that nothing in the plan or the rules has */
export function explained(typed: string, input: LawnInput, width: number): string {
  const explainers = explainersFor(input);
  const lines = linesFrom(typed, explainers);
  if (lines === undefined) {
    const ids = idsIn(explainers);
    throw new CliStop(EXIT.usage, `${notKnown(typed, ids)}\nWhat can be explained: ${ids.join(', ')}.`);
  }
  return `${lines.flatMap((line) => wrapText(line, width, line.startsWith('- ') ? '  ' : '')).join('\n')}\n`;
}

const ASK_ABOUT =
  'To ask about the plan, type how or why not and a step, such as: why not core. Enter alone ends.';

/** Answers how and why not until nothing more is asked; silent once the input has ended. */
export async function talkAboutPlan(input: LawnInput, asker: Asker): Promise<void> {
  let explainers: readonly NamedExplainer[] | undefined;
  for (;;) {
    const typed = await asker.line(ASK_ABOUT, '');
    if (typed === undefined || typed.trim() === '') return;
    explainers ??= explainersFor(input);
    const wanted = typed.trim().replace(/^(?:how|why not|why)\s+/i, '');
    asker.say((linesFrom(wanted, explainers) ?? [notKnown(wanted, idsIn(explainers))]).join('\n'));
  }
}

interface NamedExplainer {
  /** Of the area; undefined where the lawn is planned as one. */
  readonly area: string | undefined;
  readonly explainer: Explainer;
}

function explainersFor({ areas = [], ...input }: LawnInput): NamedExplainer[] {
  if (areas.length === 0) return [{ area: undefined, explainer: explainerFor(input) }];
  return areas.map((area) => ({
    area: area.name,
    explainer: explainerFor({ ...input, answers: answersOn(area, input.answers) }),
  }));
}

const idsIn = (explainers: readonly NamedExplainer[]): string[] => [
  ...new Set(explainers.flatMap(({ explainer }) => explainer.targets.map(({ id }) => id))),
];

/** What every area has to say, each under its name. */
function linesFrom(typed: string, explainers: readonly NamedExplainer[]): readonly string[] | undefined {
  const told = explainers.flatMap(({ area, explainer }) => {
    const lines = linesFor(typed, explainer);
    if (lines === undefined) return [];
    return area === undefined ? [lines] : [[`${area}:`, ...lines]];
  });
  return told.length === 0 ? undefined : told.flat();
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
