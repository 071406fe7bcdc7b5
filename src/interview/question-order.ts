/**
 * In which order questions are put: section by section as the pack has them, so that the talk keeps to one topic;
 * inside a section safety first, as the pack has it, then what settles most for the trouble it takes. What asks about
 * another answer comes after it.
 */
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';

/**
 * @param questions in the pack's order, which decides between equals
 * @param hanging by question id, the undecided pieces of the plan that name it
 */
export function bestFirst(
  questions: readonly Question[],
  pack: Pack,
  hanging: ReadonlyMap<string, number>,
): Question[] {
  const rank = new Map(pack.sections.map(({ id }, index) => [id, index]));
  const sectionOf = ({ section }: Question): number => rank.get(section) ?? 0;
  const dangerOf = ({ safety }: Question): number => (safety === true ? 0 : 1);
  // Nearly every lawn is asked about every danger, so there is nothing to gain by their order.
  const worthOf = ({ id, cost, safety }: Question): number =>
    safety === true ? 0 : (hanging.get(id) ?? 0) / pack.effort[cost];
  const sorted = [...questions].sort(
    (a, b) => sectionOf(a) - sectionOf(b) || dangerOf(a) - dangerOf(b) || worthOf(b) - worthOf(a),
  );
  const isPut = (id: string | undefined): boolean => sorted.some((question) => question.id === id);
  const followersOf = (id: string): Question[] => sorted.filter(({ follows }) => follows === id);
  return sorted.flatMap((question) =>
    isPut(question.follows) ? [] : [question, ...followersOf(question.id)],
  );
}
