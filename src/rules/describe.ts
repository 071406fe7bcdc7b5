/** One record in plain words: its fields, its conditions as sentences, its sources, and who reads it. */
import { plainNumber } from '../base/quantity-words.js';
import { callOf } from './call.js';
import { recordOf } from './dot.js';
import type { PackData } from './pack.js';
import { readersByName } from './readers.js';
import { referencesOf } from './references.js';
import type { Citation, Expression } from './schema.js';
import { MEASURE, SLOT } from './slots.js';

/** A line and how far it is set in. */
export interface DescribedLine {
  readonly text: string;
  readonly level: number;
}

/** Lists of a pack whose records can be shown, with the kind of record in each. */
const SHOWN = {
  figures: 'figure',
  questions: 'question',
  facts: 'fact',
  findings: 'finding',
  steps: 'step',
  cautions: 'caution',
  materials: 'material',
  verdicts: 'verdict',
  sources: 'source',
  notDone: 'notDone',
  together: 'together',
} as const;

/** Fields that hold a condition or a sum, wherever they stand. */
const EXPRESSIONS = new Set(
  'when must askWhen value assume minDays maxDays lastsDays plusDays date inputs'.split(' '),
);

/** Every record with its kind; a verdict's id may stand for several. */
export function recordsOf(
  pack: PackData,
): { readonly kind: string; readonly id: string; readonly record: object }[] {
  return Object.entries(SHOWN).flatMap(([list, kind]) =>
    pack[list as keyof typeof SHOWN].map((record) => ({ kind, id: record.id, record })),
  );
}

/** All records of that id in words; none when there is no such id. `step sow` asks for one kind alone. */
export function describe(wanted: string, pack: PackData): DescribedLine[] {
  const [first = '', second] = wanted.split(' ');
  const found = recordsOf(pack).filter(({ kind, id }) =>
    second === undefined ? id === first : kind === first && id === second,
  );
  return found.flatMap(({ kind, id, record }) => [
    { text: `${kind} ${id}`, level: 0 },
    ...Object.entries(record)
      .filter(([key]) => key !== 'id')
      .flatMap(([key, value]) => fieldLines(key, value, 1, pack)),
    ...readByLines(kind, id, pack),
  ]);
}

function fieldLines(key: string, value: unknown, level: number, pack: PackData): DescribedLine[] {
  const label = labelOf(key);
  if (key === 'sources' && Array.isArray(value)) return sourceLines(value as Citation[], level, pack);
  if (key === 'examples') return [{ text: `${label}: ${countOf(value)}`, level }];
  if (key === 'inputs' || key === 'cautionWhen') {
    return Object.entries(value as Record<string, Expression>).map(([name, expression]) => ({
      text: `${name}: ${inWords(expression, pack)}`,
      level,
    }));
  }
  if (EXPRESSIONS.has(key) && value !== null) {
    return [{ text: `${label}: ${inWords(value as Expression, pack)}`, level }];
  }
  if (Array.isArray(value)) {
    if (value.length === 0) return [];
    if (value.every((each) => typeof each !== 'object')) return listLines(label, value, level, pack);
    return value.flatMap((each: object, index) => [
      { text: `${label} ${index + 1}`, level },
      ...Object.entries(each).flatMap(([name, inner]) => fieldLines(name, inner, level + 1, pack)),
    ]);
  }
  if (typeof value === 'object' && value !== null) {
    return [
      { text: label, level },
      ...Object.entries(value).flatMap(([name, inner]) => fieldLines(name, inner, level + 1, pack)),
    ];
  }
  return [{ text: `${label}: ${value === null ? 'nothing' : withSlotsFilled(String(value), pack)}`, level }];
}

/** Ids on one line; sentences on a line each. */
function listLines(label: string, list: readonly unknown[], level: number, pack: PackData): DescribedLine[] {
  const texts = list.map((each) => withSlotsFilled(String(each), pack));
  if (!texts.some((text) => text.includes(' '))) return [{ text: `${label}: ${texts.join(', ')}`, level }];
  return texts.map((text, index) => ({ text: `${label} ${index + 1}: ${text}`, level }));
}

