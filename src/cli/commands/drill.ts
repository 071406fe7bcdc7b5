/** `drill`: a trainee finds out what is wrong with an invented lawn, commits, and is shown how it went. */

import { nearest } from '../../base/nearest.js';
import type { Pack } from '../../rules/pack.js';
import type { CaseBook, DrillCase } from '../../rules/schema-case.js';
import { wrapText } from '../../terminal/wrap-text.js';
import { markAttempt } from '../../training/marks.js';
import { type WorkedCase, workOut } from '../../training/worked-case.js';
import { askerFor, lazyReader } from '../asker-for.js';
import type { Command, ParsedArgs } from '../command.js';
import { type DrillEnd, runDrill, supposeStage, typedAgain } from '../drill/run-drill.js';
import { type CliIo, CliStop, EXIT } from '../io.js';
import { loadCases } from '../load-cases.js';
import { writeResult } from '../write-result.js';

const MODES = ['watch', 'finish', 'whole'] as const;
const FEEDBACK = ['at-once', 'at-end'] as const;
const MS_PER_MINUTE = 60_000;

export const drill: Command = {
  name: 'drill',
  summary: 'Train: find out what is wrong with an invented lawn',
  usage:
    'drill [CASE] [--list] [--mode watch|finish|whole] [--feedback at-once|at-end] [--out FILE] [--plain]',
  options: {
    list: { type: 'boolean', says: 'every case with level, topic and time' },
    mode: {
      type: 'string',
      value: 'MODE',
      says: 'watch it done, finish it, or do the whole; whole if not given',
    },
    feedback: { type: 'string', value: 'WHEN', says: 'at-once or at-end; by the level if not given' },
    out: { type: 'string', value: 'FILE', says: 'write the debrief there, as Markdown' },
    force: { type: 'boolean', says: 'replace the file if it is there' },
    plain: { type: 'boolean', says: 'numbered lines instead of drawn questions; reads piped lines too' },
  },
  takes: { least: 0, most: 1, says: 'one case' },
  async run(args, io) {
    const pack = await io.loadPack(args.text('pack'));
    const book = await loadCases(args.text('pack'), pack);
    if (args.flag('list')) {
      io.out(listOf(book, io.width));
      return EXIT.done;
    }
    const worked = workOut(caseNamed(args.positionals, book), pack, book.marking);
    return runOne(worked, args, io, pack);
  },
};

async function runOne(worked: WorkedCase, args: ParsedArgs, io: CliIo, pack: Pack): Promise<number> {
  const mode = oneOf('--mode', args.text('mode') ?? 'whole', MODES);
  const feedback = oneOf(
    '--feedback',
    args.text('feedback') ?? worked.marking.feedback[worked.lesson.level],
    FEEDBACK,
  );
  const began = Date.now();
  const minutes = (): number => Math.round((Date.now() - began) / MS_PER_MINUTE);
  const signals = new AbortController();
  const stop = (): void => signals.abort();
  for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.once(name, stop);
  const asker = await askerFor(args, io, signals.signal, lazyReader(pack, io.today));
  try {
    const parts = { asker, worked, today: io.today, feedback };
    const end = await runDrill(parts, mode, minutes);
    if (end.outcome === 'left') return left(end, asker.left?.(), io);
    if (mode === 'watch') return EXIT.done;
    await debrief(worked, end, args, io);
    await supposeStage(parts, end.attempt);
    return EXIT.done;
  } finally {
    for (const name of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) process.removeListener(name, stop);
    asker.close();
  }
}

async function debrief(
  worked: WorkedCase,
  { attempt }: DrillEnd,
  args: ParsedArgs,
  io: CliIo,
): Promise<void> {
  const [{ debriefOf, resultLine }, { markdownOf }] = await Promise.all([
    import('../../document/debrief.js'),
    import('../../document/markdown.js'),
  ]);
  const marks = markAttempt(worked, attempt);
  const markdown = markdownOf(debriefOf(worked, attempt, marks));
  const out = args.text('out');
  if (out !== undefined) {
    await writeResult(markdown, { out, force: args.flag('force'), quiet: args.flag('quiet') }, io);
    io.err(`${resultLine(worked, marks)}\n`);
  } else if (io.output.isTTY === true) {
    const { showMarkdown } = await import('../../terminal/show-markdown.js');
    io.out(`\n${showMarkdown(markdown, { width: io.width, colour: io.colour })}\n`);
  } else io.out(markdown);
}

function left({ attempt }: DrillEnd, how: string | undefined, io: CliIo): number {
  const looks = typedAgain(attempt);
  io.err('\nLeft before the end, so nothing is marked.\n');
  if (looks !== '') io.err(`To come back to here, start the case again and type:\n  ${looks}\n`);
  if (how === 'interrupted') return EXIT.interrupted;
  return how === 'ended' ? EXIT.answers : EXIT.done;
}

/** @throws {CliStop} exit code 2 when no case or more than one is named, or there is none of that name */
function caseNamed(positionals: readonly string[], { cases }: CaseBook): DrillCase {
  const [name] = positionals;
  const first = cases[0];
  if (first === undefined) throw new CliStop(EXIT.pack, 'These rules have no training cases.');
  if (name === undefined) return first;
  const found = cases.find(({ id }) => id === name);
  if (found !== undefined) return found;
  const near = nearest(
    name,
    cases.map(({ id }) => id),
  );
  throw new CliStop(
    EXIT.usage,
    `There is no case "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`} "seedbed drill --list" shows them all.`,
  );
}

function listOf({ cases }: CaseBook, width: number): string {
  const lines = cases.flatMap(({ id, title, level, topic, minutes }, index) => [
    ...(level === cases[index - 1]?.level ? [] : [`${index === 0 ? '' : '\n'}${level}`]),
    ...wrapText(`  ${id}: ${title}; ${topic}; about ${minutes} min`, width, '      '),
  ]);
  return `${lines.join('\n')}\n`;
}

function oneOf<Word extends string>(option: string, typed: string, allowed: readonly Word[]): Word {
  const word = allowed.find((each) => each === typed);
  if (word !== undefined) return word;
  throw new CliStop(EXIT.usage, `${option} is "${typed}". Allowed: ${allowed.join(', ')}.`);
}
