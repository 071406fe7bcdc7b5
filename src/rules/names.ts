import type { Named } from './lint.js';
import type { PackData } from './pack.js';
import type { Question } from './schema.js';

/** Units that a question says in words, as figures write them. */
const UNIT_SYMBOL: Readonly<Record<string, string>> = {
  hours: 'h',
  'hours a day': 'h/d',
  degrees: 'deg',
  days: 'd',
  seconds: 's',
  grubs: 'count',
  '%': 'percent',
};

/** Every name that a condition may read, with what it gives. */
export function readableNames(pack: PackData): Map<string, Named> {
  const names = new Map<string, Named>();
  for (const question of pack.questions) names.set(question.id, answerOf(question));
  for (const fact of pack.facts) names.set(`facts.${fact.id}`, { kind: fact.kind, unit: fact.unit });
  for (const finding of pack.findings) names.set(`findings.${finding.id}`, { kind: 'truth' });
  for (const figure of pack.figures) names.set(`figures.${figure.id}`, { kind: 'number', unit: figure.unit });
  return names;
}

/** What an answer to the question gives to a condition. */
export function answerOf(question: Question): Named {
  switch (question.kind) {
    case 'yes-no':
      return { kind: 'truth' };
    case 'number':
      return { kind: 'number', unit: question.unit && (UNIT_SYMBOL[question.unit] ?? question.unit) };
    case 'fraction':
      return { kind: 'number', unit: 'fraction' };
    case 'days-ago':
      return { kind: 'number', unit: 'd' };
    case 'area':
      return { kind: 'number', unit: 'm2' };
    case 'choice':
      return { kind: 'word', words: question.options?.map((option) => option.value) };
    default:
      return { kind: 'word' };
  }
}
