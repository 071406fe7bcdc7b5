/** Answers that are each possible and cannot all be true, by the rules in `rules/together.json`. */
import { namesIn } from '../rules/call.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { type Answers, UNKNOWN } from './answers.js';

export interface Clash {
  readonly says: string;
  /** The answered questions that do not agree, in the order in which the rule names them. */
  readonly questionIds: readonly string[];
}

/**
 * Every clash among the answers. What is not answered, or said to be unknown, never clashes.
 *
 * @param isUsed false for an answer that is kept and not used: it speaks against nothing
 */
export function clashesIn(pack: Pack, answers: Answers, isUsed = (_id: string): boolean => true): Clash[] {
  const isSaid = (id: string): boolean =>
    Object.hasOwn(answers, id) && answers[id] !== UNKNOWN && !Array.isArray(answers[id]) && isUsed(id);
  const scope: Scope = (name) => {
    const figure = pack.figureById.get(name.replace(/^figures\./, ''));
    if (figure !== undefined) return { known: true, value: figure.typical, used: [], from: [] };
    if (!isSaid(name)) return { known: false, open: [name] };
    return { known: true, value: answers[name] as string | number | boolean, used: [name], from: [] };
  };
  return pack.together.flatMap(({ must, says }) => {
    const outcome = evaluate(must, scope);
    if (!outcome.known || outcome.value === true) return [];
    return [{ says, questionIds: [...new Set(namesIn(must))].filter(isSaid) }];
  });
}
