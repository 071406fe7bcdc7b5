/** Slots in sentences: `{figures.fork-depth-mm}`, `{figures.fork-depth-mm range}`, `{facts.germinationDays}`. */
import type { PackData } from './pack.js';

export const SLOT = /\{((?:figures|facts)\.[A-Za-z0-9-]+)( range)?\}/g;

/** Anything in braces: what is no sound slot would stand in the plan as it is. */
const ANY_BRACES = /\{([^{}]*)\}/g;

/** Every name that stands in braces in the text. */
export function slotsIn(text: string): string[] {
  return [...text.matchAll(ANY_BRACES)].map(([, inside = '']) => inside.replace(/ range$/, ''));
}

export interface Told {
  readonly kind: string;
  readonly id: string;
  readonly text: string;
}

/** Every sentence of a pack that may hold slots, with the record it stands in. */
export function sentencesOf(pack: PackData): Told[] {
  const told = (kind: string, id: string, ...texts: readonly (string | undefined)[]): Told[] =>
    texts.flatMap((text) => (text === undefined ? [] : [{ kind, id, text }]));
  return [
    ...pack.steps.flatMap((step) =>
      told(
        'step',
        step.id,
        step.purpose,
        ...step.how,
        ...step.after.flatMap((wait) => [wait.sign, wait.why]),
        ...step.dayChecks.flatMap(({ check, otherwise }) => [check, otherwise]),
        step.doneWhen,
        step.ifNot,
      ),
    ),
    ...pack.cautions.flatMap((caution) => told('caution', caution.id, caution.line, caution.detail)),
    ...pack.findings.flatMap((finding) => told('finding', finding.id, finding.why, finding.tellsApart)),
    ...pack.questions.flatMap(({ id, text, help, why, dontKnow }) =>
      told('question', id, text, help, why, dontKnow.effect, dontKnow.handTest),
    ),
    ...pack.outlook.flatMap(({ weeks, sees, ifNot }) => told('outlook', `${weeks}`, sees, ifNot)),
    ...pack.notDone.flatMap(({ id, says }) => told('notDone', id, says)),
  ];
}
