/** `follow`: later, what was done and what is seen; the rest of the plan is worked out again from there. */
import { assemblePlan } from '../../planner/assemble-plan.js';
import type { Plan } from '../../planner/plan.js';
import type { Followed, FollowRecord } from '../../planner/progress.js';
import { reworked } from '../../planner/rework.js';
import type { Pack } from '../../rules/pack.js';
import { saveSessionFile } from '../../session/store.js';
import type { Command, ParsedArgs } from '../command.js';
import { type FollowFile, openFollowFile } from '../follow/follow-file.js';
import { reportOf } from '../follow/report.js';
import { standing, type Telling, tellDone } from '../follow/tell.js';
import { tellAfterSowing, tellSigns } from '../follow/tell-seen.js';
import { type CliIo, EXIT } from '../io.js';
import { rendered } from '../render-plan.js';
import { writeResult } from '../write-result.js';
import { askerFor } from './ask.js';
import { dayOf } from './plan.js';

export const follow: Command = {
  name: 'follow',
  summary: 'Later: say what was done and seen; the rest is planned again from there',
  usage:
    'follow PLAN-or-SESSION [--today DATE] [--plain] [--save FILE] [--out PLAN.md] [--log LOG.md] [--force]',
  options: {
    today: { type: 'string', value: 'DATE', says: 'the day you tell it on; otherwise today' },
    plain: { type: 'boolean', says: 'numbered lines instead of drawn questions; reads piped lines too' },
    save: { type: 'string', value: 'FILE', says: 'keep what you tell there instead of in the session' },
    out: { type: 'string', value: 'PLAN.md', says: 'write the plan as it stands now there' },
    log: { type: 'string', value: 'LOG.md', says: 'write the log of plan against reality there' },
    force: { type: 'boolean', says: 'replace those files if they are there' },
  },
  takes: { least: 1, most: 1, says: 'a saved session, or a plan as JSON' },
  run: (args, io) => runFollow(args, { ...io, today: dayOf(args.text('today'), io.today) }),
};

async function runFollow(args: ParsedArgs, io: CliIo): Promise<number> {
  const pack = await io.loadPack(args.text('pack'));
  const file = await openFollowFile(args.positionals[0] as string, args.text('save'), io, pack);
  const signals = new AbortController();
  const stop = (): void => signals.abort();
  for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.once(name, stop);
  const asker = await askerFor(args, io, signals.signal, pack);
  try {
    const book = openBook(file);
    const before = planBefore(file);
    const telling: Telling = { asker, pack, today: io.today, input: file.input, before, ...book };
    if (!args.flag('quiet')) asker.say(welcome(file, before));
    await tellDone(telling);
    await tellSigns(telling);
    await tellAfterSowing(telling);
    await book.save();
    const left = asker.left?.();
    if (left !== undefined && left !== 'ended') {
      io.err(`\nWhat you told is saved:\n  ${file.path}\nGo on with:\n  seedbed follow ${file.path}\n`);
      return left === 'interrupted' ? EXIT.interrupted : EXIT.done;
    }
    const after = standing(telling);
    asker.say(`\n${reportOf(before, after)}`);
    await hand({ args, io, pack, plan: after.plan, followed: book.followed() });
    if (!args.flag('quiet')) asker.say(`\nKept in ${file.path}. Come back with: seedbed follow ${file.path}`);
    return EXIT.done;
  } finally {
    for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.removeListener(name, stop);
    asker.close();
  }
}

/** What was told, on the disk after every line. A later word about the same step replaces the earlier one. */
function openBook({ path, session }: FollowFile) {
  let followed: Followed = session.followed;
  const save = (): Promise<void> => saveSessionFile(path, { ...session, followed });
  return {
    followed: () => followed,
    records: () => followed.records,
    save,
    tell: async (record: FollowRecord): Promise<void> => {
      followed = {
        ...followed,
        records: [...followed.records.filter((old) => !isReplaced(old, record)), record],
      };
      await save();
    },
  };
}

function isReplaced(old: FollowRecord, record: FollowRecord): boolean {
  switch (record.kind) {
    case 'done':
    case 'left-out':
      return (old.kind === 'done' || old.kind === 'left-out') && old.step === record.step;
    case 'trouble':
      return old.kind === 'trouble' && old.trouble === record.trouble && old.toldOn === record.toldOn;
    default:
      return false;
  }
}

/** The plan as it stood when it was last looked at. */
function planBefore({ session, input }: FollowFile): Plan {
  const { records } = session.followed;
  const last = records
    .map(({ toldOn }) => toldOn)
    .sort()
    .at(-1);
  return last === undefined ? assemblePlan(input) : reworked(input, records, last).plan;
}

function welcome({ path, session }: FollowFile, plan: Plan): string {
  const known = session.followed.records.length;
  const start =
    known === 0
      ? `The plan was made on ${session.followed.madeOn} and has ${plan.steps.length} steps.`
      : `We go on where you stopped: ${plan.steps.filter(({ doneOn }) => doneOn !== null).length} of ${plan.steps.length} steps are done.`;
  return `${start} What you tell is kept in ${path} after every line.`;
}

interface Handing {
  readonly args: ParsedArgs;
  readonly io: CliIo;
  readonly pack: Pack;
  readonly plan: Plan;
  readonly followed: Followed;
}

/** The plan and the log, where they are wanted; without a file and without a terminal the plan goes to standard output. */
async function hand({ args, io, pack, plan, followed }: Handing): Promise<void> {
  const where = { force: args.flag('force'), quiet: args.flag('quiet') };
  const [out, log] = [args.text('out'), args.text('log')];
  const markdown = await rendered(plan, 'md');
  if (out !== undefined) await writeResult(markdown, { ...where, out }, io);
  if (log !== undefined) await writeResult(await logText(plan, followed, pack), { ...where, out: log }, io);
  if (out !== undefined || log !== undefined) return;
  if (io.output.isTTY !== true) return io.out(markdown);
  const { showMarkdown } = await import('../../terminal/show-markdown.js');
  io.out(`\n${showMarkdown(await logText(plan, followed, pack), { width: io.width, colour: io.colour })}\n`);
  io.err('The plan as it stands now is written with --out PLAN.md, this log with --log LOG.md.\n');
}

export async function logText(plan: Plan, followed: Followed, pack: Pack): Promise<string> {
  const [{ logOf }, { markdownOf }] = await Promise.all([
    import('../../document/follow-log.js'),
    import('../../document/markdown.js'),
  ]);
  const troubleTitle = (id: string): string => pack.troubles.find((each) => each.id === id)?.sees ?? id;
  return markdownOf(logOf({ plan, followed, troubleTitle }));
}
