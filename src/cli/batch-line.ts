/** One line of a batch: answers in, the plan as one line of JSON out, or an object that says what is wrong with the line. */

import { jsonText } from '../base/clean-text.js';
import type { IsoDate } from '../base/dates.js';
import { checkLawn, doubledFaults, parseJson, readAnswersFile } from '../interview/answers-file.js';
import { ScheduleClash } from '../planner/assemble-plan.js';
import type { PriceList } from '../planner/price-list.js';
import type { Pack } from '../rules/pack.js';
import { answersContext } from './answers-context.js';
import { makePlan } from './commands/plan.js';
import { CliStop, EXIT } from './io.js';

export interface BatchSettings {
  readonly pack: Pack;
  readonly today: IsoDate;
  readonly assumeAll: boolean;
  readonly prices: PriceList | undefined;
}

export interface BatchLine {
  /** Number of the line in the file, from 1. */
  readonly line: number;
  readonly text: string;
}

export interface BatchResult {
  readonly isPlan: boolean;
  readonly json: string;
}

/** Never throws: whatever is wrong with a line becomes its result, and the run goes on. */
export function planLine({ line, text }: BatchLine, settings: BatchSettings): BatchResult {
  const failed = (code: number, message: string, faults: readonly string[] = []): BatchResult => ({
    isPlan: false,
    json: jsonText({ line, error: { code, message, ...(faults.length === 0 ? {} : { faults }) } }),
  });
  try {
    const read = readLine(text, settings);
    if (!read.ok) return failed(EXIT.answers, read.faults.join(' '), read.faults);
    return { isPlan: true, json: jsonText(makePlan({ ...settings, ...read })) };
  } catch (error) {
    const isClash = error instanceof ScheduleClash;
    const code = error instanceof CliStop ? error.exitCode : isClash ? EXIT.answers : EXIT.unexpected;
    return failed(code, (error as Error).message);
  }
}

/** An answers object, bare or as an answers file wraps it. */
function readLine(text: string, { pack, today }: BatchSettings): ReturnType<typeof readAnswersFile> {
  const context = answersContext(pack, today);
  const json = parseJson(text);
  if ('fault' in json) return { ok: false, faults: [json.fault] };
  const { value, doubled } = json;
  const isBare =
    typeof value === 'object' && value !== null && !Array.isArray(value) && !Object.hasOwn(value, 'answers');
  return isBare
    ? checkLawn(value as Record<string, unknown>, context, { before: doubledFaults(doubled) })
    : readAnswersFile(text, context);
}
