/** Plays recorded visits to a plan, each typed line through the real line mode. */
import { PassThrough, type Writable } from 'node:stream';
import { formatDay, parseIsoDate } from '../../base/dates.js';
import type { Answers } from '../../interview/answers.js';
import { assemblePlan } from '../../planner/assemble-plan.js';
import type { Followed } from '../../planner/progress.js';
import type { Pack } from '../../rules/pack.js';
import { createLineAsker } from '../../terminal/line-asker.js';
import { firstFollowed } from './follow-file.js';
import { logText } from './log-text.js';
import { visit } from './visit.js';

/** What was typed on which day; the plan was made on the first. */
export interface RecordedVisits {
  readonly madeOn: string;
  readonly visits: readonly { readonly today: string; readonly typed: readonly string[] }[];
}

/** @returns the log after the last visit, as Markdown */
export async function playFollow(
  { madeOn, visits }: RecordedVisits,
  { answers, pack }: { readonly answers: Answers; readonly pack: Pack },
  dialogue: Writable,
  width: number,
): Promise<string> {
  const input = { pack, answers, today: parseIsoDate(madeOn), assumeAll: false };
  let followed: Followed = firstFollowed(input);
  let plan = assemblePlan(input);
  for (const { today, typed } of visits) {
    const day = parseIsoDate(today);
    dialogue.write(`\n${formatDay(day)}\n`);
    const lines = new PassThrough();
    const read = () => ({ kind: 'refused', says: 'No question of a session is asked here.' }) as const;
    const asker = createLineAsker({ input: lines, output: dialogue, width, colour: false, read });
    lines.end(typed.map((line) => `${line}\n`).join(''));
    const visited = await visit({ asker, pack, today: day, input, followed, save: async () => undefined });
    asker.close();
    if (visited === undefined) throw new Error(`the visit of ${today} was left before its end`);
    ({ plan, followed } = visited);
  }
  return logText(plan, followed, input);
}
