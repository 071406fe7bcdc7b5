/**
 * Slots in sentences: `{figures.fork-depth-mm}`, `{figures.fork-depth-mm range}`, `{facts.germinationDays}`;
 * and measures: `{45 cm}`, `{7 to 8 cm}`. Both are said in the reader's units; with `as printed` in the printed ones too.
 */
import { jsonPointer } from '../base/json-pointer.js';
import type { PackData } from './pack.js';

export const SLOT = /\{((?:figures|facts)\.[A-Za-z0-9-]+)( range)?( as printed)?\}/g;

/** So many of a metric unit, written out in a sentence; `as printed` where the metric value is the limit itself. */
export const MEASURE =
  /\{(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? (mm|cm|m2|m|g\/m2|g|kg|mL\/m2|mL|L\/m2|L|C)( as printed)?\}/g;

/** Anything in braces: what is no sound slot would stand in the plan as it is. */
const ANY_BRACES = /\{([^{}]*)\}/g;

/** Every name that stands in braces in the text; a measure is no name. */
export function slotsIn(text: string): string[] {
  return [...text.replace(MEASURE, '').matchAll(ANY_BRACES)].map(([, inside = '']) =>
    inside.replace(/( range)?( as printed)?$/, ''),
  );
}

export interface Told {
  readonly kind: string;
  /** Key of the record: its id, or its place in the list. */
  readonly id: string;
  /** What a person calls the record. */
  readonly name: string;
  readonly pointer: string;
  readonly text: string;
}

/** Fields of each kind of record that may hold slots; a star stands for every member of a list. */
const FIELDS = {
  step: [
    'purpose',
    'how/*',
    'after/*/sign',
    'after/*/why',
    'dayChecks/*/check',
    'dayChecks/*/otherwise',
    'doneWhen',
    'ifNot',
    'leaveOut/loses',
  ],
  caution: ['line', 'detail', 'us/line', 'us/detail'],
  finding: ['why', 'tellsApart'],
  question: [
    'text',
    'help',
    'why',
    'dontKnow/effect',
    'dontKnow/says',
    'dontKnow/handTest',
    'us/text',
    'us/help',
    'us/effect',
    'us/handTest',
  ],
  outlook: ['sees', 'ifNot'],
  trouble: ['sees', 'normal', 'causes/*/cause', 'causes/*/test', 'causes/*/remedy', 'holds/*/why'],
  notDone: ['says'],
  verdict: ['because'],
  sign: ['says', 'harmless/*/says', 'maybe/*/says', 'look'],
} as const;

/** Every sentence of a pack that may hold slots, with the record it stands in. */
export function sentencesOf(pack: PackData): Told[] {
  const told = (kind: keyof typeof FIELDS, id: string, record: unknown, name = id): Told[] =>
    FIELDS[kind].flatMap((field) =>
      textsAt(record, field.split('/')).map(({ path, text }) => ({
        kind,
        id,
        name,
        pointer: jsonPointer(...path),
        text,
      })),
    );
  return [
    ...pack.steps.flatMap((step) => told('step', step.id, step)),
    ...pack.cautions.flatMap((caution) => told('caution', caution.id, caution)),
    ...pack.findings.flatMap((finding) => told('finding', finding.id, finding)),
    ...pack.questions.flatMap((question) => told('question', question.id, question)),
    ...pack.outlook.flatMap((outlook, index) =>
      told('outlook', `${index}`, outlook, `week ${outlook.weeks}`),
    ),
    ...pack.troubles.flatMap((trouble) => told('trouble', trouble.id, trouble)),
    ...pack.signs.flatMap((sign) => told('sign', sign.id, sign)),
    ...pack.notDone.flatMap((limit) => told('notDone', limit.id, limit)),
    ...pack.verdicts.flatMap((verdict, index) => told('verdict', `${index}`, verdict, verdict.id)),
  ];
}

/** The texts that the field leads to; none where it is absent. */
function textsAt(
  value: unknown,
  [key, ...more]: readonly string[],
  path: readonly (string | number)[] = [],
): { readonly path: readonly (string | number)[]; readonly text: string }[] {
  if (key === undefined) return typeof value === 'string' ? [{ path, text: value }] : [];
  if (typeof value !== 'object' || value === null) return [];
  if (key === '*')
    return (value as unknown[]).flatMap((each, index) => textsAt(each, more, [...path, index]));
  return textsAt((value as Record<string, unknown>)[key], more, [...path, key]);
}
