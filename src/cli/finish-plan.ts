/** The end of a session: makes the plan, shows it, and saves it where the person wants it. */
import type { Answers } from '../interview/answers.js';
import type { Area } from '../interview/areas.js';

import type { Plan } from '../planner/plan.js';
import { planLawn } from '../planner/plan-lawn.js';
import type { PriceList } from '../planner/price-list.js';
import type { Pack } from '../rules/pack.js';
import { type SavedSession, writeSession } from '../session/saved-session.js';
import type { Asker } from '../terminal/asker.js';
import { type ParsedArgs, unitsOf } from './command.js';
import { sessionBeside } from './follow/session-beside.js';
import { type CliIo, EXIT } from './io.js';
import { rendered } from './render-plan.js';
import { writeResult } from './write-result.js';

export interface FinishInput {
  readonly args: ParsedArgs;
  readonly io: CliIo;
  readonly asker: Asker;
  readonly pack: Pack;
  readonly answers: Answers;
  readonly areas: readonly Area[];
  readonly prices: PriceList | undefined;
  /** The answers as they are kept: they go beside a plan that is saved, for "seedbed follow". */
  readonly session?: SavedSession | undefined;
}

export async function finishPlan(given: FinishInput): Promise<number> {
  const { args, io, asker, pack, answers, areas, prices, session } = given;
  const input = {
    pack,
    answers,
    areas,
    today: io.today,
    assumeAll: false,
    units: unitsOf(args),
    prices,
  };
  const plan = planLawn(input);
  const markdown = await rendered(plan, 'md');
  const { summaryOf } = await import('../document/summary.js');
  asker.say(`\n${summaryOf(plan)}`);
  const out = args.text('out');
  if (out !== undefined) {
    await writeResult(markdown, { out, force: args.flag('force'), quiet: args.flag('quiet') }, io);
    if (out !== '-') await keepBeside(out, plan, { session, io, asker });
  } else if (io.output.isTTY !== true || io.input.isTTY !== true) {
    io.out(markdown);
  } else {
    await showAndOffer(plan, markdown, { io, asker, session });
  }
  const { talkAboutPlan } = await import('./explained.js');
  await talkAboutPlan(input, asker);
  return EXIT.done;
}

/** A plan in Markdown cannot be read back; the answers beside it can. A session that is there already stays. */
async function keepBeside(
  file: string,
  { units }: Plan,
  { session, io, asker }: Pick<FinishInput, 'io' | 'asker' | 'session'>,
): Promise<void> {
  if (session === undefined) return;
  let path = sessionBeside(file);
  for (let count = 2; io.exists(path); count++) path = sessionBeside(file, count);
  await io.writeText(path, writeSession(session));
  asker.say(
    session.areas.length === 0
      ? `When work has been done, come back with: seedbed follow ${path}${units === 'metric' ? '' : ` --units ${units}`}`
      : `The answers behind it lie beside it: ${path}`,
  );
}

async function showAndOffer(
  plan: Plan,
  markdown: string,
  { io, asker, session }: Pick<FinishInput, 'io' | 'asker' | 'session'>,
): Promise<void> {
  for (;;) {
    const name = await asker.line('Save the plan as (leave empty for no file)', fileNameFor(plan));
    if (name === undefined || name === '') break;
    if (!io.exists(name) || (await asker.confirm(`${name} is already there. Replace it?`, false)) === true) {
      await io.writeText(name, markdown);
      asker.say(`Saved as ${name}.`);
      await keepBeside(name, plan, { session, io, asker });
      break;
    }
  }
  const { showMarkdown } = await import('../terminal/show-markdown.js');
  io.out(`\n${showMarkdown(markdown, { width: io.width, colour: io.colour })}\n`);
}

/** A plain file name from the lawn's own; nothing in it can leave the folder or be a device. */
export function fileNameFor(plan: Plan): string {
  const slug = (plan.name ?? 'lawn')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return `plan-${slug === '' ? 'lawn' : slug}-${plan.madeOn}.md`;
}
