/** `follow`: later, what was done and what is seen; the rest of the plan is worked out again from there. */
import { type PlanInput, ScheduleClash } from '../../planner/assemble-plan.js';
import type { Plan } from '../../planner/plan.js';
import type { Followed } from '../../planner/progress.js';
import type { Pack } from '../../rules/pack.js';
import { saveSessionFile } from '../../session/store.js';
import { askerFor, lazyReader } from '../asker-for.js';
import { type Command, type ParsedArgs, UNITS_OPTION, unitsOf } from '../command.js';
import { type FollowFile, openFollowFile } from '../follow/follow-file.js';
import { logText } from '../follow/log-text.js';
import { planBefore, visit } from '../follow/visit.js';
import { type CliIo, CliStop, EXIT } from '../io.js';
import { CLIMATE_OPTION, withOwnClimate } from '../own-climate.js';
import { FORMATS, type Format, rendered } from '../render-plan.js';
import { writeResult } from '../write-result.js';
import { dayOf } from './plan.js';

export const follow: Command = {
  name: 'follow',
  summary: 'Later: say what was done and seen; the rest is planned again from there',
  usage:
    'follow PLAN-or-SESSION [--today DATE] [--plain] [--save FILE] [--out PLAN.md] [--format md|json|ics|html|svg|csv] [--log LOG.md] [--force] [--climate FILE] [--units metric|us]',
  options: {
    ...CLIMATE_OPTION,
    today: { type: 'string', value: 'DATE', says: 'the day you tell it on; otherwise today' },
    plain: { type: 'boolean', says: 'numbered lines instead of drawn questions; reads piped lines too' },
    save: { type: 'string', value: 'FILE', says: 'keep what you tell there instead of in the session' },
    out: { type: 'string', value: 'PLAN.md', says: 'write the plan as it stands now there' },
    format: { type: 'string', value: 'FORMAT', allowed: FORMATS, says: 'of the plan; md if not given' },
    log: { type: 'string', value: 'LOG.md', says: 'write the log of plan against reality there' },
    force: { type: 'boolean', says: 'replace those files if they are there' },
    units: UNITS_OPTION,
  },
  takes: { least: 1, most: 1, says: 'a saved session, or a plan as JSON' },
  run: (args, io) => runFollow(args, { ...io, today: dayOf(args.text('today'), io.today) }),
};

async function runFollow(args: ParsedArgs, io: CliIo): Promise<number> {
  const units = unitsOf(args);
  const rules = await withOwnClimate(await io.loadPack(args.text('pack')), args, io);
  const file = await openFollowFile(args.positionals[0] as string, {
    save: args.text('save'),
    io,
    pack: rules,
    units,
  });
  const { pack } = file.input;
  const signals = new AbortController();
  const stop = (): void => signals.abort();
  for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.once(name, stop);
  const asker = await askerFor(args, io, signals.signal, lazyReader(pack, io.today, units));
  try {
    const { path, session, input } = file;
    if (!args.flag('quiet')) asker.say(welcome(file, pack));
    const { followed } = session;
    const save = (now: Followed): Promise<void> =>
      saveSessionFile(path, { ...session, followed: now }).catch((error: unknown) => {
        throw notSaved(path, error);
      });
    const visited = await visit({ asker, pack, today: io.today, input, followed, save });
    if (visited === undefined) {
      io.err(`\nWhat you told is saved:\n  ${path}\nGo on with:\n  ${again(path, args)}\n`);
      return asker.left?.() === 'interrupted' ? EXIT.interrupted : EXIT.done;
    }
    await hand({ args, io, input, plan: visited.plan, followed: visited.followed });
    if (!args.flag('quiet')) asker.say(`\nKept in ${path}. Come back with: ${again(path, args)}`);
    return EXIT.done;
  } catch (error) {
    if (!(error instanceof ScheduleClash)) throw error;
    throw new CliStop(
      EXIT.answers,
      `${error.message} What you told is kept in ${file.path}. Look at the days with: ${again(file.path, args)}`,
    );
  } finally {
    for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.removeListener(name, stop);
    asker.close();
  }
}

const notSaved = (path: string, error: unknown): CliStop =>
  new CliStop(
    EXIT.files,
    `What you told last could not be saved in ${path}: ${error instanceof Error ? error.message : String(error)}. What was noted before it is there. Make room, or choose another place with --save, and tell the last again.`,
  );

/** The same command again, in the same units. */
const again = (path: string, args: ParsedArgs): string =>
  `seedbed follow ${path}${unitsOf(args) === 'metric' ? '' : ` --units ${unitsOf(args)}`}`;

function welcome({ path, session, input }: FollowFile, pack: Pack): string {
  const plan = planBefore({ input, followed: session.followed });
  const known = session.followed.records.length;
  const start =
    known === 0
      ? `The plan was made on ${session.followed.madeOn} and has ${plan.steps.length} steps.`
      : `We go on where you stopped: ${plan.steps.filter(({ doneOn }) => doneOn !== null).length} of ${plan.steps.length} steps are done.`;
  const rules =
    session.pack.sha256 === pack.sha256
      ? ''
      : ' The rules have changed since it was made: the rest goes by the rules of today.';
  return `${start}${rules} What you tell is kept in ${path} after every line.`;
}

interface Handing {
  readonly args: ParsedArgs;
  readonly io: CliIo;
  readonly input: PlanInput;
  readonly plan: Plan;
  readonly followed: Followed;
}

/** The plan and the log, where they are wanted; without a file and without a terminal the plan goes to standard output. */
async function hand({ args, io, input, plan, followed }: Handing): Promise<void> {
  const where = { force: args.flag('force'), quiet: args.flag('quiet') };
  const [out, log] = [args.text('out'), args.text('log')];
  const format = args.text('format');
  const text = await rendered(plan, (format ?? 'md') as Format);
  if (out !== undefined) await writeResult(text, { ...where, out }, io);
  if (log !== undefined) await writeResult(await logText(plan, followed, input), { ...where, out: log }, io);
  if (out !== undefined || log !== undefined) return;
  if (io.output.isTTY !== true || format !== undefined) return io.out(text);
  const { showMarkdown } = await import('../../terminal/show-markdown.js');
  io.out(`\n${showMarkdown(await logText(plan, followed, input), { width: io.width, colour: io.colour })}\n`);
  io.err('The plan as it stands now is written with --out PLAN.md, this log with --log LOG.md.\n');
}
