/** Plays a recorded journey: each question is answered with the line that was typed, through the real line mode. */
import { PassThrough, type Writable } from 'node:stream';
import { type IsoDate, parseIsoDate } from '../base/dates.js';
import type { Answers } from '../interview/answers.js';
import { assemblePlan } from '../planner/assemble-plan.js';
import type { Plan } from '../planner/plan.js';
import type { Pack } from '../rules/pack.js';
import { createLineAsker } from '../terminal/line-asker.js';
import { runSession } from '../terminal/session-loop.js';
import { interviewFor } from './interview-for.js';
import { readerFor } from './reader-for.js';

/** A journey file: whose lawn, which day, and what was typed for each question that may come. */
export interface Journey {
  readonly title: string;
  readonly invented: string;
  readonly today: string;
  readonly typed: Readonly<Record<string, string>>;
}

export interface Played {
  readonly answers: Answers;
  readonly plan: Plan;
  /** Questions asked, in order. */
  readonly asked: readonly string[];
}

const PATIENCE_MS = 5_000;

/** A question that does not take its one line would wait for ever; the journey is at fault then. */
async function settledSoon<Value>(promise: Promise<Value>, fault: string): Promise<Value> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(fault)), PATIENCE_MS);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Runs the journey; the dialogue, typed lines included, goes to `dialogue`. */
export async function playJourney(
  journey: Journey,
  pack: Pack,
  dialogue: Writable,
  width: number,
): Promise<Played> {
  const today: IsoDate = parseIsoDate(journey.today);
  const input = new PassThrough();
  const read = readerFor(pack, today);
  const asker = createLineAsker({ input, output: dialogue, width, colour: false, read });
  const rules = interviewFor({ pack, today, given: [], heldOver: [], startedOn: today });
  const asked: string[] = [];
  const interview = {
    ...rules.interview,
    next: () => {
      const prompt = rules.interview.next();
      if (prompt === undefined) input.end();
      return prompt;
    },
  };
  const typing = {
    ...asker,
    ask: (prompt: Parameters<typeof asker.ask>[0]) => {
      const { id } = prompt.question;
      asked.push(id);
      const typed = journey.typed[id] ?? "don't know";
      input.write(`${typed}\n`);
      return settledSoon(asker.ask(prompt), `"${typed}" was not understood as an answer to "${id}"`);
    },
  };
  await runSession({ asker: typing, interview, save: async () => undefined });
  asker.close();
  const answers = rules.answers();
  return { answers, plan: assemblePlan({ pack, answers, today, assumeAll: false }), asked };
}
