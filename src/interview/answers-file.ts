/** Reads an answers file: every fault is listed with its key, what was found and what is allowed. */

import { cleanLine } from '../base/clean-text.js';
import { type IsoDate, isIsoDate } from '../base/dates.js';
import { joinedWords } from '../base/joined-words.js';
import { jsonShapeOf } from '../base/json-shape.js';
import { nearest } from '../base/nearest.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import { type Answers, type AnswerValue, type LawnPart, UNKNOWN } from './answers.js';
import { lawnPartFaults } from './lawn-parts.js';
import { clashesIn } from './together.js';

export type ReadAnswers =
  | { readonly ok: true; readonly answers: Answers }
  | { readonly ok: false; readonly faults: readonly string[] };

export interface AnswersContext {
  readonly pack: Pack;
  /** Area of measured parts, m2; throws RangeError when they cannot exist. */
  readonly areaOfParts: (parts: readonly LawnPart[]) => number;
  /** What is wrong with a place, as a sentence; undefined when it can be found. */
  readonly placeFault: (typed: string) => string | undefined;
  readonly today: IsoDate;
}

const SHAPE = 'It looks like {"format": 1, "answers": {"areaM2": 84, "mossFraction": 0.4}}.';
/** A list of points of an outline lies six levels down; no answer is deeper. */
const DEEPEST = 10;

export function readAnswersFile(text: string, context: AnswersContext): ReadAnswers {
  const json = parseJson(text);
  if ('fault' in json) return { ok: false, faults: [json.fault] };
  const { value: parsed, doubled } = json;
  if (!isObject(parsed) || parsed.format !== 1 || !isObject(parsed.answers)) {
    const format = isObject(parsed) ? shown(parsed.format) : 'no object';
    return {
      ok: false,
      faults: [`An answers file has "format": 1 and "answers"; found format ${format}. ${SHAPE}`],
    };
  }
  const misplaced = Object.keys(parsed)
    .filter((key) => key !== 'format' && key !== 'answers')
    .map(
      (key) =>
        `${shown(key)} has no place beside "format" and "answers". Remove it, or move it into "answers".`,
    );
  return checkAnswers(parsed.answers, context, [...doubledFaults(doubled), ...misplaced]);
}

type Parsed = { readonly value: unknown; readonly doubled: readonly string[] } | { readonly fault: string };

/** The value of a JSON text, with the keys that stand twice; a byte order mark before it is no fault. */
export function parseJson(text: string): Parsed {
  const bare = text.replace(/^\uFEFF/, '');
  try {
    const value: unknown = JSON.parse(bare);
    const { depth, doubled } = jsonShapeOf(bare);
    if (depth <= DEEPEST) return { value, doubled };
    return { fault: `This is nested ${depth} levels deep; answers need no more than ${DEEPEST}. ${SHAPE}` };
  } catch (error) {
    return { fault: `This is not JSON: ${cleanLine((error as Error).message)}. ${SHAPE}` };
  }
}

export const doubledFaults = (doubled: readonly string[]): string[] =>
  doubled.map((key) => `${shown(key)} stands twice, and only one can be meant. Remove the other.`);

/** The same for answers that are already an object, such as one line of a batch. */
export function checkAnswers(
  found: Readonly<Record<string, unknown>>,
  context: AnswersContext,
  before: readonly string[] = [],
): ReadAnswers {
  const faults = [...before];
  const answers: Record<string, AnswerValue> = {};
  const { pack } = context;
  for (const [key, value] of Object.entries(found)) {
    const question = pack.questionById.get(key);
    if (question === undefined) {
      const near = nearest(key, [...pack.questionById.keys()]);
      faults.push(
        `${shown(key)} is no question.${near === undefined ? '' : ` Did you mean "${near}"?`} Correct or remove it.`,
      );
      continue;
    }
    const fault = value === UNKNOWN ? undefined : faultOf(question, value, context);
    if (fault === undefined) answers[key] = value as AnswerValue;
    else faults.push(`"${key}" is ${shown(value)}. ${fault}`);
  }
  faults.push(...faultsTogether(answers, pack));
  return faults.length === 0 ? { ok: true, answers } : { ok: false, faults };
}

function faultOf(question: Question, value: unknown, context: AnswersContext): string | undefined {
  switch (question.kind) {
    case 'yes-no':
      return typeof value === 'boolean' ? undefined : 'Allowed: true, false or "unknown".';
    case 'choice': {
      const allowed = question.options?.map((option) => option.value) ?? [];
      if (typeof value === 'string' && allowed.includes(value)) return undefined;
      const near = typeof value === 'string' ? nearest(value, allowed) : undefined;
      return `Allowed: ${allowed.map((each) => `"${each}"`).join(', ')} or "unknown".${near === undefined ? '' : ` Did you mean "${near}"?`}`;
    }
    case 'date':
      if (
        typeof value === 'string' &&
        isIsoDate(value) &&
        value > context.today &&
        question.suggest === undefined
      ) {
        return `That is after ${context.today}. Give a day that has been.`;
      }
      if (typeof value === 'string' && (isIsoDate(value) || value === question.suggest)) return undefined;
      return `Allowed: a date such as "2027-03-13"${question.suggest === undefined ? '' : `, "${question.suggest}"`} or "unknown".`;
    case 'place':
      return typeof value === 'string' ? context.placeFault(value) : context.placeFault('');
    case 'text':
      return typeof value === 'string' && value.trim() !== '' && value.length <= LONGEST_TEXT
        ? undefined
        : `Allowed: a text of 1 to ${LONGEST_TEXT} characters, or "unknown".`;
    case 'parts':
      return partsFault(value, context);
    default:
      return numberFault(question, value);
  }
}

function numberFault(question: Question, value: unknown): string | undefined {
  const { min, max } = question.bounds ?? { min: 0, max: 1 };
  const isRight = typeof value === 'number' && Number.isFinite(value) && value >= min && value <= max;
  const unit = question.unit === undefined ? '' : ` ${question.unit}`;
  return isRight ? undefined : `Allowed: a number from ${min} to ${max}${unit}, or "unknown".`;
}

function partsFault(value: unknown, context: AnswersContext): string | undefined {
  const shapes = lawnPartFaults(value);
  if (shapes.length > 0) return shapes.join(' ');
  try {
    context.areaOfParts(value as readonly LawnPart[]);
    return undefined;
  } catch (error) {
    if (error instanceof RangeError) return `${error.message}.`;
    throw error;
  }
}

/** Faults that only show when answers are seen together. */
function faultsTogether(answers: Answers, pack: Pack): string[] {
  const faults: string[] = [];
  if (answers.areaM2 !== undefined && answers.lawnParts !== undefined && answers.areaM2 !== UNKNOWN) {
    faults.push('"areaM2" and "lawnParts" both give the area. Keep one of them.');
  }
  const clashes = clashesIn(pack, answers).map(({ questionIds, says }) => {
    const found = questionIds.map((id) => `"${id}" is ${shown(answers[id])}`);
    return `${joinedWords(found)}. ${says} Correct one of them.`;
  });
  return [...faults, ...clashes];
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** More than any name of a lawn needs. */
const LONGEST_TEXT = 200;
const LONGEST_SHOWN = 60;

/** A found name or value as JSON, harmless and short enough for one line. */
function shown(value: unknown): string {
  if (value === undefined) return 'missing';
  const text = cleanLine(JSON.stringify(typeof value === 'string' ? value.slice(0, LONGEST_SHOWN) : value));
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}...` : text;
}
