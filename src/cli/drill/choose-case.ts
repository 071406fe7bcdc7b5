/** Which case is drilled: one of the book, one in a file, or one made of answers. */
import { nearest } from '../../base/nearest.js';
import { ScheduleClash } from '../../planner/assemble-plan.js';
import type { Pack } from '../../rules/pack.js';
import type { CaseBook, DrillCase } from '../../rules/schema-case.js';
import { wrapText } from '../../terminal/wrap-text.js';
import { caseFrom } from '../../training/case-from.js';
import { nextCase } from '../../training/record.js';
import type { ParsedArgs } from '../command.js';
import { dayOf } from '../commands/plan.js';
import { answersFrom } from '../given-answers.js';
import { type CliIo, CliStop, EXIT } from '../io.js';
import { readRecord } from './record-file.js';

export interface Choosing {
  readonly args: ParsedArgs;
  readonly io: CliIo;
  readonly pack: Pack;
  readonly book: CaseBook;
}

/** @throws {CliStop} when there is no such case, or its file is not sound */
export async function chosenCase(choosing: Choosing): Promise<DrillCase> {
  const { args, book } = choosing;
  const [name] = args.positionals;
  const from = args.text('from');
  if (from !== undefined) return madeFrom(from, choosing);
  if (name?.endsWith('.json') === true) return fromFile(name, choosing);
  const [first] = book.cases;
  if (first === undefined) throw new CliStop(EXIT.pack, 'These rules have no training cases.');
  return name === undefined ? ((await proposed(choosing)) ?? first) : named(name, book);
}

/** With a record, the case that it proposes. */
async function proposed({ args, io, book }: Choosing): Promise<DrillCase | undefined> {
  const record = args.text('record');
  return record === undefined ? undefined : nextCase(await readRecord(record, io), book);
}

function named(name: string, { cases }: CaseBook): DrillCase {
  const found = cases.find(({ id }) => id === name);
  if (found !== undefined) return found;
  const near = nearest(
    name,
    cases.map(({ id }) => id),
  );
  throw new CliStop(
    EXIT.usage,
    `There is no case "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`} "seedbed drill --list" shows them all; a case of your own is a file that ends in .json.`,
  );
}

async function madeFrom(file: string, { args, io, pack, book }: Choosing): Promise<DrillCase> {
  const today = dayOf(args.text('today'), io.today);
  const answers = answersFrom(await answersText(file, io), file, pack, today);
  try {
    return caseFrom(answers, today, pack, book.marking);
  } catch (error) {
    if (!(error instanceof ScheduleClash)) throw error;
    throw new CliStop(EXIT.answers, `${file} makes no case: ${error.message}`);
  }
}

/** An answers file as it stands; of a saved session, its answers. */
async function answersText(file: string, io: CliIo): Promise<string> {
  const text = await io.readText(file);
  if (!text.includes('"seedbedSession"')) return text;
  const { readSession } = await import('../../session/saved-session.js');
  const reading = await readSession(text);
  if (reading.kind !== 'whole') return text;
  const answers = reading.session.answers.map(({ questionId, value }) => [questionId, value]);
  return JSON.stringify({ format: 1, answers: Object.fromEntries(answers) });
}

async function fromFile(file: string, { io, pack, book }: Choosing): Promise<DrillCase> {
  const [{ parseCaseText }, { drillCaseSchema }, { checkCase }, { explain }] = await Promise.all([
    import('../../rules/read-cases.js'),
    import('../../rules/schema-case.js'),
    import('../../training/check-case.js'),
    import('../../rules/problem.js'),
  ]);
  const { value, problems } = parseCaseText(await io.readText(file), drillCaseSchema, file);
  const faults = value === undefined ? problems.map(explain) : checkCase(value, pack, book.marking);
  if (value !== undefined && faults.length === 0) return value;
  throw new CliStop(
    EXIT.pack,
    `${file} is no sound case:\n${faults.map((fault) => `  ${fault}`).join('\n')}`,
  );
}

export function listOf({ cases }: CaseBook, width: number): string {
  const lines = cases.flatMap(({ id, title, level, topic, minutes }, index) => [
    ...(level === cases[index - 1]?.level ? [] : [`${index === 0 ? '' : '\n'}${level}`]),
    ...wrapText(`  ${id}: ${title}; ${topic}; about ${minutes} min`, width, '      '),
  ]);
  return `${lines.join('\n')}\n`;
}
