/** Runs one drill at the screen: the dialogue, then the debrief, the record and the what-ifs. */

import type { DrillCase } from '../../rules/schema-case.js';
import type { Asker } from '../../terminal/asker.js';
import { wrapText } from '../../terminal/wrap-text.js';
import type { Attempt, DrillMode } from '../../training/attempt.js';
import { type Marks, markAttempt } from '../../training/marks.js';
import { entryOf } from '../../training/record.js';
import { type WorkedCase, workOut } from '../../training/worked-case.js';
import { type CliIo, EXIT } from '../io.js';
import { writeResult } from '../write-result.js';
import type { Choosing } from './choose-case.js';
import type { DrillParts } from './parts.js';
import { addToRecord, standingText } from './record-file.js';
import { type DrillEnd, runDrill, type Setting, supposeStage, typedAgain } from './run-drill.js';

const MS_PER_MINUTE = 60_000;

export interface Sitting {
  readonly lesson: DrillCase;
  readonly mode: DrillMode;
  readonly feedback: DrillParts['feedback'];
}

export async function sit(
  { lesson, mode, feedback }: Sitting,
  choosing: Choosing,
  asker: Asker,
): Promise<number> {
  const { args, io, pack, book } = choosing;
  const worked = workOut(lesson, pack, book.marking);
  const began = Date.now();
  const minutes = (): number => Math.round((Date.now() - began) / MS_PER_MINUTE);
  const parts: Setting = { asker, worked, feedback };
  const end = await runDrill(parts, mode, minutes);
  if (end.outcome === 'left') return left(end, asker.left?.(), io);
  if (mode === 'watch') return EXIT.done;
  const marks = markAttempt(worked, end.attempt);
  await showDebrief(worked, end.attempt, marks, choosing);
  const record = args.text('record');
  if (record !== undefined) {
    const kept = await addToRecord(record, entryOf(lesson.id, io.today, end.attempt, marks), io);
    const { PART_TITLES } = await import('../../document/debrief.js');
    asker.say(`${standingText(kept, book, pack, PART_TITLES)}\nKept in ${record}, and nowhere else.`);
  }
  await supposeStage(parts);
  return EXIT.done;
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
    await writeResult(markdown, { out, force: args.flag('force'), quiet: args.flag('quiet') }, io);
    io.err(`${resultLine(worked, marks)}\n`);
  } else if (io.output.isTTY === true) {
    const { showMarkdown } = await import('../../terminal/show-markdown.js');
    io.out(`\n${showMarkdown(markdown, { width: io.width, colour: io.colour })}\n`);
  } else io.out(markdown);
}

function left({ attempt }: DrillEnd, how: string | undefined, io: CliIo): number {
  const looks = typedAgain(attempt);
  const told = ['Left before the end, so nothing is marked.'];
  if (looks !== '') told.push(`To come back to here, start the case again and type: ${looks}`);
  io.err(`\n${told.flatMap((text) => wrapText(text, io.width, '  ')).join('\n')}\n`);
  if (how === 'interrupted') return EXIT.interrupted;
  return how === 'ended' ? EXIT.answers : EXIT.done;
}
