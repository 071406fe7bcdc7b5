/** `drill`: training on invented lawns, and what a trainer needs for it. */

import type { Asker } from '../../terminal/asker.js';
import { workOut } from '../../training/worked-case.js';
import { askerFor, lazyReader } from '../asker-for.js';
import { type Command, type ParsedArgs, UNITS_OPTION, unitsOf } from '../command.js';
import { authored, caseText } from '../drill/author.js';
import { whyNotWritten } from '../drill/can-be-written.js';
import { type Choosing, chosenCase, listOf } from '../drill/choose-case.js';
import { DrillLeft } from '../drill/parts.js';
import { readRecord, standingText } from '../drill/record-file.js';
import { sit } from '../drill/session.js';
import { CliStop, EXIT } from '../io.js';
import { loadCases } from '../load-cases.js';
import { writeResult } from '../write-result.js';

const MODES = ['watch', 'finish', 'whole'] as const;
const FEEDBACK = ['at-once', 'at-end'] as const;
const SIGNALS = ['SIGTERM', 'SIGHUP', 'SIGINT'] as const;

export const drill: Command = {
  name: 'drill',
  summary: `Train: find out what is wrong with an invented lawn

  drill --list              every case, from easy to hard
  drill CASE                look and ask as you like, commit, put the work in order, be shown how it went
  drill CASE --mode watch   see it done; --mode finish leaves the amounts and steps to you
  drill CASE --handout      the case on paper; --key is the same with the answers
  drill --from ANSWERS      a lawn of your own as a case; with --new FILE it is made into a case to keep`,
  usage:
    'drill [CASE|CASE.json] [--list|--next|--handout|--key] [--mode MODE] [--from ANSWERS] [--out FILE] [--units metric|us]',
  takes: { least: 0, most: 1, says: 'one case' },
  options: {
    list: { type: 'boolean', says: 'every case with level, topic and time' },
    mode: {
      type: 'string',
      value: 'MODE',
      allowed: MODES,
      says: 'watch, finish or whole; whole if not given',
    },
    feedback: {
      type: 'string',
      value: 'WHEN',
      allowed: FEEDBACK,
      says: 'at-once or at-end; by the level if not given',
    },
    resume: { type: 'boolean', says: 'go on with the unfinished drill of this case' },
    record: { type: 'string', value: 'FILE', says: 'keep how it went there, and say what comes next' },
    next: { type: 'boolean', says: 'with --record: how the trainee stands, and the next case' },
    handout: { type: 'boolean', says: 'the case on paper, without answers' },
    key: { type: 'boolean', says: 'the case on paper, with answers' },
    from: { type: 'string', value: 'ANSWERS', says: 'make the case of an answers file or a saved session' },
    new: { type: 'string', value: 'FILE', says: 'with --from: be led through writing the case, and save it' },
    today: { type: 'string', value: 'DATE', says: 'with --from: the day on which the lawn was looked at' },
    out: { type: 'string', value: 'FILE', says: 'write the debrief, handout or key there, as Markdown' },
    force: { type: 'boolean', says: 'replace the file if it is there' },
    units: UNITS_OPTION,
    plain: { type: 'boolean', says: 'numbered lines instead of drawn questions; reads piped lines too' },
  },
  async run(args, io) {
    checkTogether(args);
    const pack = await io.loadPack(args.text('pack'));
    const choosing: Choosing = { args, io, pack, book: await loadCases(args.text('pack'), pack) };
    if (args.flag('list')) {
      io.out(listOf(choosing.book, io.width));
      return EXIT.done;
    }
    if (args.flag('next')) return showStanding(choosing);
    if (args.flag('handout') || args.flag('key')) return onPaper(choosing);
    return withAsker(choosing, args.text('new') === undefined ? drilled : writtenNew);
  },
};

/** Options that would be passed over in silence are refused. */
function checkTogether(args: ParsedArgs): void {
  const isFrom = args.text('from') !== undefined;
  const refuse = (says: string): never => {
    throw new CliStop(EXIT.usage, says, drill.usage);
  };
  if (isFrom && args.positionals.length > 0)
    refuse('A case is named, or made of answers with --from, and not both. Leave one of them out.');
  if (!isFrom && args.text('today') !== undefined)
    refuse(
      '--today is the day on which an own lawn was looked at: it goes with --from. A case has a day of its own.',
    );
  if (args.flag('handout') && args.flag('key'))
    refuse('--handout is for the trainee and --key for the trainer: ask for one at a time.');
}

