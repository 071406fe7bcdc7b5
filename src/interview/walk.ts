/** All that is still to be seen out of doors, gathered into one walk round the lawn. */
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import { type Answers, UNKNOWN } from './answers.js';
import { lookForOpen } from './open-questions.js';

export interface WalkItem {
  readonly question: Question;
  /** False: whether it arises depends on another answer. */
  readonly isSure: boolean;
}

export interface Walk {
  /** Things to have along, each once. */
  readonly take: readonly string[];
  readonly stations: readonly { readonly title: string; readonly items: readonly WalkItem[] }[];
}

/** Everything open that wants a look or a spade; what was said not to be known is worth another try. */
export function walkRound(pack: Pack, answers: Answers, scope: Scope): Walk {
  const { questions } = lookForOpen(pack, scope);
  const isWanted = (question: Question): boolean =>
    question.cost !== 'chair' &&
    isAsked(question, scope) !== false &&
    (answers[question.id] === UNKNOWN ||
      (questions.includes(question) && answers[question.id] === undefined));
  const wanted = pack.questions.filter(isWanted);
  const stations = pack.sections.map(({ id, title }) => ({
    title,
    items: wanted
      .filter(({ section }) => section === id)
      .map((question) => ({ question, isSure: isAsked(question, scope) === true })),
  }));
  return {
    take: [...new Set(wanted.flatMap(({ take }) => take ?? []))],
    stations: stations.filter(({ items }) => items.length > 0),
  };
}
