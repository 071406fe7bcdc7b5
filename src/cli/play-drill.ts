/** Plays a recorded drill: the lines that were typed, through the real line mode, to the debrief. */
import { PassThrough, type Writable } from 'node:stream';
import type { Units } from '../base/us-units.js';
import { debriefOf } from '../document/debrief.js';
import { markdownOf } from '../document/markdown.js';
import type { Pack } from '../rules/pack.js';
import type { CaseBook } from '../rules/schema-case.js';
import { createLineAsker } from '../terminal/line-asker.js';
import type { DrillMode } from '../training/attempt.js';
import { type Marks, markAttempt } from '../training/marks.js';
import { workOut } from '../training/worked-case.js';
import { runDrill, supposeStage } from './drill/run-drill.js';

/** A drill file: which case, how, and every line that was typed. */
export interface RecordedDrill {
  readonly title: string;
  readonly invented: string;
  readonly case: string;
  readonly mode: DrillMode;
  /** Metric unless said otherwise. */
  readonly units?: Units;
  /** Minutes that the debrief is to name. */
  readonly minutes: number;
  readonly typed: readonly string[];
}

/**
 * Runs the drill; the dialogue, typed lines included, goes to `dialogue`.
 *
 * @throws {Error} when there is no such case, or the lines end before the drill does
 */
export async function playDrill(
  recorded: RecordedDrill,
  { pack, book }: { readonly pack: Pack; readonly book: CaseBook },
  dialogue: Writable,
  width: number,
): Promise<{ readonly debrief: string; readonly marks: Marks }> {
  const lesson = book.cases.find(({ id }) => id === recorded.case);
  if (lesson === undefined) throw new Error(`there is no case "${recorded.case}"`);
  const input = new PassThrough();
  input.end(recorded.typed.map((line) => `${line}\n`).join(''));
  const asker = createLineAsker({
    input,
    output: dialogue,
    width,
    colour: false,
    read: () => ({ kind: 'refused', says: '' }),
  });
  const worked = workOut(lesson, pack, book.marking, recorded.units);
  const parts = { asker, worked, feedback: book.marking.feedback[lesson.level] };
  const { outcome, attempt } = await runDrill(parts, recorded.mode, () => recorded.minutes);
  if (outcome === 'left') throw new Error(`the lines of "${recorded.title}" end before the drill does`);
  const marks = markAttempt(worked, attempt);
  await supposeStage(parts);
  asker.close();
  return { debrief: markdownOf(debriefOf(worked, attempt, marks)), marks };
}
