/** Checks answers against their questions: every fault is listed with its key, what was found and what is allowed. */
import { cleanLine } from '../base/clean-text.js';
import { type IsoDate, isIsoDate } from '../base/dates.js';
import { joinedWords } from '../base/joined-words.js';
import { nearest } from '../base/nearest.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import { type Answers, type AnswerValue, type LawnPart, UNKNOWN } from './answers.js';
import { lawnPartFaults } from './lawn-parts.js';
import { clashesIn } from './together.js';

export type CheckedAnswers =
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

export function checkAnswers(
  found: Readonly<Record<string, unknown>>,
  context: AnswersContext,
): CheckedAnswers {
  const { answers, faults } = checkEach(found, context);
  const all = [...faults, ...faultsTogether(answers, context.pack)];
  return all.length === 0 ? { ok: true, answers } : { ok: false, faults: all };
}

/** Each answer by itself: those that are right, and what is wrong with the others. */
export function checkEach(
  found: Readonly<Record<string, unknown>>,
  context: AnswersContext,
): { readonly answers: Answers; readonly faults: readonly string[] } {
  const faults: string[] = [];
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
  return { answers, faults };
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
      if (value === question.noDate?.value) return undefined;
      if (
        typeof value === 'string' &&
        isIsoDate(value) &&
        value > context.today &&
        question.suggest === undefined
      ) {
        return `That is after ${context.today}. Give a day that has been.`;
      }
      if (typeof value === 'string' && (isIsoDate(value) || value === question.suggest)) return undefined;
      return `Allowed: a date such as "2027-03-13"${question.suggest === undefined ? '' : `, "${question.suggest}"`}${question.noDate === undefined ? '' : `, "${question.noDate.value}" (${question.noDate.label})`} or "unknown".`;
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
export function faultsTogether(answers: Answers, pack: Pack): string[] {
  const faults: string[] = [];
  const { areaM2 = UNKNOWN, lawnParts = UNKNOWN } = answers;
  if (areaM2 !== UNKNOWN && lawnParts !== UNKNOWN) {
    faults.push('"areaM2" and "lawnParts" both give the area. Keep one of them.');
  }
  const clashes = clashesIn(pack, answers).map(({ questionIds, says }) => {
    const found = questionIds.map((id) => `"${id}" is ${shown(answers[id])}`);
    return `${joinedWords(found)}. ${says} Correct one of them.`;
  });
  return [...faults, ...clashes];
}

/** More than any name of a lawn needs. */
const LONGEST_TEXT = 200;
const LONGEST_SHOWN = 60;

/** A found name or value as JSON, harmless and short enough for one line. */
export function shown(value: unknown): string {
  if (value === undefined) return 'missing';
  const text = cleanLine(JSON.stringify(typeof value === 'string' ? value.slice(0, LONGEST_SHOWN) : value));
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}...` : text;
}
