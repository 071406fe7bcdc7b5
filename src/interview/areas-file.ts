/** Reads the areas of an answers file: `"areas": [{"name": "front", "answers": {"areaM2": 60}}, ...]`. */
import type { Answers } from './answers.js';
import { type Area, answersOn, givesSize, nameFault } from './areas.js';
import { type AnswersContext, checkEach, faultsTogether, shown } from './check-answers.js';

const SHAPE = 'They look like "areas": [{"name": "front", "answers": {"areaM2": 60}}].';
/** No lawn has more; what has is a list of lawns, and each wants a plan of its own. */
const MOST_AREAS = 12;

interface ReadAreas {
  readonly areas: readonly Area[];
  readonly faults: readonly string[];
}

/** @param whole the answers for the whole lawn */
export function readAreas(found: unknown, whole: Answers, context: AnswersContext): ReadAreas {
  if (!Array.isArray(found) || found.length === 0 || found.length > MOST_AREAS) {
    const what = Array.isArray(found) ? `${found.length} areas` : shown(found);
    return {
      areas: [],
      faults: [`"areas" is ${what}. Allowed: a list of 1 to ${MOST_AREAS} areas. ${SHAPE}`],
    };
  }
  const sizes = Object.keys(whole)
    .filter(givesSize)
    .map(
      (key) => `"${key}" stands beside "areas", and each area has a size of its own. Move it into the area.`,
    );
  const read = found.map((area, at) => readArea(area, at + 1, whole, context));
  const areas = read.flatMap(({ area }) => area ?? []);
  const names = areas.map(({ name }) => name.toLowerCase());
  const doubled = areas
    .filter((_, at) => names.indexOf(names[at] as string) < at)
    .map(({ name }) => `Two areas are called ${shown(name)}. Give one of them another name.`);
  return { areas, faults: [...sizes, ...read.flatMap(({ faults }) => faults), ...doubled] };
}

function readArea(found: unknown, number: number, whole: Answers, context: AnswersContext) {
  const { name, answers } = (typeof found === 'object' && found !== null ? found : {}) as Record<
    string,
    unknown
  >;
  const isWhole = typeof answers === 'object' && answers !== null && !Array.isArray(answers);
  if (typeof name !== 'string' || nameFault(name) !== undefined || !isWhole) {
    const why = typeof name === 'string' ? (nameFault(name) ?? 'It has no "answers".') : 'It has no "name".';
    return { area: undefined, faults: [`Area ${number}: ${why} ${SHAPE}`] };
  }
  const checked = checkEach(answers as Readonly<Record<string, unknown>>, context);
  const misplaced = Object.keys(checked.answers)
    .filter((id) => context.pack.questionById.get(id)?.perArea !== true)
    .map((id) => `"${id}" is answered once for the whole lawn. Move it into "answers".`);
  const together = faultsTogether(answersOn(checked, whole), context.pack);
  const unknownKeys = Object.keys(found as object)
    .filter((key) => key !== 'name' && key !== 'answers')
    .map((key) => `${shown(key)} has no place beside "name" and "answers". Remove it.`);
  return {
    area: { name, answers: checked.answers },
    faults: [...checked.faults, ...misplaced, ...together, ...unknownKeys].map(
      (fault) => `Area ${shown(name)}: ${fault}`,
    ),
  };
}
