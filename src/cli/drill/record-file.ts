/** The record of a trainee in the file that they name; nowhere else is anything kept. */

import { jsonText } from '../../base/clean-text.js';
import type { Pack } from '../../rules/pack.js';
import type { CaseBook } from '../../rules/schema-case.js';
import {
  type DrillEntry,
  type DrillRecord,
  EMPTY_RECORD,
  findingStandings,
  nextCase,
  passedCases,
  recordFault,
  type Standing,
  skillStandings,
  withEntry,
} from '../../training/record.js';
import { type CliIo, CliStop, EXIT } from '../io.js';

/** @throws {CliStop} when the file is there and is no record; it is left as it is */
export async function readRecord(file: string, io: CliIo): Promise<DrillRecord> {
  if (!io.exists(file)) return EMPTY_RECORD;
  const text = await io.readText(file);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw noRecord(file, (error as Error).message);
  }
  const fault = recordFault(value);
  if (fault !== undefined) throw noRecord(file, fault);
  return value as DrillRecord;
}

const noRecord = (file: string, why: string): CliStop =>
  new CliStop(
    EXIT.answers,
    `${file} is no record of drills: ${why}. It was left as it is; name another file with --record.`,
  );

export async function addToRecord(file: string, entry: DrillEntry, io: CliIo): Promise<DrillRecord> {
  const before = await readRecord(file, io);
  const record = withEntry(before, entry);
  await io.rewriteText(file, `${jsonText(record, 2)}\n`);
  return record;
}

/** How the trainee stands, weakest first, and the case to do next. */
export function standingText(
  record: DrillRecord,
  book: CaseBook,
  pack: Pack,
  parts: Readonly<Record<string, string>>,
): string {
  const passed = passedCases(record, book.cases).size;
  const count = record.drills.filter(({ mode }) => mode !== 'watch').length;
  const next = nextCase(record, book);
  const row = (name: string, { tries, right }: Standing): string =>
    `  ${name}: ${Math.round(100 * right)} % of ${tries === 1 ? '1 time' : `${tries} times`}`;
  return [
    `${count} ${count === 1 ? 'drill' : 'drills'}, ${passed} of ${book.cases.length} cases passed.`,
    ...headed(
      'Findings, weakest first',
      findingStandings(record).map((each) => row(pack.findingById.get(each.id)?.title ?? each.id, each)),
    ),
    ...headed(
      'Skills, weakest first',
      skillStandings(record).map((each) => row(parts[each.id] ?? each.id, each)),
    ),
    next === undefined
      ? 'Every case is passed.'
      : `Next: seedbed drill ${next.id} (${next.title}; ${next.level}, ${next.topic})`,
  ].join('\n');
}

const headed = (title: string, rows: readonly string[]): string[] =>
  rows.length === 0 ? [] : [title, ...rows];