/** Opens the screen, hears the signals, and closes both again. */
async function withAsker(
  choosing: Choosing,
  work: (choosing: Choosing, asker: Asker) => Promise<number>,
): Promise<number> {
  const { args, io, pack } = choosing;
  const signals = new AbortController();
  const stop = (): void => signals.abort();
  for (const name of SIGNALS) process.once(name, stop);
  const asker = await askerFor(args, io, signals.signal, lazyReader(pack, io.today, unitsOf(args)));
  try {
    return await work(choosing, asker);
  } finally {
    for (const name of SIGNALS) process.removeListener(name, stop);
    asker.close();
  }
}

async function drilled(choosing: Choosing, asker: Asker): Promise<number> {
  const { args, book } = choosing;
  const lesson = await chosenCase(choosing);
  await nothingInTheWay(choosing);
  const mode = MODES.find((each) => each === args.text('mode')) ?? 'whole';
  const feedback =
    FEEDBACK.find((each) => each === args.text('feedback')) ?? book.marking.feedback[lesson.level];
  return sit({ lesson, mode, feedback }, choosing, asker);
}

/** Whatever would stop the writing at the end is told before the first look. */
async function nothingInTheWay({ args, io }: Choosing): Promise<void> {
  const [out, record] = [args.text('out'), args.text('record')];
  for (const [option, file] of [
    ['--out', out],
    ['--record', record],
  ]) {
    const why = file === undefined ? undefined : await whyNotWritten(file);
    if (why !== undefined)
      throw new CliStop(
        EXIT.files,
        `${file} cannot be written: ${why}. Choose another place with ${option}.`,
      );
  }
  if (out !== undefined && io.exists(out) && !args.flag('force')) throw isThereAlready(out);
  if (record !== undefined) await readRecord(record, io);
}

const isThereAlready = (file: string): CliStop =>
  new CliStop(
    EXIT.files,
    `${file} is already there and was left as it is. Choose another name, or replace it with --force.`,
  );

async function writtenNew(choosing: Choosing, asker: Asker): Promise<number> {
  const { args, io } = choosing;
  const file = args.text('new') as string;
  if (args.text('from') === undefined)
    throw new CliStop(EXIT.usage, '--new makes a case of answers: name them with --from ANSWERS.');
  if (io.exists(file) && !args.flag('force')) throw isThereAlready(file);
  const why = await whyNotWritten(file);
  if (why !== undefined)
    throw new CliStop(EXIT.files, `${file} cannot be written: ${why}. Choose another place with --new.`);
  try {
    const { lesson, faults } = await authored(await chosenCase(choosing), choosing, asker);
    await io.writeText(file, caseText(lesson));
    io.err(`Saved as ${file}. Run it with: seedbed drill ${file}\n`);
    if (faults.length === 0) return EXIT.done;
    io.err(`Before it can be run, mend in the file:\n${faults.map((fault) => `  ${fault}`).join('\n')}\n`);
    return EXIT.answers;
  } catch (error) {
    if (!(error instanceof DrillLeft)) throw error;
    io.err('\nLeft before the end; no case was written.\n');
    return asker.left?.() === 'interrupted' ? EXIT.interrupted : EXIT.done;
  }
}

async function onPaper(choosing: Choosing): Promise<number> {
  const { args, io, pack, book } = choosing;
  const worked = workOut(await chosenCase(choosing), pack, book.marking, unitsOf(args));
  const [{ handoutOf, keyOf }, { markdownOf }] = await Promise.all([
    import('../../document/handout.js'),
    import('../../document/markdown.js'),
  ]);
  const text = markdownOf(args.flag('key') ? keyOf(worked) : handoutOf(worked));
  await writeResult(
    text,
    { out: args.text('out'), force: args.flag('force'), quiet: args.flag('quiet') },
    io,
  );
  return EXIT.done;
}

async function showStanding({ args, io, pack, book }: Choosing): Promise<number> {
  const file = args.text('record');
  if (file === undefined)
    throw new CliStop(
      EXIT.usage,
      '--next reads a record: name it with --record FILE. Nothing is kept unless you ask.',
    );
  const { PART_TITLES } = await import('../../document/debrief.js');
  io.out(`${standingText(await readRecord(file, io), book, pack, PART_TITLES)}\n`);
  return EXIT.done;
}
