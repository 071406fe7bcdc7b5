/** What a command plans from: an answers file, or a saved session with the climate that it was answered with. */
import { daysBetween, type IsoDate } from '../base/dates.js';
import type { Answers } from '../interview/answers.js';
import { readAnswersFile } from '../interview/answers-file.js';
import type { Area } from '../interview/areas.js';
import type { OwnClimate, Pack } from '../rules/pack.js';
import type { SavedAnswer } from '../session/saved-session.js';
import { answersContext } from './answers-context.js';
import { CliStop, EXIT } from './io.js';

export interface Given {
  readonly answers: Answers;
  /** The own climate of a session. */
  readonly climate: OwnClimate | undefined;
}

export interface GivenLawn extends Given {
  /** Empty where the lawn is planned as one. */
  readonly areas: readonly Area[];
}

/** @throws {CliStop} exit code 3 with every fault of the file; 5 for a session that cannot be read */
export async function lawnIn(text: string, file: string, pack: Pack, today: IsoDate): Promise<GivenLawn> {
  if (!/"seedbedSession"\s*:/.test(text)) return { ...lawnFrom(text, file, pack, today), climate: undefined };
  const { answers, areas, inAreas, climate } = await sessionIn(text, file);
  const given = {
    format: 1,
    answers: answersOn(today, answers, pack),
    ...(areas.length === 0
      ? {}
      : {
          areas: areas.map((name) => ({
            name,
            answers: answersOn(
              today,
              inAreas.filter(({ area }) => area === name),
              pack,
            ),
          })),
        }),
  };
  return { ...lawnFrom(JSON.stringify(given), file, pack, today), climate };
}

/** The same for a command that looks at a lawn planned as one. */
export async function givenIn(text: string, file: string, pack: Pack, today: IsoDate): Promise<Given> {
  return asOne(await lawnIn(text, file, pack, today), file);
}

/** @throws {CliStop} exit code 3 with every fault of the file */
export function lawnFrom(text: string, file: string, pack: Pack, today: IsoDate): Omit<GivenLawn, 'climate'> {
  const read = readAnswersFile(text, answersContext(pack, today));
  if (read.ok) return read;
  throw faultStop(file === '-' ? 'The answers' : file, read.faults);
}

/**
 * The answers for a lawn that is planned as one.
 *
 * @throws {CliStop} exit code 3 with every fault of the file, or where it has several areas
 */
export const answersFrom = (text: string, file: string, pack: Pack, today: IsoDate): Answers =>
  asOne(lawnFrom(text, file, pack, today), file).answers;

function asOne<Lawn extends { readonly areas: readonly Area[] }>(lawn: Lawn, file: string): Lawn {
  if (lawn.areas.length === 0) return lawn;
  const names = lawn.areas.map(({ name }) => name).join(', ');
  throw new CliStop(
    EXIT.answers,
    `${file} has several areas (${names}), and this looks at one lawn at a time. Give a file with the answers of one area alone; "seedbed plan" takes them all.`,
  );
}

/** The rules with the own climate of a session, unless --climate has given them another. */
export function withClimateOf(pack: Pack, { climate }: { readonly climate?: OwnClimate | undefined }): Pack {
  return climate === undefined || pack.ownClimate !== undefined ? pack : { ...pack, ownClimate: climate };
}

/**
 * The answers of a session as they are on a day: "3 days ago" counts from the day it was said. Dormant ones are kept
 * in the file, and no rule reads them.
 */
export function answersOn(day: IsoDate, given: readonly SavedAnswer[], pack: Pack): Answers {
  return Object.fromEntries(
    given
      .filter(({ questionId }) => pack.questionById.has(questionId))
      .map(({ questionId, value, givenOn }) => {
        const isAgo = pack.questionById.get(questionId)?.kind === 'days-ago';
        const passed = isAgo && givenOn !== undefined ? Math.max(0, daysBetween(givenOn, day)) : 0;
        return [questionId, typeof value === 'number' ? value + passed : value];
      }),
  );
}

async function sessionIn(text: string, file: string) {
  const { readSession } = await import('../session/saved-session.js');
  const reading = await readSession(text);
  if (reading.kind === 'whole') return reading.session;
  throw new CliStop(
    EXIT.files,
    `${file} is no whole session and was left as it is: ${reading.problems.join(' ')} Save what can be read of its answers with: seedbed ask --save ${file}`,
  );
}

/** A file that is no answers file at all must not fill the screen. */
const MOST_FAULTS_SHOWN = 100;

/** Every fault in one message. */
export function faultStop(where: string, faults: readonly string[]): CliStop {
  const count = faults.length === 1 ? 'one fault' : `${faults.length} faults`;
  const rest = faults.length - MOST_FAULTS_SHOWN;
  const lines = [
    ...faults.slice(0, MOST_FAULTS_SHOWN),
    ...(rest > 0 ? [`... and ${rest} more like these.`] : []),
  ];
  return new CliStop(
    EXIT.answers,
    `${where}: ${count}, nothing was planned.\n${lines.map((fault) => `  ${fault}`).join('\n')}`,
  );
}
