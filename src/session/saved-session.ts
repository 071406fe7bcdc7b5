/**
 * What a saved session holds, and its text: JSON with one answer to a line, so that a file cut short or
 * scribbled on still gives back every answer that is whole. Each answer and the whole carry a check sum, so that
 * nothing that was changed is taken for what was typed. zod is loaded only when a file is read.
 */
import { crc32 } from 'node:zlib';
import type { IsoDate } from '../base/dates.js';
import type { AnswerValue } from '../interview/answers.js';
import type { Followed } from '../planner/progress.js';
import type { OwnClimate } from '../rules/pack.js';

export interface PackReference {
  readonly id: string;
  readonly version: string;
  readonly sha256: string;
}

export interface SavedAnswer {
  readonly questionId: string;
  /** A value, or "unknown". */
  readonly value: AnswerValue;
  /** What was typed or picked; empty when the shown default was taken. */
  readonly typed: string;
  /** The day it was given: "3 days ago" counts from here, not from the day of reading. */
  readonly givenOn?: IsoDate | undefined;
}

/** An answer that holds for one area of several. */
export interface AreaAnswer extends SavedAnswer {
  readonly area: string;
}

/** Where a lawn has several areas: their names, and what holds for each alone. Empty where it is planned as one. */
export interface SavedAreas {
  readonly areas: readonly string[];
  readonly inAreas: readonly AreaAnswer[];
}

export const NO_AREAS: SavedAreas = { areas: [], inAreas: [] };

export interface SavedSession extends SavedAreas {
  readonly format: 1;
  /** Those of version 0.1 had 1 and no check sums. */
  readonly seedbedSession: 2;
  /** The rules that the answers were given to; the caller compares them with its own. */
  readonly pack: PackReference;
  readonly startedOn: IsoDate;
  /** The person's own climate, which the seasons are worked out by; the file it came from is not needed again. */
  readonly climate?: OwnClimate | undefined;
  /** In the order they were given. */
  readonly answers: readonly SavedAnswer[];
  /** Kept, but not used by any condition now: offered again if their question returns. */
  readonly dormant: readonly SavedAnswer[];
  /** Answers to other rules than these: not used, offered if their question is asked. */
  readonly heldOver: readonly SavedAnswer[];
  /** What has happened since the plan was made. */
  readonly followed?: Followed | undefined;
}

/** What could be read from a damaged text. */
export interface SalvagedSession extends SavedAreas {
  readonly pack: PackReference | undefined;
  readonly startedOn: IsoDate | undefined;
  readonly climate: OwnClimate | undefined;
  readonly answers: readonly SavedAnswer[];
  readonly dormant: readonly SavedAnswer[];
  readonly heldOver: readonly SavedAnswer[];
  /** Pieces that began like an answer and could not be read. */
  readonly lostAnswers: number;
}

export type SessionReading =
  | { readonly kind: 'whole'; readonly session: SavedSession }
  | { readonly kind: 'damaged'; readonly problems: readonly string[]; readonly salvaged: SalvagedSession }
  /** A sound file, but not one that this program can read: it is to be left alone. */
  | { readonly kind: 'foreign'; readonly problems: readonly string[] };

/** Longer than any session; what is longer is no session of ours. */
const LONGEST_TEXT = 1_000_000;