/** Slots as the figures or facts that will stand there, measures as they are written. */
const withSlotsFilled = (text: string, pack: PackData): string =>
  text
    .replace(SLOT, (_, name: string) => nameInWords(name, pack))
    .replace(MEASURE, (measure) => measure.slice(1, -1));

function sourceLines(sources: readonly Citation[], level: number, pack: PackData): DescribedLine[] {
  return sources.map(({ id, at }) => {
    const source = pack.sources.find((each) => each.id === id);
    const year = source?.year === undefined ? '' : `, ${source.year}`;
    const name = source === undefined ? id : `${source.title}. ${source.publisher}${year}`;
    return { text: `source: ${name} (${id}), at: ${at}`, level };
  });
}

function readByLines(kind: string, id: string, pack: PackData): DescribedLine[] {
  const name = kind === 'question' ? id : `${kind}s.${id}`;
  const readers = [
    ...(readersByName(pack).get(name) ?? []),
    ...referencesOf(pack)
      .filter(
        (reference) =>
          reference.kind === kind && reference.id === id && !/^\/examples/.test(reference.pointer),
      )
      .map(({ from, fromKey }) => `${from} ${fromKey}`),
  ];
  const unique = [...new Set(readers)];
  return [{ text: `read by: ${unique.length === 0 ? 'no other rule' : unique.join('; ')}`, level: 1 }];
}

const countOf = (examples: unknown): string =>
  Object.entries(examples as Record<string, unknown[]>)
    .map(([verdict, list]) => `${list.length} ${labelOf(verdict)}`)
    .join(', ');

/** `dontKnow` as `dont know`. */
const labelOf = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const SAID: Readonly<Record<string, string>> = {
  and: 'and',
  or: 'or',
  '===': 'is',
  '!==': 'is not',
  '<': 'is below',
  '<=': 'is at most',
  '>': 'is above',
  '>=': 'is at least',
  '+': 'plus',
  '-': 'less',
  '*': 'times',
  '/': 'divided by',
};

/** A condition or sum as one reads it aloud; inner ones stand in brackets. */
export function inWords(expression: Expression, pack: PackData, isInner = false): string {
  const call = callOf(expression);
  if (call === undefined) {
    if (typeof expression === 'boolean') return expression ? 'always' : 'never';
    return Array.isArray(expression) ? expression.join(', ') : String(expression);
  }
  const { operator, operands } = call;
  if (operator === 'var') return nameInWords(String(operands[0]), pack);
  const inner = (operand: Expression): string => inWords(operand, pack, true);
  const words = ((): string => {
    if (operator === '!') return `not ${inner(operands[0] as Expression)}`;
    if (operator === 'in') {
      const [wanted, list] = operands as [Expression, readonly Expression[]];
      return `${inner(wanted)} is one of ${list.join(', ')}`;
    }
    if (operator === 'if') return ifInWords(operands, inner);
    if (operator === 'min' || operator === 'max')
      return `the ${operator === 'min' ? 'least' : 'greatest'} of ${operands.map(inner).join(', ')}`;
    if (operands.length === 1)
      return `${operator === '-' ? 'minus ' : ''}${inner(operands[0] as Expression)}`;
    return operands.map(inner).join(` ${SAID[operator] ?? operator} `);
  })();
  return isInner && operands.length > 1 ? `(${words})` : words;
}

function ifInWords(operands: readonly Expression[], inner: (operand: Expression) => string): string {
  const [test, then, ...rest] = operands as [Expression, Expression, ...Expression[]];
  const otherwise = rest.length > 1 ? ifInWords(rest, inner) : inner(rest[0] as Expression);
  return `if ${inner(test)} then ${inner(then)}, otherwise ${otherwise}`;
}

function nameInWords(name: string, pack: PackData): string {
  const [kind, id] = recordOf(name).split(' ') as [string, string];
  if (kind === 'figure') {
    const figure = pack.figures.find((each) => each.id === id);
    return figure === undefined ? name : `${plainNumber(figure.typical)} ${figure.unit} [${id}]`;
  }
  if (kind === 'question') return `"${pack.questions.find((each) => each.id === id)?.label ?? id}" [${id}]`;
  if (kind === 'fact') return `"${pack.facts.find((each) => each.id === id)?.what ?? id}" [${name}]`;
  return `"${pack.findings.find((each) => each.id === id)?.title ?? id}" [${name}]`;
}
