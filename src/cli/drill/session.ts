/** Runs one drill at the screen: the dialogue, then the debrief, the record and the what-ifs. */

import type { DrillCase } from '../../rules/schema-case.js';
import type { Asker } from '../../terminal/asker.js';
import { wrapText } from '../../terminal/wrap-text.js';
import type { Attempt, DrillMode } from '../../training/attempt.js';
import { type Marks, markAttempt } from '../../training/marks.js';
import { entryOf, watchedEntry } from '../../training/record.js';
import { type WorkedCase, workOut } from '../../training/worked-case.js';
import { type ParsedArgs, unitsOf } from '../command.js';
import { EXIT } from '../io.js';
import { writeResult } from '../write-result.js';
import type { Choosing } from './choose-case.js';
import { dropKept, madeOf, pathOfDrill, readKept, rememberingAsker, writeKept } from './kept-drill.js';
import type { DrillParts } from './parts.js';
import { addToRecord, standingText } from './record-file.js';
import { runDrill, supposeStage } from './run-drill.js';

const MS_PER_MINUTE = 60_000;

export interface Sitting {
  readonly lesson: DrillCase;
  readonly mode: DrillMode;
  readonly feedback: DrillParts['feedback'];
}

export async function sit(sitting: Sitting, choosing: Choosing, asker: Asker): Promise<number> {
  const { lesson, mode, feedback } = sitting;
  const { args, io, pack, book } = choosing;
  const worked = workOut(lesson, pack, book.marking, unitsOf(args));
  const kept = await takenUp(sitting, choosing, asker);
  if (kept === 'left') return EXIT.done;
  const began = Date.now() - kept.minutes * MS_PER_MINUTE;
  const minutes = (): number => Math.round((Date.now() - began) / MS_PER_MINUTE);
  const remembering = rememberingAsker(asker, kept.typed, (typed) => kept.keep(typed, minutes()));
  const end = await runDrill({ asker: remembering, worked, feedback }, mode, minutes);
  if (end.outcome === 'left') return left(asker.left?.(), kept.isKept, choosing, lesson);
  if (mode === 'watch') {
    const watched = args.text('record');
    if (watched !== undefined) {
      await addToRecord(watched, watchedEntry(lesson.id, io.today, minutes()), io);
      asker.say(`Kept in ${watched}: watched, without marks.`);
    }
    await kept.drop();
    return EXIT.done;
  }
  const marks = markAttempt(worked, end.attempt);
  await showDebrief(worked, end.attempt, marks, choosing);
  const record = args.text('record');
  if (record !== undefined) {
    const standing = await addToRecord(record, entryOf(lesson.id, io.today, end.attempt, marks), io);
    const { PART_TITLES } = await import('../../document/debrief.js');
    asker.say(`${standingText(standing, book, pack, PART_TITLES)}\nKept in ${record}, and nowhere else.`);
  }
  await kept.drop();
  await supposeStage({ asker, worked, feedback });
  return EXIT.done;
}

interface Kept {
  readonly typed: readonly (string | null)[];
  readonly minutes: number;
  readonly keep: (typed: readonly (string | null)[], minutes: number) => Promise<void>;
  readonly drop: () => Promise<void>;
  readonly isKept: () => boolean;
}

/** Goes on with an unfinished drill where they want to; through a pipe only with --resume, since nobody can be asked. */
async function takenUp(
  { lesson, mode }: Sitting,
  { args, io, pack }: Choosing,
  asker: Asker,
): Promise<Kept | 'left'> {
  const units = unitsOf(args);
  // A bare number typed in one unit must not be heard in another.
  const name = `${lesson.id}-${mode}${units === 'metric' ? '' : `-${units}`}`;
  const path = pathOfDrill(io, name);
  const now = madeOf(lesson, pack.sha256);
  const before = await readKept(path, now, (text) => asker.say(text));
  let isWritten = before !== undefined;
  const kept = (typed: Kept['typed'], minutes: number): Kept => ({
    typed,
    minutes,
    keep: async (lines, spent) => {
      await writeKept(path, {
        format: 1,
        caseId: lesson.id,
        madeOf: now,
        mode,
        minutes: spent,
        typed: lines,
      });
      isWritten = true;
    },
    drop: () => dropKept(path),
    isKept: () => isWritten,
  });
  if (before === undefined) {
    if (args.flag('resume')) asker.say('No unfinished drill of this case is kept, so it begins at the gate.');
    return kept([], 0);
  }
  if (args.flag('resume')) return kept(before.typed, before.minutes);
  if (io.input.isTTY !== true) {
    asker.say('An unfinished drill of this case is kept: --resume goes on with it. This one is not kept.');
    return { typed: [], minutes: 0, keep: async () => {}, drop: async () => {}, isKept: () => false };
  }
  const choice = await asker.pick('There is an unfinished drill of this case.', [
    { value: 'on', label: 'go on with it' },
    { value: 'new', label: 'begin again; what was typed is thrown away' },
    { value: 'leave', label: 'leave now; it stays' },
  ]);
  if (choice === 'on') return kept(before.typed, before.minutes);
  if (choice !== 'new') return 'left';
  await dropKept(path);
  return kept([], 0);
}

async function showDebrief(
  worked: WorkedCase,
  attempt: Attempt,
  marks: Marks,
  { args, io }: Choosing,
): Promise<void> {
  const [{ debriefOf, resultLine }, { markdownOf }] = await Promise.all([
    import('../../document/debrief.js'),
    import('../../document/markdown.js'),
  ]);
  const markdown = markdownOf(debriefOf(worked, attempt, marks));
  const out = args.text('out');
  if (out !== undefined) {
    try {
      await writeResult(markdown, { out, force: args.flag('force'), quiet: args.flag('quiet') }, io);
    } catch (error) {
      // What was worked for is shown all the same.
      io.out(markdown);
      throw error;
    }
    io.err(`${resultLine(worked, marks)}\n`);
  } else if (io.output.isTTY === true) {
    const { showMarkdown } = await import('../../terminal/show-markdown.js');
    io.out(`\n${showMarkdown(markdown, { width: io.width, colour: io.colour })}\n`);
  } else io.out(markdown);
}

const REPEATED = ['mode', 'feedback', 'from', 'today', 'record', 'pack', 'out', 'units'] as const;

/** The words that come back to this drill. */
function resumeWords(args: ParsedArgs, lesson: DrillCase): string {
  const named = args.text('from') === undefined ? [args.positionals[0] ?? lesson.id] : [];
  const options = REPEATED.flatMap((name) => {
    const value = args.text(name);
    return value === undefined ? [] : [`--${name}`, value];
  });
  const flags = ['force', 'plain'].filter((name) => args.flag(name)).map((name) => `--${name}`);
  return ['drill', ...named, ...options, ...flags, '--resume'].map(quoted).join(' ');
}

/** As a shell takes it for one word. */
const quoted = (word: string): string =>
  /^[\w./:=-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;

function left(
  how: string | undefined,
  isKept: () => boolean,
  { io, args }: Choosing,
  lesson: DrillCase,
): number {
  const told = ['Left before the end, so nothing is marked.'];
  if (isKept()) told.push(`What you typed is kept. Go on with: ${io.commandLine(resumeWords(args, lesson))}`);
  io.err(`\n${told.flatMap((text) => wrapText(text, io.width, '  ')).join('\n')}\n`);
  if (how === 'interrupted') return EXIT.interrupted;
  return how === 'ended' ? EXIT.answers : EXIT.done;
}
