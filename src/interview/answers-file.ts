/** Reads an answers file: the answers, and those of each area where a lawn has several. Every fault is listed. */
import { cleanLine } from '../base/clean-text.js';
import { jsonShapeOf } from '../base/json-shape.js';
import type { Answers } from './answers.js';
import type { Area } from './areas.js';
import { readAreas } from './areas-file.js';
import { type AnswersContext, checkEach, faultsTogether, shown } from './check-answers.js';

export type ReadAnswers =
  | { readonly ok: true; readonly answers: Answers; readonly areas: readonly Area[] }
  | { readonly ok: false; readonly faults: readonly string[] };

const SHAPE = 'It looks like {"format": 1, "answers": {"areaM2": 84, "mossFraction": 0.4}}.';
/** A list of points of an outline lies six levels down; no answer is deeper. */
const DEEPEST = 10;

const KEYS: readonly string[] = ['format', 'answers', 'areas'];

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
    .filter((key) => !KEYS.includes(key))
    .map(
      (key) =>
        `${shown(key)} has no place beside "format" and "answers". Remove it, or move it into "answers".`,
    );
  return checkLawn(parsed.answers, context, {
    found: parsed.areas,
    before: [...doubledFaults(doubled), ...misplaced],
  });
}

/** Answers that are already an object, such as one line of a batch, with the areas beside them. */
export function checkLawn(
  found: Readonly<Record<string, unknown>>,
  context: AnswersContext,
  { found: foundAreas, before = [] }: { readonly found?: unknown; readonly before?: readonly string[] },
): ReadAnswers {
  const { answers, faults } = checkEach(found, context);
  const together = faultsTogether(answers, context.pack);
  const areas =
    foundAreas === undefined ? { areas: [], faults: [] } : readAreas(foundAreas, answers, context);
  const all = [...before, ...faults, ...together, ...areas.faults];
  return all.length === 0 ? { ok: true, answers, areas: areas.areas } : { ok: false, faults: all };
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

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