/** The session as text, one answer to a line, ended by its check sum and a newline. */
export function writeSession(session: SavedSession): string {
  const { pack, startedOn, climate, answers, dormant, heldOver, areas, inAreas, followed } = session;
  const head = headFields({ pack, startedOn, climate });
  const text = `${[
    '{',
    '"format": 1,',
    '"seedbedSession": 2,',
    ...Object.entries(head).map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)},`),
    `"headSum": "${sumOf(head)}",`,
    '"answers": [',
    ...answerLines(answers),
    '],',
    '"dormant": [',
    ...answerLines(dormant),
    '],',
    '"heldOver": [',
    ...answerLines(heldOver),
    '],',
    ...(areas.length === 0 ? [] : areaLines({ areas, inAreas })),
    ...(followed === undefined ? [] : followedLines(followed)),
  ].join('\n')}\n`;
  return `${text}"sum": "${hexSum(text)}"\n}\n`;
}

/** What stands before the answers, in the order of the file. */
const headFields = ({ pack, startedOn, climate }: Partial<SavedSession>) => ({
  pack: pack && { id: pack.id, version: pack.version, sha256: pack.sha256 },
  startedOn,
  ...(climate === undefined ? {} : { climate }),
});

const SUM_DIGITS = 8;
const hexSum = (text: string): string => crc32(text).toString(16).padStart(SUM_DIGITS, '0');
const sumOf = (fields: object): string => hexSum(JSON.stringify(fields));

function areaLines({ areas, inAreas }: SavedAreas): string[] {
  return [`"areas": ${JSON.stringify(areas)},`, '"inAreas": [', ...answerLines(inAreas), '],'];
}

function followedLines({ madeOn, assumeAll, planned, records }: Followed): string[] {
  const listed = (items: readonly unknown[]): string => items.map((item) => JSON.stringify(item)).join(',\n');
  return [
    '"followed": {',
    `"madeOn": ${JSON.stringify(madeOn)},`,
    `"assumeAll": ${assumeAll},`,
    `"planned": [\n${listed(planned)}\n],`,
    `"records": [\n${listed(records)}\n]`,
    '},',
  ];
}

function answerLines(answers: readonly (SavedAnswer | AreaAnswer)[]): string[] {
  return answers.map((answer, index) => {
    const { questionId, value, typed, givenOn } = answer;
    const area = 'area' in answer ? answer.area : undefined;
    // What is undefined leaves no key.
    const fields = { questionId, value, typed, givenOn, area };
    const line = JSON.stringify({ ...fields, sum: sumOf(fields) });
    return index === answers.length - 1 ? line : `${line},`;
  });
}

/** The text of a session file, judged whole, damaged or foreign; it never throws. */
export async function readSession(text: string): Promise<SessionReading> {
  if (text.length > LONGEST_TEXT)
    return { kind: 'foreign', problems: ['The file is far too long for a session.'] };
  const { areaName, ownClimate, packReference, problemsOf, savedAnswer, savedSession, startDay } =
    await import('./session-schema.js');
  const parsed = parseJson(text);
  if (parsed.ok && isForeign(parsed.value)) {
    return { kind: 'foreign', problems: ['The file was not written by this version of the program.'] };
  }
  const checked = parsed.ok ? savedSession(withoutSums(parsed.value as object)) : undefined;
  const isChanged = parsed.ok && isChangedSince(parsed.value as Summed, text);
  if (checked?.success === true && !isChanged) return { kind: 'whole', session: checked.data };
  const problems = [
    ...(checked === undefined ? ['The file ends too soon or is not JSON.'] : []),
    ...(checked?.success === false ? problemsOf(checked.error) : []),
    ...(isChanged ? ['The file was changed since it was saved.'] : []),
  ];
  return {
    kind: 'damaged',
    problems,
    salvaged: salvage(text, { areaName, savedAnswer, packReference, startDay, ownClimate }),
  };
}

type Summed = { readonly seedbedSession?: unknown; readonly sum?: unknown };
const SUM_LINE = /"sum": "[0-9a-f]{8}"\n\}\n?$/;
/** An answer with its check sum at the end: no text that was typed can hold this, since its quotes would be escaped. */
const SUMMED_ANSWER = /"sum":"[0-9a-f]{8}"\}/;
const LISTS = ['answers', 'dormant', 'heldOver', 'inAreas'] as const;

/** Whether the text is not to the letter what was saved; sessions of version 0.1 cannot tell. */
function isChangedSince({ seedbedSession, sum }: Summed, text: string): boolean {
  if (seedbedSession === 1 && sum === undefined && !SUMMED_ANSWER.test(text)) return false;
  const body = text.replace(/^\uFEFF/, '').replace(SUM_LINE, '');
  return sum !== hexSum(body);
}

/** The session as it is without the sums, each of which has been or will be checked. */
function withoutSums(session: object): object {
  const bare: Record<string, unknown> = { ...session };
  delete bare.sum;
  delete bare.headSum;
  for (const name of LISTS) {
    const list = bare[name];
    if (Array.isArray(list)) bare[name] = list.map(withoutSum);
  }
  return bare;
}

const withoutSum = (answer: unknown): unknown => {
  if (typeof answer !== 'object' || answer === null || !('sum' in answer)) return answer;
  const { sum: _, ...fields } = answer;
  return fields;
};

interface Readers {
  readonly areaName: (value: unknown) => string | undefined;
  readonly savedAnswer: (value: unknown) => SavedAnswer | undefined;
  readonly packReference: (value: unknown) => PackReference | undefined;
  readonly startDay: (value: unknown) => IsoDate | undefined;
  readonly ownClimate: (value: unknown) => OwnClimate | undefined;
}

/** An answer begins so in the text, and nowhere else: inside a JSON string its quotes would be escaped. */
const ANSWER_START = /(?=\{"questionId")/;
/** Where each list begins, in the order of the file. */
const LIST_STARTS = {
  answers: /"answers"\s*:\s*\[/,
  dormant: /"dormant"\s*:\s*\[/,
  heldOver: /"heldOver"\s*:\s*\[/,
  inAreas: /"inAreas"\s*:\s*\[/,
};
type ListName = keyof typeof LIST_STARTS;
/** How many closing braces to try from the end of a piece; a lawn of many parts has one for each. */
const MOST_ENDS = 250;

/** Every answer that still reads as one; a later answer to the same question counts. */
function salvage(
  text: string,
  { areaName, savedAnswer, packReference, startDay, ownClimate }: Readers,
): SalvagedSession {
  const [head = '', ...pieces] = text.split(ANSWER_START);
  const lists: Readonly<Record<ListName, Map<string, SavedAnswer>>> = {
    answers: new Map(),
    dormant: new Map(),
    heldOver: new Map(),
    inAreas: new Map(),
  };
  const hasSums = text.includes('"headSum"') || SUMMED_ANSWER.test(text);
  let list = lastListBegunIn(head) ?? 'answers';
  let lostAnswers = 0;
  for (const piece of pieces) {
    const found = objectAtStart(piece);
    const answer = isAsSaved(found, hasSums) ? savedAnswer(withoutSum(found)) : undefined;
    const area = areaName(answer);
    if (answer === undefined || (list === 'inAreas' && area === undefined)) lostAnswers += 1;
    else lists[list].set(`${area ?? ''} ${answer.questionId}`, answer);
    list = lastListBegunIn(piece) ?? list;
  }
  const inAreas = [...lists.inAreas.values()] as AreaAnswer[];
  const fields = {
    pack: packReference(jsonIn(head, /"pack"\s*:\s*(\{[^{}]*\})/)),
    startedOn: startDay(jsonIn(head, /"startedOn"\s*:\s*("[^"]*")/)),
    climate: ownClimate(jsonIn(head, /^"climate"\s*:\s*(\{.*\}),?$/m)),
  };
  const isHeadAsSaved =
    !hasSums || jsonIn(head, /"headSum"\s*:\s*("[^"]*")/) === sumOf(headFields(fields as never));
  return {
    ...(isHeadAsSaved ? fields : { pack: undefined, startedOn: undefined, climate: undefined }),
    answers: [...lists.answers.values()],
    dormant: [...lists.dormant.values()],
    heldOver: [...lists.heldOver.values()],
    areas: [...new Set(inAreas.map(({ area }) => area))],
    inAreas,
    lostAnswers,
  };
}

/** Where answers carry sums, one without or with another is not what was saved. */
function isAsSaved(found: unknown, hasSums: boolean): boolean {
  if (!hasSums) return true;
  if (typeof found !== 'object' || found === null || !('sum' in found)) return false;
  return found.sum === sumOf(withoutSum(found) as object);
}

/** A list that is empty begins and ends between two answers, so the last one counts. */
function lastListBegunIn(text: string): ListName | undefined {
  return (Object.keys(LIST_STARTS) as ListName[]).findLast((name) => LIST_STARTS[name].test(text));
}

/** The longest piece of JSON from the start of a text up to one of its closing braces. */
function objectAtStart(text: string): unknown {
  let end = text.length;
  for (let tries = 0; tries < MOST_ENDS; tries++) {
    end = text.lastIndexOf('}', end - 1);
    if (end < 0) return undefined;
    const parsed = parseJson(text.slice(0, end + 1));
    if (parsed.ok) return parsed.value;
  }
  return undefined;
}

function jsonIn(text: string, pattern: RegExp): unknown {
  const found = pattern.exec(text)?.[1];
  const parsed = found === undefined ? undefined : parseJson(found);
  return parsed?.ok === true ? parsed.value : undefined;
}

/** Another format or another program's JSON: whole, but nothing of ours to mend. */
function isForeign(value: unknown): boolean {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return true;
  const { format, seedbedSession } = value as {
    readonly format?: unknown;
    readonly seedbedSession?: unknown;
  };
  return format !== 1 || (seedbedSession !== 1 && seedbedSession !== 2);
}

function parseJson(text: string): { readonly ok: true; readonly value: unknown } | { readonly ok: false } {
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/, '')) };
  } catch {
    return { ok: false };
  }
}
